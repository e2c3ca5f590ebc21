/** Where along a row the ground is over a height: what a search over kilometers passes in one step. */

/** From and to, m. */
export type Stretch = readonly [from: number, to: number]

/**
 * Stretches in which something that is straight between ascending `knots` is over `height`, in order. Where it is hollow side down between
 * them they are too short; never too long.
 */
export function stretchesOver(
  knots: readonly number[],
  at: (x: number) => number,
  height: number,
): Stretch[] {
  const found: [number, number][] = []
  let x = knots[0]!
  let over = at(x) - height
  let from: number | null = over > 0 ? x : null
  for (let i = 1; i < knots.length; i++) {
    const next = knots[i]!
    const then = at(next) - height
    if (over > 0 !== then > 0) {
      const crossing = x + (next - x) * (over / (over - then))
      if (from === null) from = crossing
      else {
        found.push([from, crossing])
        from = null
      }
    }
    x = next
    over = then
  }
  if (from !== null) found.push([from, x])
  return found
}

/** Stretches of several rows as one list: ascending, none touching the next. */
export function merged(rows: readonly (readonly Stretch[])[]): Stretch[] {
  const all = rows.flat().sort((a, b) => a[0] - b[0])
  const out: [number, number][] = []
  for (const [from, to] of all) {
    const last = out.at(-1)
    if (last && from <= last[1]) last[1] = Math.max(last[1], to)
    else out.push([from, to])
  }
  return out
}
