/** A straight line through points, with how surely it is known. */

export interface Line {
  /** Per unit of x. */
  readonly slope: number
  /** One standard error of it; null with two points, which lie on any line. */
  readonly sd: number | null
  readonly count: number
}

/** Least squares (any textbook of statistics); null with fewer than two different x. */
export function lineThrough(points: readonly (readonly [x: number, y: number])[]): Line | null {
  const n = points.length
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n
  let [sxx, sxy] = [0, 0]
  for (const [x, y] of points) {
    sxx += (x - mx) ** 2
    sxy += (x - mx) * (y - my)
  }
  if (!(sxx > 0)) return null
  const slope = sxy / sxx
  const rest = points.reduce((sum, [x, y]) => sum + (y - my - slope * (x - mx)) ** 2, 0)
  return { slope, sd: n > 2 ? Math.sqrt(rest / (n - 2) / sxx) : null, count: n }
}
