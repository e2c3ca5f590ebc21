/**
 * A boat is not always at its dock. What wind and waves do to the dock without it they do to it on the day that it is out: so no figure of a
 * dock is milder for the boat that it is meant for, and no weather that carries it over without one is left out.
 */
import { describe, expect, it } from 'vitest'
import { assess, type Design, demoCatalog, deriveKit, type Structure } from '../../../rules/index.ts'
import { ordinaryDock } from '../../../src/build/guide/ordinary-docks.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 1)
const RUNS = runs(8)

const structureOf = (design: Design): Structure =>
  assess(deriveKit(design, demoCatalog), { remedies: false }).structure!

/** An L in waves that carry it over, with a pontoon boat in it: its worst leg is the head's. */
const corner = parsedDesign({
  format: 'leadline/design',
  version: 1,
  name: '',
  site: {
    soundings: [
      { distance: -3.048, depth: -0.6 },
      { distance: 0, depth: 0 },
      { distance: 3.048, depth: 0.6096 },
      { distance: 9.144, depth: 1.2192 },
      { distance: 14, depth: 1.5 },
    ],
    soundingError: 0.03,
    levels: { low: -0.1524, high: 0.1524 },
    bottom: 'sand',
    wind: { speed: 15, fetch: 1800 },
  },
  dock: {
    deckHeight: 0.4572,
    frame: '4x8',
    sections: 5,
    ramp: true,
    start: null,
    head: { shape: 'left', sections: 1 },
    extras: {},
    boat: { length: 6.1, height: 0.5, draught: 0.4, mass: 1000, side: 'left' },
  },
})

const milder = (design: Design): string[] => {
  const { boat: _, ...dock } = design.dock
  const [own, out] = [design, { ...design, dock }].map(structureOf) as [Structure, Structure]
  const less = (name: string, now: number | null, then: number | null): string[] =>
    (now ?? 0) < (then ?? 0) - 1e-6 ? [`${name}: ${then} without the boat, ${now} with it`] : []
  return [
    ...out.falls.filter((name) => !own.falls.includes(name)),
    ...out.legs.flatMap((leg, i) => less(leg.leg, own.legs[i]!.use, leg.use)),
    ...out.braces.flatMap((brace, i) => less(brace.pair, own.braces[i]!.use, brace.use)),
    ...out.rails.flatMap((rail, i) => less(`rail of ${rail.section}`, own.rails[i]!.use, rail.use)),
    ...out.feet.flatMap((foot, i) => less(`foot of ${foot.leg}`, own.feet[i]!.pressure, foot.pressure)),
    ...out.hooks.flatMap((hook, i) => less(hook.joint, own.hooks[i]!.up, hook.up)),
    ...less('sliding', own.slides.push, out.slides.push),
  ]
}

describe('a dock that a boat is meant for', () => {
  it('has a worst leg no better than without it', () => {
    expect(milder(corner)).toEqual([])
  })

  it(`is told of nothing more mildly, on ${RUNS} ordinary docks (from seed ${SEED})`, () => {
    let carriedOver = 0
    for (let seed = SEED; seed < SEED + RUNS; seed++) {
      const design = ordinaryDock(seed, { scene: 'open small lake', posts: 0, boat: true }, demoCatalog)
      if (structureOf(design).falls.length > 0) carriedOver++
      expect(milder(design)).toEqual([])
    }
    // Where no dock goes over, more load is more on every part, boat or not.
    expect(carriedOver).toBeGreaterThan(0)
  }, 60_000)
})
