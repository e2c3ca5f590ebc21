/** Where the words of level lines stand: over or under their line, between what stands upright, no two in one place. Pixels. */

export interface LineWords {
  /** Of the line. */
  readonly y: number
  readonly width: number
  /** What stands up through the words' height: they stand between. */
  readonly uprights: readonly number[]
  /** What they may not reach beyond. */
  readonly to: number
}

/** A line of words, and air beside it. */
const HIGH = 13
const BESIDE = 4

/** Left ends of words and the lines they stand on; null where there is no room for them. @param from, foot what words stand within */
export function linePlaces(
  lines: readonly LineWords[],
  { from, foot }: { readonly from: number; readonly foot: number },
): ({ readonly x: number; readonly y: number } | null)[] {
  const taken: { readonly x: number; readonly y: number; readonly width: number }[] = []
  return lines.map(({ y, width, uprights, to }) => {
    const edges = [from, ...uprights.filter((x) => x > from && x < to).sort((a, b) => a - b), to]
    // Out on the lake first, where least else is written.
    const gaps = edges
      .slice(1)
      .map((right, i) => ({ right, wide: right - edges[i]! }))
      .filter(({ wide }) => wide >= width + 2 * BESIDE)
      .reverse()
    const all = gaps.flatMap(({ right }) =>
      [y - 4, y + HIGH - 2].map((at) => ({ x: right - BESIDE - width, y: at, width })),
    )
    const free = all.find(
      (one) =>
        one.y <= foot &&
        one.y >= HIGH &&
        taken.every(
          (other) =>
            Math.abs(other.y - one.y) >= HIGH || one.x + width < other.x || other.x + other.width < one.x,
        ),
    )
    if (free) taken.push(free)
    return free ?? null
  })
}
