/** The lake bed as a mesh: a regular grid, with a column at every break of the profile, so that breaks and a wall's edge are exact. */
import type { Bed } from '../rules/index.ts'
import type { Extent } from './types.ts'

export interface BedMesh {
  /** Vertex of column i (along x) and row j (along y): number `j * nx + i`. */
  readonly positions: Float32Array
  readonly normals: Float32Array
  /** Counter-clockwise from above. */
  readonly indices: Uint32Array
  /** Depth under the water of the survey day at each vertex, m; negative on land. */
  readonly depths: Float32Array
  readonly nx: number
  readonly ny: number
}

/** The step grows where a mesh would get more vertices than this: it is made anew while a sounding is dragged. */
const MOST_VERTICES = 20_000
/** Two breaks this near to each other are the faces of a wall, m. */
const WALL = 1e-5

/**
 * Exact in line mode: there the ground is straight from side to side, so that two rows are enough. Where soundings were triangulated it is
 * exact at its vertices, `step` m apart along x and y. At a wall the columns of its upper and lower edge are there twice: its face is
 * upright and its edges are hard.
 */
export function bedMesh(bed: Bed, extent: Extent, step: number): BedMesh {
  const { x0, x1, y0, y1 } = extent
  const coarse = Math.max(step, Math.sqrt(((x1 - x0) * (y1 - y0)) / MOST_VERTICES))
  const xs = columns(bed, x0, x1, coarse)
  const rows = bed.mode === 'line' ? 1 : Math.max(1, Math.ceil((y1 - y0) / coarse))
  const ys = Array.from({ length: rows + 1 }, (_, j) => y0 + ((y1 - y0) * j) / rows)
  const [nx, ny] = [xs.length, ys.length]

  const positions = new Float32Array(nx * ny * 3)
  const depths = new Float32Array(nx * ny)
  for (let j = 0, k = 0; j < ny; j++)
    for (let i = 0; i < nx; i++, k++) {
      const z = bed.bedAt(xs[i]!, ys[j]!)
      positions[3 * k] = xs[i]!
      positions[3 * k + 1] = ys[j]!
      positions[3 * k + 2] = z
      depths[k] = 0 - z
    }
  const indices = new Uint32Array((nx - 1) * (ny - 1) * 6)
  let used = 0
  for (let j = 0; j + 1 < ny; j++)
    for (let i = 0; i + 1 < nx; i++) {
      // Twin columns of a wall lie on each other: nothing is between them.
      if (xs[i] === xs[i + 1]) continue
      const a = j * nx + i
      for (const v of [a, a + 1, a + nx + 1, a, a + nx + 1, a + nx]) indices[used++] = v
    }
  const kept = indices.slice(0, used)
  return { positions, normals: smoothNormals(positions, kept), indices: kept, depths, nx, ny }
}

/** Ascending distances: a regular row, breaks in place of what is too near to them, both columns of a wall's face twice. */
function columns(bed: Bed, x0: number, x1: number, step: number): number[] {
  const n = Math.max(1, Math.ceil((x1 - x0) / step))
  const regular = Array.from({ length: n + 1 }, (_, i) => x0 + ((x1 - x0) * i) / n)
  // In area mode knots are a fine row of their own, of no use here, and a wall is the only break along x.
  const knots = bed.mode === 'line' ? bed.knots(x0, x1) : wallOf(bed, x0, x1)
  const breaks = knots.filter((x) => x > x0 && x < x1)
  const near = step / 4
  const kept: number[] = []
  let next = 0
  regular.forEach((x, i) => {
    while (next < breaks.length && breaks[next]! < x - near) next++
    if (i === 0 || i === n || next === breaks.length || breaks[next]! > x + near) kept.push(x)
  })
  const all = [...new Set([...kept, ...breaks])].sort((a, b) => a - b)
  return all.flatMap((x, i) => {
    const before = x - (all[i - 1] ?? Number.NEGATIVE_INFINITY)
    const after = (all[i + 1] ?? Number.POSITIVE_INFINITY) - x
    return before < WALL || after < WALL ? [x, x] : [x]
  })
}

/** Both sides of the water's edge where the ground jumps there. */
const wallOf = (bed: Bed, x0: number, x1: number): number[] =>
  x0 < 0 && x1 > 0 && Math.abs(bed.bedAt(-1e-7, 0) - bed.bedAt(0, 0)) > 1e-3 ? [-1e-7, 0] : []

/** By area, over the triangles at each vertex. */
function smoothNormals(p: Float32Array, indices: Uint32Array): Float32Array {
  const normals = new Float32Array(p.length)
  for (let t = 0; t < indices.length; t += 3) {
    const a = 3 * indices[t]!
    const b = 3 * indices[t + 1]!
    const c = 3 * indices[t + 2]!
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!]
    const [wx, wy, wz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!]
    const [nx, ny, nz] = [uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx]
    for (let k = 0; k < 3; k++) {
      const v = k === 0 ? a : k === 1 ? b : c
      normals[v] = normals[v]! + nx
      normals[v + 1] = normals[v + 1]! + ny
      normals[v + 2] = normals[v + 2]! + nz
    }
  }
  for (let v = 0; v < normals.length; v += 3) {
    const long = Math.hypot(normals[v]!, normals[v + 1]!, normals[v + 2]!) || 1
    for (let k = 0; k < 3; k++) normals[v + k] = normals[v + k]! / long
  }
  return normals
}
