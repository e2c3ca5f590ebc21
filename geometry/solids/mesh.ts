/** Bodies, the closed pieces that a part is put together from, and how they become one Solid. */
import type { Vec3 } from '../../rules/index.ts'
import type { Look, Solid, SolidBody, SolidGroup } from '../types.ts'

/** One closed body while it is being made: flat lists, counter-clockwise from outside. */
export interface Body {
  readonly positions: number[]
  readonly normals: number[]
  readonly indices: number[]
  readonly look: Look
}

export const newBody = (look: Look): Body => ({ positions: [], normals: [], indices: [], look })

/** Adds a vertex; its index. */
export function vertex(body: Body, at: Vec3, normal: Vec3): number {
  body.positions.push(at[0], at[1], at[2])
  body.normals.push(normal[0], normal[1], normal[2])
  return body.positions.length / 3 - 1
}

/**
 * One Solid of many bodies, those of one look together.
 * @param color of its decking, where it has some
 */
export function solidFrom(bodies: readonly Body[], color?: string): Solid {
  const looks = [...new Set(bodies.map((b) => b.look))]
  const sorted = looks.flatMap((look) => bodies.filter((b) => b.look === look))
  const total = (list: 'positions' | 'indices'): number => sorted.reduce((sum, b) => sum + b[list].length, 0)
  const positions = new Float32Array(total('positions'))
  const normals = new Float32Array(positions.length)
  const indices = new Uint32Array(total('indices'))
  const ranges: SolidBody[] = []
  const groups: SolidGroup[] = []
  let at = 0
  let start = 0
  for (const body of sorted) {
    positions.set(body.positions, at)
    normals.set(body.normals, at)
    for (let i = 0; i < body.indices.length; i++) indices[start + i] = body.indices[i]! + at / 3
    const count = body.indices.length
    ranges.push({ start, count })
    const last = groups.at(-1)
    if (last?.material === body.look) groups[groups.length - 1] = { ...last, count: last.count + count }
    else groups.push({ start, count, material: body.look })
    at += body.positions.length
    start += count
  }
  return { positions, normals, indices, groups, bodies: ranges, ...(color === undefined ? {} : { color }) }
}
