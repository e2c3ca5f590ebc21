/** The water's surface: what of the drawn bed lies under it, laid flat. */
import type { BedMesh } from './bed.ts'

export interface WaterSurface {
  readonly positions: Float32Array
  /** Counter-clockwise from above. */
  readonly indices: Uint32Array
  /** Water under each vertex, m; 0 at the shoreline. */
  readonly depths: Float32Array
}

/** `level`: over the water of the survey day, m. Ends exactly where the drawn bed comes through it. */
export function waterSurface(mesh: BedMesh, level: number): WaterSurface {
  const { positions: bed, indices: faces, depths: under } = mesh
  const vertices = under.length
  // Vertices under water keep their place; those of the shoreline, one on each edge that it crosses, come after them.
  const numbers = new Int32Array(vertices).fill(-1)
  const shore = new Map<number, number>()
  const xy: number[] = []
  let wetVertices = 0
  for (let v = 0; v < vertices; v++) if (under[v]! + level > 0) numbers[v] = wetVertices++
  /** From the lower number, so that both triangles of an edge find the same place. */
  const crossing = (v: number, w: number): number => {
    const [a, b] = v < w ? [v, w] : [w, v]
    const key = a * vertices + b
    const known = shore.get(key)
    if (known !== undefined) return known
    const t = (under[a]! + level) / (under[a]! - under[b]!)
    for (const k of [0, 1]) xy.push(bed[3 * a + k]! + t * (bed[3 * b + k]! - bed[3 * a + k]!))
    shore.set(key, wetVertices + shore.size)
    return wetVertices + shore.size - 1
  }
  const indices = new Uint32Array(faces.length * 2)
  let used = 0
  const corners = [0, 0, 0, 0]
  for (let t = 0; t < faces.length; t += 3) {
    let n = 0
    for (let k = 0; k < 3; k++) {
      const a = faces[t + k]!
      const b = faces[t + (k === 2 ? 0 : k + 1)]!
      const wet = numbers[a]! >= 0
      if (wet) corners[n++] = numbers[a]!
      if (wet !== numbers[b]! >= 0) corners[n++] = crossing(a, b)
    }
    for (let i = 2; i < n; i++) {
      indices[used++] = corners[0]!
      indices[used++] = corners[i - 1]!
      indices[used++] = corners[i]!
    }
  }

  const total = wetVertices + shore.size
  const positions = new Float32Array(total * 3)
  const depths = new Float32Array(total)
  for (let v = 0; v < vertices; v++) {
    const i = numbers[v]!
    if (i < 0) continue
    positions[3 * i] = bed[3 * v]!
    positions[3 * i + 1] = bed[3 * v + 1]!
    depths[i] = under[v]! + level
  }
  for (let s = 0; s < shore.size; s++) {
    positions[3 * (wetVertices + s)] = xy[2 * s]!
    positions[3 * (wetVertices + s) + 1] = xy[2 * s + 1]!
  }
  for (let i = 0; i < total; i++) positions[3 * i + 2] = level
  return { positions, indices: indices.slice(0, used), depths }
}
