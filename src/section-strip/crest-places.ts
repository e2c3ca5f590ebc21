/** Where words stand in the water of the strip: between legs and lead lines, where no other words are. Pixels from the upper left. */

export interface Room {
  /** Lines that stand upright, which words had better not cross; words stand between the outermost. */
  readonly uprights: readonly number[]
  /** What words may not reach beyond. */
  readonly from: number
  readonly to: number
  /** Of the words. */
  readonly width: number
  /** Down to where the water must go under them. */
  readonly floor: number
  bedAt(x: number): number
}

/** Between two of them, px. */
const APART = 10

/** Air between words and the uprights beside them, both together, px. */
const BESIDE = 6

/** Up to `most` middles for words, where they have room between two uprights, the lakeward ones first; none that cross one. */
export function wordPlaces({ uprights, from, to, width, floor, bedAt }: Room, most: number): number[] {
  const edges = [...uprights].sort((a, b) => a - b)
  const gaps = edges
    .slice(1)
    .map((right, i) => {
      const left = edges[i]!
      const x = Math.min(to - width / 2, Math.max(from + width / 2, (left + right) / 2))
      return { x, beside: Math.min(x - left, right - x) }
    })
    .filter(
      ({ x, beside }) =>
        2 * beside >= width + BESIDE &&
        [x - width / 2, x, x + width / 2].every((at) => at >= from && bedAt(at) >= floor),
    )
    .sort((a, b) => b.x - a.x)
  const taken: number[] = []
  for (const { x } of gaps)
    if (taken.length < most && taken.every((other) => Math.abs(other - x) >= width + APART)) taken.push(x)
  return taken
}

/** Elevation of a line of points at a distance, by straight pieces. */
export function heightAt(points: readonly (readonly [number, number])[], x: number): number {
  const i = points.findIndex(([px]) => px >= x)
  if (i <= 0) return points.at(i)?.[1] ?? 0
  const [[ax, az], [bx, bz]] = [points[i - 1]!, points[i]!]
  return bx === ax ? bz : az + ((bz - az) * (x - ax)) / (bx - ax)
}
