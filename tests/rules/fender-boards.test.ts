/** Fender boards on the demo dock, worked by hand: where they hang, what they weigh and cost, what tells of them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { elevationView } from '../../geometry/drawing/elevation.ts'
import { planView } from '../../geometry/drawing/plan.ts'
import { drawnOf } from '../../geometry/drawn.ts'
import { proposeKit } from '../../rules/assess-kit.ts'
import { derive, deriveKit, ENGLISH, english, projectOf, wordsOf } from '../../rules/index.ts'
import { countCards, estimate, PAPERS, sentence } from '../../rules/papers.ts'
import { sideView } from '../../src/section-strip/section-view.ts'
import { anyCase } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { fenderCatalog as catalog, FENDER } from '../support/fender-shop.ts'
import { validate } from '../support/validate.ts'
import { contractDemo } from '../support/worked-designs.ts'

const designOf = (dock: object) => parsed({ ...contractDemo, dock: { ...contractDemo.dock, ...dock } })
const design = designOf({ extras: { 'fender-board': 2 } })
const dock = deriveAtOnce(design, catalog)
const bare = deriveAtOnce(designOf({ extras: {} }), catalog)
const of = (kind: string) => dock.placements.filter((p) => p.kind === kind)
const near = (values: readonly number[], expected: readonly number[]) =>
  values.forEach((value, i) => {
    expect(value).toBeCloseTo(expected[i]!, 5)
  })

describe('fender boards', () => {
  it('hang on the outermost section, left and right, at the lakeward end of what is free', () => {
    // A 4x8 is 2.4384 by 1.2192 m; a board takes 0.3048 m: its middle 2.4384 − 0.1524 = 2.286 along, 0.6096 m off the center line.
    const s5 = dock.sections.find(({ id }) => id === 's5')!
    const [left, right] = of('fender-board')
    expect([left!.of, right!.of]).toEqual(['fender-board.1', 'fender-board.2'])
    near(left!.at, [s5.x + 2.286, 0.6096, 0.45])
    near(right!.at, [s5.x + 2.286, -0.6096, 0.45])
  })

  it('are bolted to the rail behind them, twice', () => {
    // Frame top 0.45 − 0.0254 = 0.4246; the rail's 0.1524 in two halves of 0.0762: their middles 0.0381 and 0.1143 under it.
    near(
      of('fender-bolt').map(({ at }) => at[2]),
      [0.3865, 0.3103, 0.3865, 0.3103],
    )
    near(
      of('fender-bolt').map(({ at }) => at[1]),
      [0.6096, 0.6096, -0.6096, -0.6096],
    )
  })

  it('are counted, weighed and priced, and are not lifted with their section', () => {
    const rows = dock.parts.filter(({ kind }) => kind.startsWith('fender'))
    expect(rows.map(({ code, quantity }) => [code, quantity])).toEqual([
      ['fender-36', 2],
      ['fender-bolt-4', 4],
    ])
    // 2 · 1200 + 4 · 90 = 2760 g; 2 · 2200 + 4 · 120 = 4880 cents.
    expect(Math.round((dock.totals.mass - bare.totals.mass) * 1000)).toBe(2760)
    expect(dock.totals.price - bare.totals.price).toBe(4880)
    expect(dock.sections.map(({ lift }) => lift)).toEqual(bare.sections.map(({ lift }) => lift))
  })

  it('two to an extra: each has its own bolts', () => {
    const [board, bolt] = FENDER.parts
    const pair = {
      ...FENDER,
      parts: [
        { ...board, count: 2 },
        { ...bolt, count: 4 },
      ],
    }
    const shop = { ...catalog, extras: [pair as unknown as (typeof catalog.extras)[number]] }
    const found = deriveAtOnce(design, shop).placements.filter((p) => p.of === 'fender-board.1')
    const xs = (kind: string) => found.filter((p) => p.kind === kind).map(({ at }) => at[0])
    const [a, b] = xs('fender-board')
    // Side by side: 0.1397 m from middle to middle.
    expect(Math.abs(a! - b!)).toBeCloseTo(0.1397, 5)
    expect(xs('fender-bolt')).toEqual([a, b, a, b])
    expect(validate(deriveAtOnce(design, shop), design, shop)).toEqual([])
  })

  it('that reach into the bed are refused, and can be left out', () => {
    // The deck is 0.45 m up, so a board of 0.9144 m ends 0.4644 m under water: deeper than s2's lake, shallower than s5's.
    const at = (section: string) =>
      designOf({ extras: {}, placed: [{ code: 'fender-board', section, edge: 'left', along: 0.6 }] })
    const inBed = (section: string) =>
      derive(at(section), catalog).findings.filter(({ code }) => code === 'part-in-bed')
    expect(inBed('s5')).toEqual([])
    const [finding] = inBed('s2')
    expect(finding).toMatchObject({
      severity: 'stop',
      parts: ['fender-board.1'],
      values: { a: { value: 'fender-board' } },
    })
    expect(finding!.remedy?.patch).toEqual([{ op: 'remove', path: '/dock/placed/0' }])
  })

  it('are in the plan, in the view from the side and in the section strip, to their full length', () => {
    const project = projectOf(design, catalog, dock)
    const drawn = drawnOf(project, { units: 'imperial', language: ENGLISH })
    const own = (view: ReturnType<typeof planView>) =>
      view.paths.filter(({ layer, of: ids }) => layer === 'EXTRA' && ids?.includes('fender-board.2'))
    expect(own(planView(drawn))).toHaveLength(1)
    const [side] = own(elevationView(drawn))
    const heights = side!.points.map(([, z]) => z)
    near([Math.min(...heights), Math.max(...heights)], [-0.4644, 0.45])
    const strip = sideView(project, -2, 14).extras.filter(({ id }) => id === 'fender-board.2')
    expect(strip).toHaveLength(1)
    near(
      strip[0]!.points.map(([, z]) => z),
      [-0.4644, 0.45],
    )
  })

  it('are options of a quote; their bolts have a card that says where they go', () => {
    const lines = estimate(dock, design, catalog, { date: '2026-05-01' }).lines
    expect(lines.filter(({ kind }) => kind?.startsWith('fender')).map(({ group }) => group)).toEqual([
      'options',
      'options',
    ])
    const card = countCards(dock, catalog).find(({ bag }) => bag.letter === 'X')!
    expect(card.rows.map(({ code, quantity, needed }) => [code, quantity, needed])).toEqual([
      ['fender-bolt-4', 4, 4],
    ])
    expect(sentence(card.rows[0]!.goes, wordsOf(PAPERS, english('imperial')))).toContain('let into the board')
  })

  it('keep every law on random docks of both shops', () => {
    let boards = 0
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 1, max: 6 }), (one, count) => {
        const shop = { ...one.catalog, extras: [...one.catalog.extras, catalog.extras.at(-1)!] }
        const asked = { ...one.design.dock, extras: { ...one.design.dock.extras, 'fender-board': count } }
        const input = { ...one.design, dock: asked }
        const found = proposeKit(deriveKit(input, shop))
        boards += found.placements.filter(({ kind }) => kind === 'fender-board').length
        expect(validate(found, input, shop)).toEqual([])
      }),
      { numRuns: 200, seed: 20_263 },
    )
    expect(boards).toBeGreaterThan(200)
  })
})
