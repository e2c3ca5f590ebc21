/**
 * How much of a long dock one crest of a wind sea reaches at once.
 *
 * Wind waves come from about one direction, not from one: of two places `y` apart along the crests the surface is correlated by
 * exp(−½ (k·σ·y)²) where directions are spread normally about the mean by σ (linear random sea; the phase between them is k·y·sin θ).
 * The mean of the surface over a length B then has, of the amplitude at one place, the root of 2/B² ∫₀ᴮ (B − y) exp(−½ (k·σ·y)²) dy:
 * what Battjes, Effects of short-crestedness on wave loads on long structures (Applied Ocean Research 4, 1982), has for such
 * structures (memory). Forces are taken down by that share, not by its square as drag would be (cautious).
 */

/** 25°: cos²ˢ with s about 10 at the peak, σ = √(2/(s + 1)) (Mitsuyasu et al. 1975; memory). */
export const SPREAD = Math.sqrt(2 / 11)

/** Intervals of Simpson's rule. */
const STEPS = 32
/** Correlation lengths after which nothing is left of it. */
const FAR = 6

/**
 * 0 to 1.
 *
 * @param across length along the crests, m
 * @param k wave number, rad/m
 */
export function coherentShare(across: number, k: number): number {
  if (across <= 0 || k <= 0) return 1
  const to = Math.min(across, FAR / (k * SPREAD))
  const h = to / STEPS
  let sum = 0
  for (let i = 0; i <= STEPS; i++) {
    const y = i * h
    const weight = i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2
    sum += weight * (across - y) * Math.exp(-0.5 * (k * SPREAD * y) ** 2)
  }
  return Math.min(1, Math.sqrt(((2 / across ** 2) * sum * h) / 3))
}
