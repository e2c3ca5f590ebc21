/** The standard normal distribution. */

/** So far out the rest is under 1e-16. */
const FAR = 8.3

/** Share of it below a value, to 1e-15 (Marsaglia, Evaluating the normal distribution, Journal of Statistical Software 11(4), 2004). */
export function normalBelow(value: number): number {
  if (value < -FAR) return 0
  if (value > FAR) return 1
  let [sum, before, term] = [value, 0, value]
  for (let odd = 3; sum !== before; odd += 2) {
    before = sum
    term *= (value * value) / odd
    sum += term
  }
  return Math.min(1, Math.max(0, 0.5 + (sum * Math.exp(-(value * value) / 2)) / Math.sqrt(2 * Math.PI)))
}

/** Standard deviations over the mean that 95 % lie below. */
export const SIGMAS_95 = 1.6448536269514722
