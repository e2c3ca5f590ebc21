/** How a part family emits its pieces: one call a piece, to whoever wants to know. */

import type { PartType, Shop } from '../catalog-index.ts'
import type { Quat } from '../dock.ts'
import type { PlacedSection } from '../layout/index.ts'
import { round6 } from '../numbers.ts'
import { headingTurn, yawPitch } from './turn.ts'

/**
 * Takes one piece: its type, the id of what it belongs to, the section that carries it, its place in the dock's frame (m) and turn.
 *
 * The parts list counts the calls (one of each kind of frame, leg or joint, and how many there are of it), the Dock collects them:
 * the same calls, so neither can have a piece that the other has not. Nothing is stored for counting alone: a hundred thousand
 * bolts kept for a moment, at every pointer move, cost more in memory traffic than all the rest of a long dock.
 */
export type EmitPart = (
  type: PartType,
  of: string,
  section: PlacedSection,
  x: number,
  y: number,
  z: number,
  turn: Quat,
) => void

/** A section's own frame in space: the deck plane of its start edge's middle; a ramp's is tilted. */
export interface Pose {
  readonly placed: PlacedSection
  readonly x: number
  readonly y: number
  readonly z: number
  /** Radians, positive where the start edge is lower; 0 but for a ramp. */
  readonly tilt: number
}

/** Emits one piece at a place in a section's own frame, turned about its upright by so many degrees (on a ramp a multiple of 90). */
export function emitIn(
  emit: EmitPart,
  type: PartType,
  of: string,
  pose: Pose,
  x: number,
  y: number,
  z: number,
  turned = 0,
): void {
  const { placed, tilt } = pose
  if (tilt === 0) {
    const px = pose.x + placed.c * x - placed.s * y
    const py = pose.y + placed.s * x + placed.c * y
    emit(type, of, placed, px, py, pose.z + z, headingTurn(placed.heading + turned))
    return
  }
  // Only a ramp is tilted, and a ramp heads lakeward.
  const c = Math.cos(tilt)
  const s = Math.sin(tilt)
  const turn = turned === 0 ? yawPitch(0, tilt) : quarterOnRamp(turned, tilt)
  emit(type, of, placed, pose.x + x * c - z * s, pose.y + y, pose.z + x * s + z * c, turn)
}

/** A quarter turn about the ramp's own upright, then its tilt. */
function quarterOnRamp(quarter: number, tilt: number): Quat {
  const [tx, ty, tz, tw] = yawPitch(0, tilt)
  const [, , qz, qw] = headingTurn(quarter)
  const q = [tx * qw + ty * qz, ty * qw - tx * qz, tz * qw + tw * qz, tw * qw - tz * qz]
  const sign = q[3]! < 0 ? -1 : 1
  return [round6(sign * q[0]!), round6(sign * q[1]!), round6(sign * q[2]!), round6(sign * q[3]!)]
}

/** The `i`-th of `n` places spread evenly over a length about its middle: its offset from that. */
export const spread = (i: number, n: number, length: number): number => length * ((i + 0.5) / n - 0.5)

export const frameTop = (shop: Shop): number => -shop.catalog.decking.rise
