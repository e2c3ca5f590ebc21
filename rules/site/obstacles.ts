/**
 * What lies on the bed, as solids: so that drawings, clearances and checks all mean the same thing.
 *
 * Nobody measures a boulder's outline under water: a length, a width and how high its top stands over the bed is all that is known of it,
 * so each kind is the plainest solid that has those three and is never smaller than the thing where it is widest:
 * - `boulder`: an ellipsoid around its place on the bed; the half that is seen is as wide as it was measured where it meets the bed, and the
 *   other half is in the bottom, or bare on the deep side of a slope as a boulder's foot is.
 * - `stump`: an upright elliptic cylinder, as thick at its top as at its foot.
 * - `other`: a box, which leaves nothing out.
 * The last two reach down to the lowest bed under their rim, so that on a slope none hangs in the water. m, the dock's frame of reference.
 */
import type { Body } from '../clearance/convex.ts'
import type { Obstacle } from '../design/index.ts'
import type { Vec3 } from '../dock.ts'
import { cosOf, sinOf } from '../layout/footprint.ts'
import type { Bed } from './bed.ts'

type Solid = Exclude<Body, { shape: 'cylinder' }>

export function obstacleSolid(obstacle: Obstacle, bed: Pick<Bed, 'bedAt'>): Solid {
  const { kind, x, y, length, width, height } = obstacle
  const [c, s] = [cosOf(obstacle.heading), sinOf(obstacle.heading)]
  const along: Vec3 = [(c * length) / 2, (s * length) / 2, 0]
  const aside: Vec3 = [(-s * width) / 2, (c * width) / 2, 0]
  const ground = bed.bedAt(x, y)
  if (kind === 'boulder')
    return { shape: 'ellipsoid', middle: [x, y, ground], edges: [along, aside, [0, 0, height]] }
  const top = ground + height
  const rim = (k: number, m: number): number =>
    bed.bedAt(x + k * along[0] + m * aside[0], y + k * along[1] + m * aside[1])
  const foot = Math.min(ground, ...CORNERS.map(([k, m]) => rim(k, m)))
  const edges = [along, aside, [0, 0, (top - foot) / 2]] as const
  return { shape: kind === 'stump' ? 'drum' : 'box', middle: [x, y, (top + foot) / 2], edges }
}

const CORNERS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const

/** Its outline in plan: corners of a box, so many places round what is round. */
export function obstacleOutline(obstacle: Obstacle, places = 32): (readonly [x: number, y: number])[] {
  const { kind, x, y, length, width } = obstacle
  const [c, s] = [cosOf(obstacle.heading), sinOf(obstacle.heading)]
  const own: readonly (readonly [number, number])[] =
    kind === 'other'
      ? [
          [1, 1],
          [-1, 1],
          [-1, -1],
          [1, -1],
        ]
      : Array.from({ length: places }, (_, i) => {
          const turn = (2 * Math.PI * i) / places
          return [Math.cos(turn), Math.sin(turn)] as const
        })
  return own.map(([k, m]) => {
    const [a, b] = [(k * length) / 2, (m * width) / 2]
    return [x + c * a - s * b, y + s * a + c * b] as const
  })
}

/** Its outline from the side: distance and elevation, from the bed over its top and back. */
export function obstacleProfile(
  obstacle: Obstacle,
  bed: Pick<Bed, 'bedAt'>,
  places = 16,
): (readonly [x: number, z: number])[] {
  const solid = obstacleSolid(obstacle, bed)
  const [a, b, up] = solid.edges
  const reach = solid.shape === 'box' ? Math.abs(a[0]) + Math.abs(b[0]) : Math.hypot(a[0], b[0])
  const [x, , z] = solid.middle
  if (solid.shape === 'ellipsoid')
    return Array.from({ length: places + 1 }, (_, i) => {
      const turn = Math.PI * (1 - i / places)
      return [x + reach * Math.cos(turn), z + up[2] * Math.sin(turn)] as const
    })
  return [
    [x - reach, z - up[2]],
    [x - reach, z + up[2]],
    [x + reach, z + up[2]],
    [x + reach, z - up[2]],
  ]
}
