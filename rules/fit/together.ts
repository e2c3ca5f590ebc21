/**
 * The chance that all legs fit, and that they do with so many longer ones at hand. Errors of legs that stand near each other hang together,
 * so it is no product of the legs' own chances: it is a share of a normal distribution in as many dimensions as there are legs in doubt,
 * taken as the mean over a lattice (Richtmyer's: multiples of the roots of primes; Genz and Bretz, Computation of Multivariate Normal and t
 * Probabilities, 2009, section 4.2.2.1), normal deviates by Box and Muller. The same for the same dock every time: nothing is drawn.
 */
import type { Errors } from '../site/error.ts'
import { betweenIn, varianceIn } from './between.ts'
import type { Chance } from './chances.ts'

/** A leg as sure as this is left out of the lattice, and counts by itself, which is cautious (Šidák 1967). */
const SURE = 0.9999
/** So many of the legs least sure are in it. */
const MOST = 32
/** Places of the lattice: the chance is good to half a percent. */
const PLACES = 4096

/**
 * By number of longer legs at hand, from none to `spares`.
 *
 * @param longer how much more room such a leg has than that one, m; null where there is none
 */
export function chancesTogether(
  all: readonly Chance[],
  errors: Errors,
  spares: number,
  longer: (chance: Chance) => number | null,
): number[] {
  const doubted = all
    .filter(({ chance, known }) => chance < SURE && known)
    .sort((a, b) => a.chance - b.chance)
    .slice(0, MOST)
  const inLattice = new Set(doubted)
  const rest = all.reduce((product, one) => (inLattice.has(one) ? product : product * one.chance), 1)
  const n = doubted.length
  if (n === 0) return Array.from({ length: spares + 1 }, () => rest)
  const factor = factorOf(doubted, errors)
  const alphas = rootsOfPrimes(2 * n)
  const more = doubted.map(longer)
  const deviates = new Float64Array(n)
  const counts = new Float64Array(spares + 1)
  for (let place = 1; place <= PLACES; place++) {
    for (let i = 0; i < n; i++) {
      const [u, v] = [share(place * alphas[2 * i]!), share(place * alphas[2 * i + 1]!)]
      deviates[i] = Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * v)
    }
    let short = 0
    for (let i = 0; i < n && short <= spares; i++) {
      let lower = 0
      for (let k = 0; k <= i; k++) lower += factor[i]![k]! * deviates[k]!
      const { room } = doubted[i]!
      if (lower <= room + 1e-6) continue
      const by = more[i]
      // A leg that no longer one replaces is past all spares.
      short += by != null && lower <= room + by + 1e-6 ? 1 : spares + 1
    }
    for (let k = short; k <= spares; k++) counts[k] = counts[k]! + 1
  }
  return Array.from(counts, (count) => (count / PLACES) * rest)
}

const share = (value: number): number => value - Math.floor(value)

function rootsOfPrimes(count: number): number[] {
  const primes: number[] = []
  for (let n = 2; primes.length < count; n++) if (primes.every((p) => n % p !== 0)) primes.push(n)
  return primes.map(Math.sqrt)
}

/** Lower factor of the covariance of the errors of these legs, m. */
function factorOf(chances: readonly Chance[], errors: Errors): Float64Array[] {
  const between = betweenIn(errors)
  const rows: Float64Array[] = []
  chances.forEach((a, i) => {
    const row = new Float64Array(i + 1)
    for (let k = 0; k <= i; k++) {
      let sum = k === i ? a.error ** 2 : varianceIn(errors, between(a.known!, chances[k]!.known!))
      const other = k === i ? row : rows[k]!
      for (let j = 0; j < k; j++) sum -= row[j]! * other[j]!
      // Two legs in one place: the second goes with the first.
      row[k] = k === i ? Math.sqrt(Math.max(0, sum)) : other[k]! > 1e-12 ? sum / other[k]! : 0
    }
    rows.push(row)
  })
  return rows
}
