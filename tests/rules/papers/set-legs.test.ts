/** How each leg is set, and where each extra goes: the demo dock and a T worked by hand; laws on random docks. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chancesOf } from '../../../rules/fit/chances.ts'
import { type Design, demoCatalog, demoDesign, deriveKit, projectOf } from '../../../rules/index.ts'
import { extrasPlaced } from '../../../rules/papers/extras-placed.ts'
import { setLegs } from '../../../rules/papers/set-legs.ts'
import { errorsOf } from '../../../rules/site/error-at.ts'
import { anyCase, parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { runs } from '../../support/runs.ts'

const RUNS = runs(200)
const projectFor = (design: Design, catalog = demoCatalog) =>
  projectOf(design, catalog, deriveAtOnce(design, catalog))

describe('the legs of the demo dock', () => {
  const legs = setLegs(projectFor(demoDesign))

  it('have the numbers of the drawing, from the shore outward, left before right', () => {
    expect(legs.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
    expect(legs.map(({ place }) => place.side)).toEqual(Array(5).fill(['left', 'right']).flat())
  })

  it('are set as worked by hand: depth between soundings, deck over it, what the leg has to spare', () => {
    const last = legs[9]!
    // Soundings 0.9 m at 8 m, 1.4 m at 12 m: 0.125 m deeper for each meter out.
    const depth = 0.9 + 0.125 * (last.out - 8)
    expect(last.depth).toBeCloseTo(depth, 5)
    // The deck is 0.45 m over the water.
    expect(last.setHeight).toBeCloseTo(depth + 0.45, 5)
    // A 7 ft leg on a sole of a quarter inch. What must stay: what sand washes out, 3 cm, and what the pad sinks in it, 1 cm; the deck stands
    // 0.2 m over the high level, which is more than the shop asks for.
    expect(last.stock).toBeCloseTo(2.1336, 6)
    expect(last.deeper).toBeCloseTo(2.1336 + 0.00635 - (depth + 0.45) - 0.03 - 0.01, 5)
  })

  it('are told from a stake where there is one: 2 m behind the edge each is 2 m farther out', () => {
    const staked = parsedDesign({
      ...demoDesign,
      site: { ...demoDesign.site, stake: { name: 'oak stake', x: -2 } },
    })
    expect(setLegs(projectFor(staked)).map(({ out }) => out)).toEqual(
      legs.map(({ out }) => expect.closeTo(out + 2, 6)),
    )
  })
})

it('as much deeper as the page says of the same leg', () => {
  let tried = 0
  fc.assert(
    fc.property(anyCase, ({ design, catalog }) => {
      const kit = deriveKit(design, catalog)
      const rooms = new Map(chancesOf(kit, errorsOf(kit.bed)).map(({ leg, room }) => [leg.id, room]))
      for (const { leg, deeper } of setLegs(projectFor(design, catalog))) {
        expect(deeper === null).toBe(!rooms.has(leg))
        if (deeper === null) continue
        expect(deeper).toBeCloseTo(Math.max(0, rooms.get(leg)!), 5)
        tried++
      }
    }),
    { numRuns: RUNS, seed: 20261128 },
  )
  expect(tried).toBeGreaterThan(RUNS)
})

describe('where extras go', () => {
  it('of a cleat in the middle of a right side, and one off the left corner of the lake end', () => {
    const design = parsedDesign({
      ...demoDesign,
      dock: {
        ...demoDesign.dock,
        extras: {},
        placed: [
          { code: 'cleat', section: 's4', edge: 'right', along: 1.2 },
          { code: 'cleat', section: 's5', edge: 'end', along: 0.3 },
        ],
      },
    })
    const places = extrasPlaced(projectFor(design))
    expect(places.map(({ section, edge }) => [section, edge])).toEqual([
      ['s4', 'right'],
      ['s5', 'end'],
    ])
    expect(places[0]!.along).toBeCloseTo(1.2, 3)
    expect(places[1]!.along).toBeCloseTo(0.3, 3)
  })

  it('of the same edge and place that they were asked for, on random docks', () => {
    let seen = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const project = projectFor(design, catalog)
        const ids = extrasPlaced(project).map(({ id }) => id)
        expect(new Set(ids).size).toBe(ids.length)
        seen += ids.length
        for (const { section, along, edge } of extrasPlaced(project)) {
          const on = project.dock.sections.find(({ id }) => id === section)!
          expect(along).toBeGreaterThanOrEqual(-1)
          expect(along).toBeLessThanOrEqual((edge === 'left' || edge === 'right' ? on.length : on.width) + 1)
        }
      }),
      { numRuns: RUNS, seed: 20261129 },
    )
    expect(seen).toBeGreaterThan(RUNS)
  })
})
