/**
 * How surely legs fit: the closed form against draws of whole beds with their soundings; 95 % against beds that the model did not make; the
 * next sounding against beds that have it.
 */
import { describe, expect, it } from 'vitest'
import type { Sounding } from '../../rules/design/index.ts'
import { betweenIn } from '../../rules/fit/between.ts'
import { chanceOf, chancesOf, type Chance as LegChance } from '../../rules/fit/chances.ts'
import { fitOf } from '../../rules/fit/fit.ts'
import { errorWith, nextSounding } from '../../rules/fit/next-sounding.ts'
import { normalBelow, SIGMAS_95 } from '../../rules/fit/normal.ts'
import { chancesTogether } from '../../rules/fit/together.ts'
import { type Design, demoCatalog, demoDesign, derive, deriveKit, makeBed } from '../../rules/index.ts'
import type { Errors } from '../../rules/site/error.ts'
import { errorsOf } from '../../rules/site/error-at.ts'
import { covarianceOf, factorOf } from '../../rules/site/kriging.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { siteOf } from '../support/beds/surveys.ts'
import {
  type Chance,
  chance,
  DX,
  DY,
  EDGE,
  type Grid,
  MIDDLE,
  NX,
  NY,
  node,
  walks,
} from '../support/beds/walks.ts'
import { runs } from '../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 20_261)

describe('the normal distribution', () => {
  // Abramowitz and Stegun, table 26.1.
  it.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [1.6448536269514722, 0.95],
    [-2.5, 0.006209665325776],
    [-6, 9.865876e-10],
  ])('has below %f a share of %f', (value, share) => {
    expect(normalBelow(value)).toBeCloseTo(share, 13)
  })

  it('has all below what is far out, and is even', () => {
    expect([normalBelow(-40), normalBelow(40)]).toEqual([0, 1])
    for (const x of [0.3, 1.7, 4.2]) expect(normalBelow(x) + normalBelow(-x)).toBeCloseTo(1, 14)
  })
})

/** The catalog's legs on a bed sounded so; sections straight out. */
const dockOn = (soundings: readonly Sounding[], error: number, dock: Partial<Design['dock']> = {}): Design =>
  parsedDesign({
    ...demoDesign,
    site: { ...demoDesign.site, soundings, soundingError: error, levels: { low: -0.2, high: 0.1 } },
    dock: { ...demoDesign.dock, ...dock },
  })

const LINE = [-3, 0, 5, 11, 16].map((distance) => ({ distance, offset: 0, depth: 0.09 * distance }))
const AREA = [...LINE, { distance: 4, offset: 2.5, depth: 0.4 }, { distance: 12, offset: -3, depth: 1.2 }]

/** The same legs with so much room that each is in doubt, as of a bed of this roughness. */
function inDoubt(soundings: readonly Sounding[], error: number, roughness: number) {
  const kit = deriveKit(dockOn(soundings, error), demoCatalog)
  const errors: Errors = { ...errorsOf(kit.bed), roughness: () => roughness }
  const legs = chancesOf(kit, errorsOf(kit.bed)).map((one, i): LegChance => {
    const { spread, noise } = one.known!
    const own = Math.sqrt(roughness * spread + error ** 2 * noise)
    const room = [0.4, 0.9, 1.3, 1.7][i % 4]! * own
    return { ...one, error: own, room, chance: chanceOf(room, own) }
  })
  return { kit, errors, legs }
}

describe(`closed form against draws (seed ${SEED})`, () => {
  it.each([
    ['a line', LINE, 0.03, 0.004],
    ['an area', AREA, 0.02, 0.002],
    ['an area sounded badly', AREA, 0.08, 0.001],
  ] as const)('of the bed and its soundings: %s', (_, soundings, error, roughness) => {
    const { legs, errors } = inDoubt(soundings, error, roughness)
    const N = runs(2500)
    const random = chance(SEED)
    // A bed as the model takes one to be, at the soundings and the legs together.
    const covariance = covarianceOf(true)
    const x = Float64Array.from([...soundings.map((s) => s.distance), ...legs.map(({ leg }) => leg.x)])
    const y = Float64Array.from([...soundings.map((s) => s.offset), ...legs.map(({ leg }) => leg.y)])
    const { rows } = factorOf({ x, y }, covariance)
    const fits = new Array<number>(legs.length).fill(0)
    const together = [0, 0, 0]
    const longer = 0.05
    for (let n = 0; n < N; n++) {
      const e = Float64Array.from(x, () => random.normal() * Math.sqrt(roughness))
      const z = rows.map((row) => row.reduce((sum, v, k) => sum + v * e[k]!, 0))
      // So steep a fall lakeward that the bed never comes to rise beyond the last sounding, which the model does not allow.
      const truth = z.map((v, i) => v - 0.1 * x[i]!)
      const bed = makeBed(
        siteOf(
          soundings.map((s, i) => ({ ...s, depth: error * random.normal() - truth[i]! })),
          { soundingError: error },
        ),
      )
      let [short, never] = [0, false]
      legs.forEach(({ leg, room }, i) => {
        const lower = bed.bedAt(leg.x, leg.y) - truth[soundings.length + i]!
        if (lower <= room) fits[i]!++
        else short++
        if (lower > room + longer) never = true
      })
      for (let k = 0; k < 3; k++) if (short <= k && !never) together[k]!++
    }
    const near = (drawn: number, told: number, more = 0): void => {
      const four = 4 * Math.sqrt((told * (1 - told)) / N)
      expect(Math.abs(drawn / N - told)).toBeLessThan(four + more)
      // And it would see an error of a tenth.
      expect(four + more).toBeLessThan(0.06)
    }
    for (const [i, one] of legs.entries()) near(fits[i]!, one.chance)
    // The lattice itself is good to half a percent.
    for (const [k, told] of chancesTogether(legs, errors, 2, () => longer).entries())
      near(together[k]!, told, 0.005)
    // Legs that stand near each other fail together: more often all fit than their chances' product says.
    const product = legs.reduce((all, one) => all * one.chance, 1)
    expect(chancesTogether(legs, errors, 0, () => null)[0]!).toBeGreaterThan(product + 0.02)
  })
})

/** A survey of a bed of walks, as that of `bed-error.test.ts`, and the bed anywhere. */
function surveyed(random: Chance, error: number, off: boolean) {
  const pick = (n: number): number => Math.floor(random.uniform() * n)
  const grid: Grid = walks(random)
  const list = new Map<string, Sounding>()
  const sound = (i: number, j: number): void =>
    void list.set(`${i} ${j}`, { ...node(i, j), depth: error * random.normal() - grid(i, j) })
  for (const i of [0, EDGE, NX]) sound(i, MIDDLE)
  for (let k = 4 + pick(5); k > 0; k--) sound(pick(NX + 1), off ? MIDDLE - 4 + pick(9) : MIDDLE)
  const truth = (x: number, y: number): number => {
    const [u, v] = [x / DX + EDGE, y / DY + MIDDLE]
    const [i, j] = [Math.min(NX - 1, Math.floor(u)), Math.min(NY - 1, Math.floor(v))]
    const [s, t] = [u - i, v - j]
    const along = (row: number): number => grid(i, row) * (1 - s) + grid(i + 1, row) * s
    return along(j) * (1 - t) + along(j + 1) * t
  }
  return { soundings: [...list.values()], truth }
}

describe(`on ${runs(600)} random beds of a roughness that it is not told (seed ${SEED})`, () => {
  it.each([
    ['on one line', false],
    ['off it', true],
  ])('19 of 20 means 93 to 97 of 100: soundings %s', (_, off) => {
    const random = chance(SEED + 1)
    let [legs, held, held80, told, fit] = [0, 0, 0, 0, 0]
    for (let b = 0; b < runs(600); b++) {
      const error = b % 2 === 0 ? 0.01 : 0.05
      const { soundings, truth } = surveyed(random, error, off)
      const design = dockOn(soundings, error, { sections: 3 + (b % 3) })
      const kit = deriveKit(design, demoCatalog)
      for (const { leg, error: own, room, chance: now } of chancesOf(kit, errorsOf(kit.bed))) {
        if (leg.x > (NX - EDGE) * DX || leg.x < -EDGE * DX) continue
        const lower = leg.bed - truth(leg.x, leg.y)
        legs++
        if (lower <= SIGMAS_95 * own) held++
        if (lower <= 0.8416 * own) held80++
        told += now
        if (lower <= room) fit++
      }
    }
    expect(legs).toBeGreaterThan(runs(3600))
    expect(held / legs).toBeGreaterThan(0.93)
    expect(held / legs).toBeLessThan(0.97)
    // Not so 80 %.
    expect(held80 / legs).toBeLessThan(0.9)
    expect(Math.abs(told - fit) / legs).toBeLessThan(0.02)
  })
})

describe('one more sounding', () => {
  it.each([0, 0.03, 0.1])('leaves the error that a bed with it has (sounding error %f)', (error) => {
    const { errors, legs } = inDoubt(AREA, error, 0.002)
    for (const { known: at } of legs) {
      const more = [...AREA, { distance: at!.x, offset: at!.y, depth: 0.7 }]
      const after = errorsOf(makeBed(siteOf(more, { soundingError: error })))
      for (const { known } of legs) {
        const { spread, noise } = after.known(known!.x, known!.y)!
        expect(errorWith(known!, at!, errors, betweenIn(errors)) ** 2).toBeCloseTo(
          0.002 * spread + error ** 2 * noise,
          12,
        )
      }
    }
  })

  it('is told where none of all those under the legs would tell more, worked out with beds that have it (soundings off one line)', () => {
    for (const [soundings, error] of [
      [AREA.slice(1), 0.02],
      [AREA, 0.03],
    ] as const) {
      const { errors, legs } = inDoubt(soundings, error, 0.003)
      const place = nextSounding(legs, errors)!
      const gainAt = (x: number, y: number): number => {
        const after = errorsOf(
          makeBed(siteOf([...soundings, { distance: x, offset: y, depth: 0.6 }], { soundingError: error })),
        )
        return legs.reduce((sum, { leg, room, chance: now }) => {
          const { spread, noise } = after.known(leg.x, leg.y)!
          return sum + chanceOf(room, Math.sqrt(0.003 * spread + error ** 2 * noise)) - now
        }, 0)
      }
      const best = Math.max(...legs.map(({ leg }) => gainAt(leg.x, leg.y)))
      expect(gainAt(place.x, place.y)).toBeGreaterThan(best - 1e-6)
    }
  })

  it('is not told where all is sure, nor one where a sounding is already', () => {
    const kit = deriveKit(dockOn(LINE, 0.03), demoCatalog)
    const sure = chancesOf(kit, errorsOf(kit.bed)).map((one) => ({ ...one, chance: 1, room: 1 }))
    expect(nextSounding(sure, errorsOf(kit.bed))).toBe(null)
    const { x, y } = kit.legs[0]!
    const on = [...AREA, { distance: x, offset: y, depth: 0.5 }]
    const own = deriveKit(dockOn(on, 0.05), demoCatalog)
    const only = chancesOf(own, errorsOf(own.bed))
      .filter(({ leg }) => leg.id === kit.legs[0]!.id)
      .map((one) => ({ ...one, room: 0, chance: 0.5 }))
    expect(only).toHaveLength(1)
    expect(nextSounding(only, errorsOf(own.bed))).toBe(null)
  })
})

describe('a dock whose legs are in doubt', () => {
  const sparse = [-3, 0, 20].map((distance) => ({ distance, offset: 0, depth: 0.12 * distance }))
  const dock = derive(dockOn(sparse, 0.08, { deckHeight: 0.44 }), demoCatalog)
  const { fit } = dock

  it('says so, where a sounding would help and how many longer legs would', () => {
    const told = dock.findings.find(({ code }) => code === 'soundings-leave-doubt')!
    expect(told.parts.length).toBeGreaterThan(2)
    expect(fit!.all).toBeLessThan(0.8)
    expect(told.severity).toBe(fit!.all < 0.5 ? 'warn' : 'note')
    expect(told.values.chance!.value).toBe(fit!.all)
    expect(fit!.sounding!.x).toBeGreaterThan(3)
    expect(fit!.sounding!.x).toBeLessThan(14)
    const { chances, length } = fit!.spares!
    expect([...chances].sort((a, b) => a - b)).toEqual(chances)
    expect(chances[0]!).toBeGreaterThan(fit!.all)
    expect(length).toBeGreaterThan(dock.legs.find(({ id }) => id === told.parts[0])!.stock!)
  })

  it('keeps what scour, sinking in and high water take, and lets the rest be used up', () => {
    const { scour, deckOverHigh } = demoCatalog.rules
    // Sand; the high level 0.1 m, the deck 0.44 m up, clear of it by more than the margin: it never goes up.
    expect(0.44 - 0.1).toBeGreaterThan(deckOverHigh.value)
    const stays = scour.value.sand + demoCatalog.pads[0]!.sinkage.sand
    expect(stays).toBeGreaterThan(0.01)
    for (const { leg, room, error, reserve95 } of fit!.legs) {
      expect(room).toBeCloseTo(dock.legs.find(({ id }) => id === leg)!.aboveDeck! - stays, 5)
      expect(reserve95).toBeCloseTo(stays + 1.644854 * error, 5)
    }
  })

  it('says why of each leg', () => {
    for (const { leg, chance: told } of fit!.legs) {
      const reason = dock.reasons.legs[leg]!.at(-1)!
      expect(reason.rule).toBe('fit-chance')
      expect(reason.result).toEqual({ value: told, unit: 'share' })
    }
  })

  it('is in doubt no more with the soundings that it asks for, one after the other', () => {
    let list: readonly Sounding[] = sparse
    let now = fit
    for (let k = 0; k < 6 && now!.sounding; k++) {
      const { x, y } = now!.sounding!
      list = [...list, { distance: x, offset: y, depth: -makeBed(siteOf(list)).bedAt(x, y) }]
      now = fitOf(deriveKit(dockOn(list, 0.08, { deckHeight: 0.44 }), demoCatalog))
    }
    expect(now!.all).toBeGreaterThan(Math.max(0.8, fit!.all))
  })
})
