/** Solids and ground as an independent mesh library (manifold-3d) has them. */
import Module, { type Manifold } from 'manifold-3d'
import { type Solid, solidOf } from '../../../geometry/index.ts'
import type { Bed, Catalog, Placement } from '../../../rules/index.ts'

export const wasm = await Module()
wasm.setup()

/** One closed body of a solid; throws where it is no manifold. */
export function bodyManifold(solid: Solid, { start, count }: Solid['bodies'][number]): Manifold {
  const mesh = new wasm.Mesh({
    numProp: 3,
    vertProperties: solid.positions,
    triVerts: solid.indices.slice(start, start + count),
  })
  mesh.merge()
  return wasm.Manifold.ofMesh(mesh)
}

const filled = (solid: Solid, bodies: Solid['bodies']): Manifold =>
  wasm.Manifold.compose(bodies.map((body) => bodyManifold(solid, body).hull()))

/** Column-major, of a turn and a move. */
export function matrixOf({ at, turn: [x, y, z, w] }: Placement): Parameters<Manifold['transform']>[0] {
  return [
    1 - 2 * (y * y + z * z),
    2 * (x * y + z * w),
    2 * (x * z - y * w),
    0,
    2 * (x * y - z * w),
    1 - 2 * (x * x + z * z),
    2 * (y * z + x * w),
    0,
    2 * (x * z + y * w),
    2 * (y * z - x * w),
    1 - 2 * (x * x + y * y),
    0,
    ...at,
    1,
  ] as Parameters<Manifold['transform']>[0]
}

/** A frame's sleeves are told from its rails by their size. */
function withoutSleeves(solid: Solid, catalog: Catalog): Solid['bodies'] {
  return solid.bodies.filter((body) => {
    const { min, max } = bodyManifold(solid, body).boundingBox()
    const upright = Math.abs(max[2] - min[2] - catalog.sleeve.length) < 1e-6
    return !(upright && max[0] - min[0] < 0.2 && max[1] - min[1] < 0.2)
  })
}

const shapes = new WeakMap<Catalog, Map<string, Manifold>>()
/** A part in its own frame with its tubes filled, made once: the hull of each of its bodies. `sleeves: false` leaves a frame's sleeves out. */
export function partManifold(
  kind: Placement['kind'],
  code: string,
  catalog: Catalog,
  sleeves = true,
): Manifold {
  const known = shapes.get(catalog) ?? new Map<string, Manifold>()
  shapes.set(catalog, known)
  const key = `${kind} ${code} ${sleeves}`
  const solid = solidOf(kind, code, catalog)
  const made = known.get(key) ?? filled(solid, sleeves ? solid.bodies : withoutSleeves(solid, catalog))
  known.set(key, made)
  return made
}

/** Far under any lake, m. */
const FLOOR = -100

/** Blocks stand at most this far off ground that is twisted between its corners, m. */
const OFF = 4e-4

/**
 * The ground within a rectangle as upright blocks: from one break of the profile to the next; in area mode over each cell of the bed's
 * grid, cut up until a flat top will do. Not for a wall in area mode, nor for so many soundings that some are triangulated.
 */
export function groundManifold(bed: Bed, x0: number, x1: number, y0: number, y1: number): Manifold {
  const blocks: Manifold[] = []
  const block = (plan: readonly (readonly [number, number, number])[]): void => {
    const m = wasm.Manifold.hull(
      plan.flatMap(
        ([x, y, z]) =>
          [
            [x, y, z],
            [x, y, FLOOR],
          ] as [number, number, number][],
      ),
    )
    if (m.volume() > 0) blocks.push(m)
  }
  if (bed.mode === 'line') {
    const xs = bed.knots(x0, x1)
    for (let i = 0; i + 1 < xs.length; i++) {
      const [a, b] = [xs[i]!, xs[i + 1]!]
      if (b - a < 1e-6) continue
      // A wall's edge belongs to the lake: seen from the land the height is the one just before it.
      const end = Math.abs(b) < 1e-9 ? -1e-7 : b
      block([
        [a, y0, bed.bedAt(a, y0)],
        [a, y1, bed.bedAt(a, y1)],
        [b, y0, bed.bedAt(end, y0)],
        [b, y1, bed.bedAt(end, y1)],
      ])
    }
    return wasm.Manifold.compose(blocks)
  }
  if (bed.triangulation) throw new Error('groundManifold: triangulated soundings')
  const between = (list: Float64Array, from: number, to: number): number[] => [
    from,
    ...[...list].filter((v) => v > from && v < to),
    to,
  ]
  const xs = between(bed.grid!.xs, x0, x1)
  const ys = between(bed.grid!.ys, y0, y1)
  for (let i = 0; i + 1 < xs.length; i++)
    for (let k = 0; k + 1 < ys.length; k++) {
      const [a, b, c, d] = [xs[i]!, xs[i + 1]!, ys[k]!, ys[k + 1]!]
      const twist = bed.bedAt(a, c) + bed.bedAt(b, d) - bed.bedAt(a, d) - bed.bedAt(b, c)
      const n = Math.ceil(Math.sqrt(Math.abs(twist) / 4 / OFF)) || 1
      const corner = (p: number, q: number): [number, number, number] => {
        const [x, y] = [a + ((b - a) * p) / n, c + ((d - c) * q) / n]
        return [x, y, bed.bedAt(x, y)]
      }
      for (let p = 0; p < n; p++)
        for (let q = 0; q < n; q++)
          block([corner(p, q), corner(p + 1, q), corner(p, q + 1), corner(p + 1, q + 1)])
    }
  return wasm.Manifold.compose(blocks)
}
