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
