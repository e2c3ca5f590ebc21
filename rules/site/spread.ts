/** Of many soundings a few that stand for them: means over a grid of bins with about as many soundings each. */
import type { Places } from './kriging.ts'

/** Bins along the dock, and to either side of its line. */
const ALONG = 16
const ASIDE = 4

export interface Means extends Places {
  readonly values: readonly Float64Array[]
}

/** Bank, water's edge and lake are kept apart, and so are the two sides. Mirrored soundings give mirrored bins. Ascending in x. */
export function meansOf({ x, y }: Places, values: readonly Float64Array[]): Means {
  const n = x.length
  const xBin = binsOf(x, ALONG)
  const yBin = binsOf(y.map(Math.abs), ASIDE)
  const bins = new Map<number, number[]>()
  for (let i = 0; i < n; i++) {
    const key =
      ((xBin(x[i]!) * 3 + Math.sign(x[i]!) + 1) * (ASIDE + 1) + yBin(Math.abs(y[i]!))) * 3 +
      Math.sign(y[i]!) +
      1
    const bin = bins.get(key)
    if (bin) bin.push(i)
    else bins.set(key, [i])
  }
  const mean = (list: readonly number[], of: Float64Array): number =>
    list.reduce((sum, i) => sum + of[i]!, 0) / list.length
  const rows = [...bins.values()]
    .map((list) => [mean(list, x), mean(list, y), ...values.map((of) => mean(list, of))])
    .sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!)
  const column = (k: number): Float64Array => Float64Array.from(rows, (row) => row[k]!)
  return { x: column(0), y: column(1), values: values.map((_, k) => column(k + 2)) }
}

/** Number of the bin of a value, of so many with as many values each; equal values share one. */
function binsOf(list: Float64Array, most: number): (value: number) => number {
  const sorted = list.slice().sort()
  const borders = Array.from(
    { length: most - 1 },
    (_, k) => sorted[Math.floor(((k + 1) * sorted.length) / most)]!,
  )
  return (value) => {
    let bin = 0
    while (bin < borders.length && value >= borders[bin]!) bin++
    return bin
  }
}
