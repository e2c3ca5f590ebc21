/** How a part family puts its pieces: one list, in order. */
import type { PartKind, Placement, Quat } from '../dock.ts'
import type { Placed } from '../layout/index.ts'
import { round6 } from '../numbers.ts'
import type { Shop } from '../shop.ts'
import { quarterTurn, yawPitch } from './turn.ts'

export interface Where {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly turn: Quat
}

/** A section's own frame in space: the deck plane of its start edge's middle; a ramp's is tilted. */
export interface Pose {
  readonly placed: Placed
  readonly x: number
  readonly y: number
  readonly z: number
  /** Radians, positive where the start edge is lower; 0 but for a ramp. */
  readonly tilt: number
}

export function put(
  out: Placement[],
  kind: PartKind,
  code: string,
  of: string,
  section: string,
  { x, y, z, turn }: Where,
): void {
  out.push({ kind, code, of, section, at: [round6(x), round6(y), round6(z)], turn })
}

/** A place in a section's own frame (m), turned about z by `quarter` (degrees, a multiple of 90) more than the section. */
export function inSection(pose: Pose, x: number, y: number, z: number, quarter = 0): Where {
  const { placed, tilt } = pose
  if (tilt === 0)
    return {
      x: pose.x + placed.c * x - placed.s * y,
      y: pose.y + placed.s * x + placed.c * y,
      z: pose.z + z,
      turn: quarterTurn(placed.heading + quarter),
    }
  // Only a ramp is tilted, and a ramp heads lakeward.
  const c = Math.cos(tilt)
  const s = Math.sin(tilt)
  return {
    x: pose.x + x * c - z * s,
    y: pose.y + y,
    z: pose.z + x * s + z * c,
    turn: quarter === 0 ? yawPitch(0, tilt) : quarterOnRamp(quarter, tilt),
  }
}

/** A quarter turn about the ramp's own upright, then its tilt. */
function quarterOnRamp(quarter: number, tilt: number): Quat {
  const [tx, ty, tz, tw] = yawPitch(0, tilt)
  const [, , qz, qw] = quarterTurn(quarter)
  const q = [tx * qw + ty * qz, ty * qw - tx * qz, tz * qw + tw * qz, tw * qw - tz * qz]
  const sign = q[3]! < 0 ? -1 : 1
  return [round6(sign * q[0]!), round6(sign * q[1]!), round6(sign * q[2]!), round6(sign * q[3]!)]
}

/** Spreads `n` places evenly over a length about its middle: offsets from it. */
export const spread = (n: number, length: number): number[] =>
  Array.from({ length: n }, (_, i) => length * ((i + 0.5) / n - 0.5))

export const frameTop = (shop: Shop): number => -shop.catalog.decking.rise
