/** Three whole docks for one shore: what each may be, and that the one offered is the cheapest of those with least to mend. */
import { describe, expect, it } from 'vitest'
import { assess, type Design, demoCatalog, demoDesign, deriveKit, parseDesign } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { candidatesFor, KINDS } from '../../src/parameters/whole-docks/candidates.ts'
import { chooseDocks, type Derive } from '../../src/parameters/whole-docks/choose.ts'
import { fixesOf } from '../../src/parameters/whole-docks/fixes.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'

const shoreOf = (design: Design) => {
  const dock = deriveAtOnce(design, demoCatalog)
  return {
    bed: deriveKit(design, demoCatalog).bed,
    reach: footprintOfAll(dock.sections)!.x1,
    waves: dock.waves,
    snapUp: (height: number) => Math.ceil(height * 100 - 1e-6) / 100,
  }
}
const of = (design: Design) => candidatesFor(design, demoCatalog, shoreOf(design))!
const here: Derive = {
  place: async (design) => deriveAtOnce(design, demoCatalog),
  find: async (design) => assess(deriveKit(design, demoCatalog), { remedies: false }).findings,
}

describe('what each may be', () => {
  const candidates = of(demoDesign)

  it('is a design that can be read, goes as far out as the one in hand, and keeps its site, extras and boat', () => {
    const { reach } = shoreOf(demoDesign)
    for (const kind of KINDS) {
      expect(candidates[kind].length).toBeGreaterThan(0)
      for (const design of candidates[kind]) {
        expect(parseDesign(design).ok).toBe(true)
        expect(shoreOf(design).reach).toBeGreaterThanOrEqual(reach - 1e-6)
        expect(design.site).toEqual(demoDesign.site)
        expect(design.dock.extras).toEqual(demoDesign.dock.extras)
        expect(design.dock.ramp).toBe(demoDesign.dock.ramp)
      }
    }
  })

  it('of a straight dock is straight where it is to cost least, no narrower than the next size where it is to be comfortable, a T where there is to be room', () => {
    expect(candidates.least.every(({ dock }) => dock.head?.shape === 'straight')).toBe(true)
    const widths = new Map(demoCatalog.frames.map(({ code, width }) => [code, width]))
    expect(candidates.comfortable.map(({ dock }) => widths.get(dock.frame)! > 1.3)).toEqual([true])
    expect(candidates.room.every(({ dock }) => dock.head?.shape === 'tee' && dock.head.sections === 2)).toBe(
      true,
    )
  })

  it('is of the shape in hand, where one was chosen; for more room its end is one step larger', () => {
    for (const [shape, own, larger] of [
      ['left', 1, 2],
      ['right', 2, 3],
      ['tee', 2, 4],
      ['wide', 2, 3],
    ] as const) {
      const head = { shape, sections: own }
      const shaped = of(parsed({ ...demoDesign, dock: { ...demoDesign.dock, head } }))
      for (const kind of ['least', 'comfortable'] as const) {
        expect(shaped[kind].length).toBeGreaterThan(0)
        for (const { dock } of shaped[kind]) expect(dock.head).toEqual(head)
      }
      expect(shaped.room.length).toBeGreaterThan(0)
      for (const { dock } of shaped.room) expect(dock.head).toEqual({ shape, sections: larger })
    }
  })

  it('clears the waves: today where it is to cost least, all season where it is to be comfortable', () => {
    const { waves } = shoreOf(demoDesign)
    expect(Math.max(...candidates.least.map(({ dock }) => dock.deckHeight))).toBeGreaterThanOrEqual(
      waves!.recommendedDeckHeight,
    )
    for (const { dock } of candidates.comfortable)
      expect(dock.deckHeight).toBeGreaterThanOrEqual(waves!.recommendedAllSeason)
  })

  it('leaves out what names a leg or a place of the dock in hand; a plan of its own has none', () => {
    const named = parsed({
      ...demoDesign,
      dock: {
        ...demoDesign.dock,
        placed: [{ code: 'bumper', section: 's2', edge: 'left', along: 1 }],
        overrides: { 's2.end.left': { stock: 1.524 } },
        bracing: { first: 'right', none: ['s2.end'] },
      },
    })
    for (const design of Object.values(of(named)).flat()) {
      expect(design.dock.placed).toBeUndefined()
      expect(design.dock.overrides).toBeUndefined()
      expect(design.dock.bracing).toEqual({ first: 'right' })
    }
    const { sections: _, ramp: __, head: ___, ...dock } = demoDesign.dock
    const planned = parsed({ ...demoDesign, dock: { ...dock, plan: [{ id: 'a', on: null }] } })
    expect(candidatesFor(planned, demoCatalog, shoreOf(demoDesign))).toBeNull()
  })
})

describe('the one that is offered', () => {
  it('has nothing to mend here, in all three, and of those with nothing to mend costs least', async () => {
    const candidates = of(demoDesign)
    const docks = await chooseDocks(candidates, here, () => false)
    expect(docks.map(({ kind }) => kind)).toEqual([...KINDS])
    for (const { kind, design, dock, fixes } of docks) {
      expect(fixes).toEqual(fixesOf((await here.find(design))!))
      expect(fixes).toEqual({ stops: 0, warnings: 0 })
      expect(dock.totals.price).toBe(deriveAtOnce(design, demoCatalog).totals.price)
      for (const other of candidates[kind]) {
        const { stops, warnings } = fixesOf((await here.find(other))!)
        const price = deriveAtOnce(other, demoCatalog).totals.price
        if (stops === fixes.stops && warnings === fixes.warnings)
          expect(dock.totals.price).toBeLessThanOrEqual(price)
        else expect(stops * 1000 + warnings).toBeGreaterThan(fixes.stops * 1000 + fixes.warnings)
      }
    }
    expect(docks[0]!.dock.totals.price).toBeLessThan(docks[1]!.dock.totals.price)
    expect(docks[0]!.dock.totals.price).toBeLessThan(docks[2]!.dock.totals.price)
  })

  it('is left out where nothing can be worked out, and nobody is told who waits no more', async () => {
    const silent: Derive = { place: async () => null, find: async () => null }
    expect(await chooseDocks(of(demoDesign), silent, () => false)).toEqual([])
    expect(await chooseDocks(of(demoDesign), here, () => true)).toEqual([])
  })

  it('says what is to be mended where no such dock can be built', async () => {
    const deep = parsed({
      ...demoDesign,
      site: {
        ...demoDesign.site,
        soundings: demoDesign.site.soundings.map((s) => ({
          ...s,
          depth: s.depth > 0 ? s.depth * 4 : s.depth,
        })),
      },
    })
    const [least] = await chooseDocks(of(deep), here, () => false)
    expect(least!.fixes.stops).toBeGreaterThan(0)
  })
})
