/**
 * Corrected depths against draws: a true bed is drawn by the covariance it is taken to have, sounded with error, then measured at some legs
 * on a day whose level is off. What is told of the other legs is as far off as it says.
 */
import { describe, expect, it } from 'vitest'
import { corrected, depthErrors } from '../../../rules/at-lake/corrected-depths.ts'
import { betweenIn, varianceIn } from '../../../rules/fit/between.ts'
import { demoDesign, makeBed } from '../../../rules/index.ts'
import { errorsOf } from '../../../rules/site/error-at.ts'
import { covarianceOf } from '../../../rules/site/kriging.ts'
import { drawn, normal } from './support/drawn.ts'

const ROUGHNESS = 0.002
const SOUNDING = 0.03
const LEVEL = 0.02
const READING = 0.01

/** Lower factor, written out once more. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const l = matrix.map((row) => row.map(() => 0))
  matrix.forEach((row, i) => {
    for (let k = 0; k <= i; k++) {
      let sum = row[k]!
      for (let j = 0; j < k; j++) sum -= l[i]![j]! * l[k]![j]!
      l[i]![k] = i === k ? Math.sqrt(Math.max(sum, 1e-12)) : sum / l[k]![k]!
    }
  })
  return l
}

const LEGS = [
  { x: 2, y: 0.6 },
  { x: 2, y: -0.6 },
  { x: 4.5, y: 0.6 },
  { x: 4.5, y: -0.6 },
  { x: 7, y: 0.6 },
  { x: 7, y: -0.6 },
]
/** Measured on the day, by number, and those across from them. */
const MEASURED = [0, 3]
const BESIDE = [1, 2]

const line = [3, 6, 9].map((distance) => ({ distance, offset: 0, depth: 0.1 * distance }))
const area = [
  [2.5, 1],
  [3, -1.5],
  [5, 1.5],
  [6, -1],
  [8, 0.5],
].map(([distance, offset]) => ({ distance: distance!, offset: offset!, depth: 0.1 * distance! }))

describe.each([
  ['on one line', line],
  ['off the line', area],
])('soundings %s', (_, soundings) => {
  const bed = makeBed({ ...demoDesign.site, soundings, soundingError: SOUNDING })
  // The roughness is known here: what the soundings make of it is tested elsewhere.
  const errors = { ...errorsOf(bed), roughness: () => ROUGHNESS }
  const depths = depthErrors(LEGS, errors, bed)

  it('errors and their covariance are those of the bed, worked out in sums', () => {
    const between = betweenIn(errors)
    const known = LEGS.map(({ x, y }) => errors.known(x, y)!)
    for (const [a, p] of known.entries()) {
      expect(depths.bed[a]).toBeCloseTo(Math.sqrt(varianceIn(errors, p)), 9)
      for (const [b, q] of known.entries())
        if (a !== b) expect(depths.covariances(b)[a]!).toBeCloseTo(varianceIn(errors, between(p, q)), 9)
    }
  })

  it('is off by what it says, over draws of beds, soundings and days', () => {
    const random = normal(drawn(21))
    const covariance = covarianceOf(true)
    const { x, y } = errors.places
    const places = [...Array.from(x, (at, i) => ({ x: at, y: y[i]! })), ...LEGS]
    const factor = cholesky(places.map((a) => places.map((b) => covariance(a.x, a.y, b.x, b.y) * ROUGHNESS)))
    const known = LEGS.map((leg) => errors.known(leg.x, leg.y)!)
    const n = x.length
    const times = 4000
    const lake = { sum: 0, squares: 0 }
    const off = LEGS.map(() => ({ sum: 0, squares: 0, alone: 0 }))
    for (let time = 0; time < times; time++) {
      const drawnNow = places.map(() => random())
      const truth = factor.map((row) => row.reduce((sum, share, k) => sum + share * drawnNow[k]!, 0))
      const noise = Array.from({ length: n }, () => SOUNDING * random())
      const edge = SOUNDING * random()
      const level = LEVEL * random()
      // How much deeper the water is than is to be expected: the bed lies lower, the lake stands higher.
      const deeper = known.map(({ shares }, i) => {
        const rest = shares.reduce((left, [, share]) => left - share, 1)
        const mean = shares.reduce((sum, [k, share]) => sum + share * (truth[k]! + noise[k]!), rest * edge)
        return mean - truth[n + i]! + level
      })
      const measured = MEASURED.map((place) => ({
        place,
        deeper: deeper[place]! + READING * random(),
        error: READING,
      }))
      const { all, level: found } = corrected(depths, measured, LEVEL)
      const wrong = (level - found.higher) / found.sd
      lake.sum += wrong
      lake.squares += wrong * wrong
      all.forEach((told, i) => {
        const miss = (deeper[i]! - told.deeper) / told.sd
        off[i]!.sum += miss
        off[i]!.squares += miss * miss
        off[i]!.alone += (deeper[i]! / told.sd) ** 2
      })
    }
    expect(Math.abs(lake.sum / times)).toBeLessThan(4 / Math.sqrt(times))
    expect(Math.abs(lake.squares / times - 1)).toBeLessThan(4 * Math.sqrt(2 / times))
    for (const [i, { sum, squares, alone }] of off.entries()) {
      // Four standard errors of a mean, and of a variance, of so many draws.
      expect(Math.abs(sum / times), `leg ${i}`).toBeLessThan(4 / Math.sqrt(times))
      expect(Math.abs(squares / times - 1), `leg ${i}`).toBeLessThan(4 * Math.sqrt(2 / times))
      // Uncorrected it would be off by more than it says: the test can fail.
      if (BESIDE.includes(i)) expect(alone / times, `leg ${i}`).toBeGreaterThan(1.15)
    }
  })

  it('what is told of a measured leg from the others is what it would be without its own', () => {
    const measured = [
      { place: 0, deeper: 0.05, error: READING },
      { place: 3, deeper: -0.02, error: READING },
      { place: 4, deeper: 0.01, error: READING },
    ]
    const { others } = corrected(depths, measured, LEVEL)
    for (const { place } of measured) {
      const without = corrected(
        depths,
        measured.filter((one) => one.place !== place),
        LEVEL,
      )
      expect(others[place]!.deeper).toBeCloseTo(without.all[place]!.deeper, 9)
      expect(others[place]!.sd).toBeCloseTo(without.all[place]!.sd, 9)
    }
  })
})

describe('a foot on a stone', () => {
  /** Five pairs, as deep as they are expected; soundings every four meters. */
  const soundings = [4, 8, 12].map((distance) => ({ distance, offset: 0, depth: 0.12 * distance }))
  const legs = [1.1, 3.4, 5.9, 8.3, 10.8].flatMap((x) => [0.5, -0.5].map((y) => ({ x, y })))
  const bed = makeBed({ ...demoDesign.site, soundings, soundingError: SOUNDING })
  const depths = depthErrors(legs, errorsOf(bed), bed)
  const reading = (place: number, deeper: number) => ({ place, deeper, error: READING })
  const STONE = -0.356
  const flat = [0, 0.012, 0.008, -0.012, 0.025, 0.01, 0.038]

  it('is of that leg alone: the legs beyond and those beside stay where they were expected', () => {
    const { all, others } = corrected(
      depths,
      [...flat, STONE].map((by, i) => reading(i, by)),
      READING,
    )
    for (const place of [8, 9]) {
      // The stone is 356 mm; the rest lies within 40 mm.
      expect(Math.abs(all[place]!.deeper), `leg ${place + 1}`).toBeLessThan(0.06)
      // One in eight stood on a stone: the next may too, one standard deviation of that.
      expect(all[place]!.sd).toBeGreaterThan(Math.abs(STONE) / Math.sqrt(8) - 0.03)
    }
    for (const place of [4, 5, 6]) expect(Math.abs(others[place]!.deeper)).toBeLessThan(0.06)
    // Of the stone itself it is still said that it is far off.
    expect(Math.abs(STONE - others[7]!.deeper)).toBeGreaterThan(3 * others[7]!.sd + 0.05)
  })

  it('a bank that several legs stand on is no stone', () => {
    const { all } = corrected(
      depths,
      [...flat.slice(0, 6), -0.33, STONE].map((by, i) => reading(i, by)),
      READING,
    )
    // Farther out it fades; that it is there is not lost.
    for (const place of [8, 9]) expect(all[place]!.deeper).toBeLessThan(-0.1)
  })

  it('of two that contradict each other, and a lake that nobody knows, neither is thrown away', () => {
    const { all } = corrected(depths, [reading(0, 0), reading(1, STONE)], 1)
    // Left goes by the left one, right by the right one: together by both.
    const both = (all[4]!.deeper + all[5]!.deeper) / 2
    expect(both).toBeLessThan(-0.1)
    expect(both).toBeGreaterThan(STONE + 0.1)
  })

  /** Beds of their own making: a slope with waves of any length along and across it, stones under some of the legs. */
  it.each([0, 0.12])(
    'next depths are as far off as they say, where %f of the legs stand on stones',
    (rate) => {
      const random = drawn(7)
      const deviate = normal(random)
      const misses: number[] = []
      let within = 0
      for (let time = 0; time < 250; time++) {
        const waves = Array.from({ length: 4 }, () => ({
          by: 0.02 * deviate(),
          k: (2 * Math.PI) / (4 + 12 * random()),
          across: random() - 0.5,
          phase: 2 * Math.PI * random(),
        }))
        const waved = (x: number, y: number): number =>
          waves.reduce(
            (sum, { by, k, across, phase }) => sum + by * Math.cos(k * (x + across * y) + phase),
            0,
          )
        const depthAt = (x: number, y: number): number => 0.12 * x + waved(x, y)
        const sounded = soundings.map(({ distance }) => ({
          ...{ distance, offset: 0 },
          depth: depthAt(distance, 0) + SOUNDING * deviate(),
        }))
        const own = makeBed({ ...demoDesign.site, soundings: sounded, soundingError: SOUNDING })
        const known = depthErrors(legs, errorsOf(own), own)
        const deeper = legs.map(({ x, y }) => depthAt(x, y) + own.firmAt(x, y))
        const measured = legs.slice(0, 8).map((_, i) => {
          const stone = random() < rate ? -(0.25 + 0.2 * random()) : 0
          return reading(i, deeper[i]! + stone + READING * deviate())
        })
        const { all } = corrected(known, measured, READING)
        for (const place of [8, 9]) {
          const miss = deeper[place]! - all[place]!.deeper
          misses.push(miss)
          if (Math.abs(miss) < 2 * all[place]!.sd) within++
        }
      }
      const rms = Math.sqrt(misses.reduce((sum, miss) => sum + miss ** 2, 0) / misses.length)
      // The bed itself is known to about 50 mm there; a stone that bent it would add a multiple of that.
      expect(rms).toBeLessThan(0.08)
      expect(within / misses.length).toBeGreaterThan(0.9)
    },
  )
})
