/** Solids and ground as an independent mesh library (manifold-3d) has them. */
import Delaunator from 'delaunator'
import Module, { type Manifold } from 'manifold-3d'
import { type Solid, solidOf } from '../../../geometry/index.ts'
import type { Bed, Catalog, Design, Placement } from '../../../rules/index.ts'

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
export function withoutSleeves(solid: Solid, catalog: Catalog): Solid['bodies'] {
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

/**
 * The ground within a rectangle as upright blocks: in line mode from one break of the profile to the next, in area mode one under each triangle of the soundings
 * (then only what lies within their hull is there).
 */
export function groundManifold(
  bed: Bed,
  site: Design['site'],
  x0: number,
  x1: number,
  y0: number,
  y1: number,
): Manifold {
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
  // As the engine has it: soundings landward of a wall do not count, and a shore without any is 0 at the water's edge.
  const wall = site.shore?.kind === 'wall'
  const points = site.soundings
    .filter((s) => !wall || s.distance >= 0)
    .map((s) => [s.distance, s.offset] as [number, number])
  if (!wall && !points.some(([x]) => x <= 0)) points.push([0, bed.lineY])
  const { triangles } = Delaunator.from(points)
  for (let t = 0; t < triangles.length; t += 3)
    block(
      [0, 1, 2].map((k) => {
        const [x, y] = points[triangles[t + k]!]!
        return [x, y, bed.bedAt(x, y)] as const
      }),
    )
  return wasm.Manifold.compose(blocks)
}
