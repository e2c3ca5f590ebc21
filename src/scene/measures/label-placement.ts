/** Where labels stand on the screen: greedy by importance, none over another. Plain numbers, px. */

export interface Wanted {
  readonly id: string
  /** Points that it may stand at, the best first. */
  readonly anchors: readonly { readonly x: number; readonly y: number }[]
  readonly width: number
  readonly height: number
  /** Stands on its anchor; others stand beside theirs. */
  readonly centered: boolean
}

export interface Placed {
  readonly id: string
  /** Upper left corner. */
  readonly x: number
  readonly y: number
}

interface Box {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

/** Free room around each, and from an anchor to its label, px. */
const GAP = 3
const BESIDE = [9, 22, 38]

/**
 * `wanted` in order of importance: what comes first stays, what finds no free place is left out. Of the free places the first
 * that covers least of `shown`, points of what the picture is about. `head`: height along the upper edge that stays free.
 */
export function place(
  wanted: readonly Wanted[],
  width: number,
  height: number,
  shown: readonly { readonly x: number; readonly y: number }[] = [],
  head = 0,
): Placed[] {
  const taken: Box[] = []
  const placed: Placed[] = []
  for (const label of wanted) {
    let best: { box: Box; covers: number } | null = null
    for (const { x, y } of spots(label)) {
      const box = { x0: x, y0: y, x1: x + label.width, y1: y + label.height }
      if (x < GAP || y < head + GAP || box.x1 > width - GAP || box.y1 > height - GAP) continue
      if (taken.some((other) => meets(box, other, GAP))) continue
      const covers = label.centered
        ? 0
        : shown.filter((p) => meets(box, { x0: p.x, y0: p.y, x1: p.x, y1: p.y }, 0)).length
      if (best && best.covers <= covers) continue
      best = { box, covers }
      if (covers === 0) break
    }
    if (!best) continue
    taken.push(best.box)
    // On whole pixels, or the letters blur.
    placed.push({ id: label.id, x: Math.round(best.box.x0), y: Math.round(best.box.y0) })
  }
  return placed
}

const meets = (a: Box, b: Box, gap: number): boolean =>
  a.x0 < b.x1 + gap && a.x1 > b.x0 - gap && a.y0 < b.y1 + gap && a.y1 > b.y0 - gap

/** Right, left, above, below; then the same farther off. */
function spots({ anchors, width: w, height: h, centered }: Wanted): { x: number; y: number }[] {
  if (centered) return anchors.map(({ x, y }) => ({ x: x - w / 2, y: y - h / 2 }))
  return BESIDE.flatMap((d) =>
    anchors.flatMap(({ x, y }) => [
      { x: x + d, y: y - h / 2 },
      { x: x - d - w, y: y - h / 2 },
      { x: x - w / 2, y: y - d - h },
      { x: x - w / 2, y: y + d },
      { x: x + d * 0.7, y: y - d * 0.7 - h },
      { x: x - d * 0.7 - w, y: y - d * 0.7 - h },
      { x: x + d * 0.7, y: y + d * 0.7 },
      { x: x - d * 0.7 - w, y: y + d * 0.7 },
    ]),
  )
}
