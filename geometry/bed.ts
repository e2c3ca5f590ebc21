/** The lake bed as a mesh: a grid with a column at every break of the profile, so that breaks and a wall's edge are exact. */
import type { Bed } from '../rules/index.ts'
import type { Extent } from './types.ts'

/** The ground as triangles, m. */
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
  /** Distances of the columns and offsets of the rows, ascending, m. */
  readonly xs: readonly number[]
  readonly ys: readonly number[]
}

/** The step grows where a mesh would get more vertices than this: it is made anew while a sounding is dragged. */
const MOST_VERTICES = 20_000
/** With more breaks than this a column at each would be too many: the regular row is as near to the bed as its step. */
const MOST_BREAKS = 300
/** Two breaks this near to each other are the faces of a wall, m. */
const WALL = 1e-5

/**
 * Exact in line mode: there the ground is straight from side to side, so that two rows are enough. Where soundings were triangulated it is
 * exact at its vertices, `step` m apart along x and y.
 */
export function bedMesh(bed: Bed, extent: Extent, step: number): BedMesh {
  const { x0, x1, y0, y1 } = extent
  const coarse = Math.max(step, Math.sqrt(((x1 - x0) * (y1 - y0)) / MOST_VERTICES))
  return groundMesh(bedColumns(bed, x0, x1, coarse), bedRows(bed, y0, y1, coarse), bed.bedAt)
}

/**
 * Ground of any height over columns and rows, m. Where a column is there twice its face stands upright with hard edges: nothing is between
 * the two. `before`: of earlier ground; its triangles are taken over where columns and rows are the same.
 */
export function groundMesh(
  xs: readonly number[],
  ys: readonly number[],
  at: (x: number, y: number) => number,
  before: Pick<BedMesh, 'xs' | 'ys' | 'indices'> | null = null,
): BedMesh {
  const [nx, ny] = [xs.length, ys.length]
  const positions = new Float32Array(nx * ny * 3)
  const depths = new Float32Array(nx * ny)
  for (let j = 0, k = 0; j < ny; j++)
    for (let i = 0; i < nx; i++, k++) {
      const z = at(xs[i]!, ys[j]!)
      positions[3 * k] = xs[i]!
      positions[3 * k + 1] = ys[j]!
      positions[3 * k + 2] = z
      depths[k] = 0 - z
    }
  const indices =
    before && isSame(before.xs, xs) && isSame(before.ys, ys) ? before.indices : trianglesOf(xs, nx, ny)
  return { positions, normals: smoothNormals(positions, indices), indices, depths, nx, ny, xs, ys }
}

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i])

function trianglesOf(xs: readonly number[], nx: number, ny: number): Uint32Array {
  const indices = new Uint32Array((nx - 1) * (ny - 1) * 6)
  let used = 0
  for (let j = 0; j + 1 < ny; j++)
    for (let i = 0; i + 1 < nx; i++) {
      if (xs[i] === xs[i + 1]) continue
      const a = j * nx + i
      indices[used] = a
      indices[used + 1] = a + 1
      indices[used + 2] = a + nx + 1
      indices[used + 3] = a
      indices[used + 4] = a + nx + 1
      indices[used + 5] = a + nx
      used += 6
    }
  return indices.subarray(0, used)
}

/** Ascending offsets of a bed's rows: along one line of soundings the ends are enough. */
export function bedRows(bed: Bed, y0: number, y1: number, step: number): number[] {
  return regular(y0, y1, bed.mode === 'line' ? y1 - y0 : step)
}

/** Ascending distances of a bed's columns: a regular row, breaks in place of what is too near to them, the columns of a wall's edges twice. */
export function bedColumns(bed: Bed, x0: number, x1: number, step: number): number[] {
  const row = regular(x0, x1, step)
  // In area mode knots are a fine row of their own, of no use here, and a wall is the only break along x.
  const knots = bed.mode === 'line' ? bed.knots(x0, x1) : []
  const inner = knots.filter((x) => x > x0 && x < x1)
  const breaks = inner.length > MOST_BREAKS || bed.mode === 'area' ? wallOf(bed, x0, x1) : inner
  const near = step / 4
  const kept: number[] = []
  let next = 0
  row.forEach((x, i) => {
    while (next < breaks.length && breaks[next]! < x - near) next++
    if (i === 0 || i === row.length - 1 || next === breaks.length || breaks[next]! > x + near) kept.push(x)
  })
  const all = [...new Set([...kept, ...breaks])].sort((a, b) => a - b)
  return all.flatMap((x, i) => {
    const before = x - (all[i - 1] ?? Number.NEGATIVE_INFINITY)
    const after = (all[i + 1] ?? Number.POSITIVE_INFINITY) - x
    return before < WALL || after < WALL ? [x, x] : [x]
  })
}

function regular(from: number, to: number, step: number): number[] {
  const n = Math.max(1, Math.ceil((to - from) / step))
  return Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n)
}

/** Both sides of the water's edge where the ground jumps there. */
const wallOf = (bed: Bed, x0: number, x1: number): number[] =>
  x0 < 0 && x1 > 0 && Math.abs(bed.bedAt(-1e-7, bed.lineY) - bed.bedAt(0, bed.lineY)) > 1e-3 ? [-1e-7, 0] : []

/** By area, over the triangles at each vertex. */
function smoothNormals(p: Float32Array, indices: Uint32Array): Float32Array {
  const normals = new Float32Array(p.length)
  for (let t = 0; t < indices.length; t += 3) {
    const a = 3 * indices[t]!
    const b = 3 * indices[t + 1]!
    const c = 3 * indices[t + 2]!
    // Numbers, no tuples: this is done anew at every move of a sounding.
    const ux = p[b]! - p[a]!
    const uy = p[b + 1]! - p[a + 1]!
    const uz = p[b + 2]! - p[a + 2]!
    const wx = p[c]! - p[a]!
    const wy = p[c + 1]! - p[a + 1]!
    const wz = p[c + 2]! - p[a + 2]!
    const nx = uy * wz - uz * wy
    const ny = uz * wx - ux * wz
    const nz = ux * wy - uy * wx
    normals[a] = normals[a]! + nx
    normals[a + 1] = normals[a + 1]! + ny
    normals[a + 2] = normals[a + 2]! + nz
    normals[b] = normals[b]! + nx
    normals[b + 1] = normals[b + 1]! + ny
    normals[b + 2] = normals[b + 2]! + nz
    normals[c] = normals[c]! + nx
    normals[c + 1] = normals[c + 1]! + ny
    normals[c + 2] = normals[c + 2]! + nz
  }
  for (let v = 0; v < normals.length; v += 3) {
    const x = normals[v]!
    const y = normals[v + 1]!
    const z = normals[v + 2]!
    const k = 1 / (Math.sqrt(x * x + y * y + z * z) || 1)
    normals[v] = x * k
    normals[v + 1] = y * k
    normals[v + 2] = z * k
  }
  return normals
}
