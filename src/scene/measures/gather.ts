/** Marks that would lie on one another become one that says how many it stands for. Plain numbers, px. */

export interface Mark {
  readonly id: string
  readonly x: number
  readonly y: number
}

export interface Gathered extends Mark {
  readonly count: number
}

/** Marks nearer to one another than this are one, px. */
const NEAR = 40
/** More than this would be the picture. */
const MOST = 8

/** `marks`, the gravest first, which stay where they are; none of those that are left stands within `NEAR` of another. */
export function gathered(marks: readonly Mark[]): Gathered[] {
  const kept: (Mark & { count: number })[] = []
  for (const { id, x, y } of marks) {
    const near = kept.find((other) => Math.hypot(other.x - x, other.y - y) < NEAR)
    if (near) near.count++
    else if (kept.length < MOST) kept.push({ id, x, y, count: 1 })
  }
  return kept
}
