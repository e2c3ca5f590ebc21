/** How a part family puts its pieces: lists in step, so that a long dock costs no object a bolt until it is published. */
import type { Placement, Quat } from '../dock.ts'
import type { Placed } from '../layout/index.ts'
import { round6 } from '../numbers.ts'
import type { PartType, Shop } from '../shop.ts'
import { quarterTurn, yawPitch } from './turn.ts'

/** All pieces in their places: the first `n` of each list, and three of `at` each. */
export interface Puts {
  n: number
  types: PartType[]
  of: string[]
  /** The section that carries it. */
  sections: Placed[]
  /** x, y, z of each, rounded, m. */
  at: Float64Array
  turns: Quat[]
}

/**
 * Room for about `capacity` pieces. Lists of a hundred thousand that grow as they are filled cost more in fresh memory than all
 * the rest of a long dock; sized beforehand they cost next to nothing.
 */
export const noPuts = (capacity: number): Puts => ({
  n: 0,
  types: new Array(capacity),
  of: new Array(capacity),
  sections: new Array(capacity),
  at: new Float64Array(3 * capacity),
  turns: new Array(capacity),
})

/** The pieces as the Dock lists them. */
export function placementsOf({ n, types, of, sections, at, turns }: Puts): Placement[] {
  const placements: Placement[] = []
  for (let i = 0; i < n; i++) {
    const { kind, code } = types[i]!
    placements.push({
      kind,
      code,
      of: of[i]!,
      section: sections[i]!.id,
      at: [at[3 * i]!, at[3 * i + 1]!, at[3 * i + 2]!],
      turn: turns[i]!,
    })
  }
  return placements
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

/** Puts one piece at a place in the dock's frame, m. */
export function put(
  out: Puts,
  type: PartType,
  of: string,
  section: Placed,
  x: number,
  y: number,
  z: number,
  turn: Quat,
): void {
  const i = out.n++
  if (3 * i === out.at.length) {
    const more = new Float64Array(6 * i + 96)
    more.set(out.at)
    out.at = more
  }
  out.types[i] = type
  out.of[i] = of
  out.sections[i] = section
  out.at[3 * i] = round6(x)
  out.at[3 * i + 1] = round6(y)
  out.at[3 * i + 2] = round6(z)
  out.turns[i] = turn
}

/** Puts one piece at a place in a section's own frame, turned about its upright by `quarter` (a multiple of 90 degrees). */
export function putIn(
  out: Puts,
  type: PartType,
  of: string,
  pose: Pose,
  x: number,
  y: number,
  z: number,
  quarter = 0,
): void {
  const { placed, tilt } = pose
  if (tilt === 0) {
    const px = pose.x + placed.c * x - placed.s * y
    const py = pose.y + placed.s * x + placed.c * y
    put(out, type, of, placed, px, py, pose.z + z, quarterTurn(placed.heading + quarter))
    return
  }
  // Only a ramp is tilted, and a ramp heads lakeward.
  const c = Math.cos(tilt)
  const s = Math.sin(tilt)
  const turn = quarter === 0 ? yawPitch(0, tilt) : quarterOnRamp(quarter, tilt)
  put(out, type, of, placed, pose.x + x * c - z * s, pose.y + y, pose.z + x * s + z * c, turn)
}

/** A quarter turn about the ramp's own upright, then its tilt. */
function quarterOnRamp(quarter: number, tilt: number): Quat {
  const [tx, ty, tz, tw] = yawPitch(0, tilt)
  const [, , qz, qw] = quarterTurn(quarter)
  const q = [tx * qw + ty * qz, ty * qw - tx * qz, tz * qw + tw * qz, tw * qw - tz * qz]
  const sign = q[3]! < 0 ? -1 : 1
  return [round6(sign * q[0]!), round6(sign * q[1]!), round6(sign * q[2]!), round6(sign * q[3]!)]
}

/** The `i`-th of `n` places spread evenly over a length about its middle: its offset from that. */
export const spread = (i: number, n: number, length: number): number => length * ((i + 0.5) / n - 0.5)

export const frameTop = (shop: Shop): number => -shop.catalog.decking.rise
