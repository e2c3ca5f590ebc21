/** Which leg is meant, on screen and paper: numbers without a gap, places unlike each other, holes where the clamps are. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Catalog,
  type Design,
  demoCatalog,
  demoDesign,
  ENGLISH,
  formatLength,
  type Leg,
} from '../../rules/index.ts'
import { braceHoles, legNumber, legPlace } from '../../rules/leg-places.ts'
import { anyCase } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { runs } from '../support/runs.ts'

const at = (x: number): string => formatLength(x, { units: 'metric', language: ENGLISH })

const check = (design: Design, catalog: Catalog): number => {
  const dock = deriveAtOnce(design, catalog)
  expect(dock.legs.map(({ id }) => legNumber(dock, id))).toEqual(dock.legs.map((_, i) => i + 1))
  const known = new Map<string, Leg>()
  for (const leg of dock.legs) {
    const { out, side, aside } = legPlace(dock, leg)
    const place = `${at(out)} ${side} ${aside === null ? '' : at(aside)}`
    const other = known.get(place) ?? leg
    // Two sections laid over one another, which is found, have legs in one place.
    expect(Math.hypot(leg.x - other.x, leg.y - other.y), `${other.id}, ${leg.id}: ${place}`).toBeLessThan(
      0.02,
    )
    known.set(place, leg)
  }
  const clamps = dock.placements.filter(({ kind }) => kind === 'brace-clamp')
  for (const leg of dock.legs)
    for (const { pair, up } of braceHoles(dock, leg)) {
      const here = clamps.filter(
        (clamp) => clamp.of === pair && Math.hypot(clamp.at[0] - leg.x, clamp.at[1] - leg.y) < 1e-5,
      )
      expect(here.length, leg.id).toBe(1)
      expect(leg.bed + up).toBeCloseTo(here[0]!.at[2], 5)
    }
  return dock.legs.filter((leg) => braceHoles(dock, leg).length > 0).length
}

describe('a leg', () => {
  it('of the example has a number from the shore outward, a side as one looks at the lake, and its brace low or high', () => {
    const dock = deriveAtOnce(demoDesign, demoCatalog)
    const [seven, eight] = [dock.legs[6]!, dock.legs[7]!]
    expect(legNumber(dock, 's4.end.left')).toBe(7)
    expect(legNumber(dock, 'none')).toBe(0)
    expect(legPlace(dock, seven)).toEqual({ out: seven.x, side: 'left', aside: null })
    expect(legPlace(dock, eight).side).toBe('right')
    const { lowZ, highZ, low, code } = dock.pairs.find(({ id }) => id === 's4.end')!.brace!
    const [a, b] = low === seven.id ? [seven, eight] : [eight, seven]
    expect(braceHoles(dock, a)).toEqual([{ pair: 's4.end', code, end: 'low', up: lowZ - a.bed }])
    expect(braceHoles(dock, b)).toEqual([{ pair: 's4.end', code, end: 'high', up: highZ - b.bed }])
    expect(braceHoles(dock, dock.legs[0]!)).toEqual([])
  })

  it('of a head that turns away is told by how far off the middle line it stands', () => {
    const head = { shape: 'tee', sections: 2 } as const
    const dock = deriveAtOnce({ ...demoDesign, dock: { ...demoDesign.dock, head } }, demoCatalog)
    const right = dock.legs.find(({ id }) => id === 'h2.end.left')!
    expect(right.y).toBeLessThan(0)
    expect(legPlace(dock, right)).toEqual({ out: right.x, side: 'right', aside: -right.y })
  })

  const RUNS = runs(300)
  it(`of ${RUNS} random docks has a place like no other, and each hole a clamp`, () => {
    let braced = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        braced += check(design, catalog)
      }),
      { numRuns: RUNS, seed: Number(process.env.LEADLINE_SEED ?? 1207) },
    )
    expect(braced).toBeGreaterThan(RUNS)
  })
})
