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
export function contours(mesh: BedMesh, depths: readonly number[]): Contour[] {
  return depths.flatMap((depth) => contoursAt(mesh, depth))
}

/** Depths at equal steps from the shallowest to the deepest place of a bed, without 0. */
export function depthSteps(mesh: BedMesh, step: number, from = step): number[] {
  let deepest = Number.NEGATIVE_INFINITY
  for (const depth of mesh.depths) deepest = Math.max(deepest, depth)
  const n = Math.floor((deepest - from) / step + 1e-9)
  return Array.from({ length: Math.max(0, n + 1) }, (_, i) => from + i * step)
}

function contoursAt({ positions, indices, depths }: BedMesh, depth: number): Contour[] {
  const vertices = depths.length
  // From the edge that a line comes in by to the edge that it leaves by, within each triangle. An edge is its two vertices, ascending.
  const next = new Map<number, number>()
  const entered = new Set<number>()
  const edge = (a: number, b: number): number => (a < b ? a * vertices + b : b * vertices + a)
  for (let t = 0; t < indices.length; t += 3) {
    let into = -1
    let out = -1
    for (let k = 0; k < 3; k++) {
      const a = indices[t + k]!
      const b = indices[t + ((k + 1) % 3)]!
      const [deepA, deepB] = [depths[a]! >= depth, depths[b]! >= depth]
      // Counter-clockwise round the triangle: going shallow keeps the deep ground on the left of the line that comes in here.
      if (deepA && !deepB) into = edge(a, b)
      else if (!deepA && deepB) out = edge(a, b)
    }
    if (into >= 0) {
      next.set(into, out)
      entered.add(out)
    }
  }
  const place = (key: number): [number, number, number] => {
    const a = Math.floor(key / vertices)
    const b = key % vertices
    const t = (depth - depths[a]!) / (depths[b]! - depths[a]!)
    const along = (k: number): number =>
      positions[3 * a + k]! + t * (positions[3 * b + k]! - positions[3 * a + k]!)
    return [along(0), along(1), -depth]
  }
  const lines: Contour[] = []
  const follow = (start: number): void => {
    const points: number[] = []
    let key: number | undefined = start
    while (key !== undefined) {
      points.push(...place(key))
      const to: number | undefined = next.get(key)
      next.delete(key)
      key = to
      if (key === start) break
    }
    lines.push({ depth, points: new Float32Array(points), closed: key === start })
  }
  // Open lines first, from where they begin at the border; what is left closes upon itself.
  for (const key of [...next.keys()]) if (!entered.has(key)) follow(key)
  for (const key of next.keys()) follow(key)
  return lines
}
