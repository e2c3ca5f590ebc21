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
  const positions: number[] = []
  const depths: number[] = []
  const indices: number[] = []
  const vertices = mesh.depths.length
  const under = (v: number): number => mesh.depths[v]! + level
  const put = (x: number, y: number, depth: number): number => {
    positions.push(x, y, level)
    depths.push(depth)
    return depths.length - 1
  }
  // Numbers here of the bed's own vertices and of places on its edges (the two vertices in one key); -1 and none until they are used.
  const corners = new Int32Array(vertices).fill(-1)
  const crossings = new Map<number, number>()
  const corner = (v: number): number => {
    if (corners[v] === -1) corners[v] = put(mesh.positions[3 * v]!, mesh.positions[3 * v + 1]!, under(v))
    return corners[v]!
  }
  /** Where the shoreline crosses an edge; from the lower number, so that both its triangles find the same place. */
  const crossing = (v: number, w: number): number => {
    const [a, b] = v < w ? [v, w] : [w, v]
    const t = under(a) / (under(a) - under(b))
    const at = (k: number): number =>
      mesh.positions[3 * a + k]! + t * (mesh.positions[3 * b + k]! - mesh.positions[3 * a + k]!)
    const key = a * vertices + b
    const known = crossings.get(key)
    if (known !== undefined) return known
    const made = put(at(0), at(1), 0)
    crossings.set(key, made)
    return made
  }
  const face: number[] = []
  for (let t = 0; t < mesh.indices.length; t += 3) {
    face.length = 0
    for (let k = 0; k < 3; k++) {
      const a = mesh.indices[t + k]!
      const b = mesh.indices[t + ((k + 1) % 3)]!
      const [wetA, wetB] = [under(a) > 0, under(b) > 0]
      if (wetA) face.push(corner(a))
      if (wetA !== wetB) face.push(crossing(a, b))
    }
    for (let i = 2; i < face.length; i++) indices.push(face[0]!, face[i - 1]!, face[i]!)
  }
  return {
    positions: new Float32Array(positions),
    indices: new Uint32Array(indices),
    depths: new Float32Array(depths),
  }
}
