/** Money in whole minor units, times a quantity or a share: exact in whole numbers, then rounded once, halves away from zero. */

/** A share counts to a millionth, a quantity to a thousandth. */
const MILLION = 1_000_000
const THOUSAND = 1000

/** As they count. */
export const millionthsOf = (share: number): number => Math.round(share * MILLION)
export const thousandthsOf = (quantity: number): number => Math.round(quantity * THOUSAND)

/** `amount` × `times` / `over`, all whole, halves away from zero. */
function scaled(amount: number, times: number, over: number): number {
  const product = BigInt(amount) * BigInt(times)
  const size = product < 0n ? -product : product
  const half = (2n * size + BigInt(over)) / (2n * BigInt(over))
  return Number(product < 0n ? -half : half) + 0
}

/** Unit price × quantity, minor units. */
export const productOf = (price: number, quantity: number): number =>
  scaled(price, thousandthsOf(quantity), THOUSAND)

/** A share (of 1) of an amount, minor units. */
export const shareOf = (amount: number, share: number): number => scaled(amount, millionthsOf(share), MILLION)

/** To the nearest multiple of a step, halves away from zero, minor units; as it is where there is no step. */
export const roundedTo = (amount: number, step = 1): number => scaled(amount, 1, step) * step
