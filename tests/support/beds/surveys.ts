/** True beds to survey, and random surveys of them. */
import fc from 'fast-check'
import type { Site, Sounding } from '../../../rules/design/index.ts'

export type TrueBed = (x: number, y: number) => number
type Place = readonly [x: number, y: number]

/** Evenly spread, to the tenth of a millimeter. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 1e4), max: Math.round(max * 1e4) }).map((n) => n / 1e4)

export const falls = between(0.02, 0.3)
/** Beds that have the water's edge where x = 0 on the dock's line. */
export const TRUE_BEDS: Readonly<Record<string, fc.Arbitrary<TrueBed>>> = {
  cylinder: fc.tuple(falls, between(0, 0.3), between(0.2, 1.5), between(0, 6), between(0.1, 0.4)).map(
    ([fall, high, turn, phase, bank]) =>
      (x) =>
        x < 0 ? -bank * x : -(fall * x + high * (Math.sin(turn * x + phase) - Math.sin(phase))),
  ),
  plane: fc.tuple(falls, between(-0.1, 0.1)).map(
    ([fall, aside]) =>
      (x, y) =>
        -fall * x - aside * y,
  ),
  fan: fc.tuple(falls, between(-0.02, 0.02)).map(
    ([fall, more]) =>
      (x, y) =>
        x < 0 ? -0.3 * x : -x * (fall + more * y),
  ),
  bowl: fc.tuple(falls, between(15, 60)).map(
    ([fall, radius]) =>
      (x, y) =>
        -fall * (radius - Math.hypot(x - radius, y)),
  ),
}

/** From the bank to 18 m out: some on the dock's line, some on one beside it, some anywhere. */
export const places: fc.Arbitrary<readonly Place[]> = fc
  .array(fc.tuple(between(-2.9, 17.9), fc.oneof(fc.constantFrom(0, 2), between(-5, 5))), {
    minLength: 1,
    maxLength: 14,
  })
  .map((list): readonly Place[] => [[-3, 0], [0, 0], [18, 0], [9.5, 1.5], ...list])

/** Of a bed, with differences from it by place (none: 0). */
export const surveyOf = (bed: TrueBed, list: readonly Place[], off: readonly number[] = []): Sounding[] =>
  list.map(([distance, offset], i) => ({ distance, offset, depth: -bed(distance, offset) + (off[i] ?? 0) }))

export const siteOf = (soundings: readonly Sounding[], more: Partial<Site> = {}): Site => ({
  soundings: [...soundings],
  soundingError: 0.03,
  levels: { low: 0, high: 0 },
  bottom: 'sand',
  ...more,
})

/** Rough surveys: soundings that are off any smooth bed. */
export const roughSurvey: fc.Arbitrary<Sounding[]> = fc
  .tuple(places, falls, fc.array(between(-0.3, 0.3), { minLength: 18, maxLength: 18 }))
  .map(([list, fall, off]) =>
    surveyOf((x) => (x < 0 ? -0.3 * x : -fall * x), list, [0, 0, ...off]).filter(
      (s, i, all) => all.findIndex((o) => o.distance === s.distance && o.offset === s.offset) === i,
    ),
  )
