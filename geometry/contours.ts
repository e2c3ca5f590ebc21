/** Depth contours: where the drawn bed itself crosses a depth, so that the lines lie on it. */
import type { BedMesh } from './bed.ts'

export interface Contour {
  /** Under the water of the survey day, m; negative on land. */
  readonly depth: number
  /** x, y, z of each point. */
  readonly points: Float32Array
  /** The last point joins the first. */
  readonly closed: boolean
}

/** Lines at each of the depths given, deeper ground on their left, joined as far as they go. */
export function contours(
  { positions, indices, depths: under }: BedMesh,
  depths: readonly number[],
): Contour[] {
  const vertices = under.length
  // An edge is its two vertices, ascending. By line: from the edge that it comes into a triangle by to the edge that it leaves by.
  const edge = (a: number, b: number): number => (a < b ? a * vertices + b : b * vertices + a)
  const lines = [...depths].sort((a, b) => a - b).map((depth) => ({ depth, next: new Map<number, number>() }))
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [indices[t]!, indices[t + 1]!, indices[t + 2]!]
    const [da, db, dc] = [under[a]!, under[b]!, under[c]!]
    const least = Math.min(da, db, dc)
    const most = Math.max(da, db, dc)
    // Most triangles lie between two lines.
    for (const { depth, next } of lines) {
      if (depth > most) break
      if (depth <= least) continue
      const [ina, inb, inc] = [da >= depth, db >= depth, dc >= depth]
      // Counter-clockwise round the triangle: going shallow keeps the deep ground on the left of the line that comes in here.
      const into = ina && !inb ? edge(a, b) : inb && !inc ? edge(b, c) : edge(c, a)
      const out = !ina && inb ? edge(a, b) : !inb && inc ? edge(b, c) : edge(c, a)
      next.set(into, out)
    }
  }
  return lines.flatMap(({ depth, next }) =>
    joined(next).map(({ edges, closed }) => {
      const points = new Float32Array(edges.length * 3)
      edges.forEach((key, i) => {
        const a = Math.floor(key / vertices)
        const b = key % vertices
        const t = (depth - under[a]!) / (under[b]! - under[a]!)
        for (let k = 0; k < 2; k++)
          points[3 * i + k] = positions[3 * a + k]! + t * (positions[3 * b + k]! - positions[3 * a + k]!)
        points[3 * i + 2] = -depth
      })
      return { depth, points, closed }
    }),
  )
}

/** Depths at equal steps down to the deepest place, without 0. */
export function depthSteps(deepest: number, step: number): number[] {
  const n = Math.floor(deepest / step + 1e-9)
  return Array.from({ length: Math.max(0, n) }, (_, i) => (i + 1) * step)
}

/** Chains of edges: open ones first, from where they begin at the border; what is left closes upon itself. */
function joined(next: Map<number, number>): { edges: number[]; closed: boolean }[] {
  const entered = new Set(next.values())
  const chains: { edges: number[]; closed: boolean }[] = []
  const follow = (start: number): void => {
    const edges: number[] = []
    let key: number | undefined = start
    while (key !== undefined) {
      edges.push(key)
      const to: number | undefined = next.get(key)
      next.delete(key)
      key = to
      if (key === start) break
    }
    chains.push({ edges, closed: key === start })
  }
  for (const key of [...next.keys()]) if (!entered.has(key)) follow(key)
  for (const key of next.keys()) follow(key)
  return chains
}
