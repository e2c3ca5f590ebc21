/** Turns as unit quaternions (x, y, z, w), w never negative. */
import type { Quat } from '../dock.ts'
import { round6 } from '../numbers.ts'

const H = Math.SQRT1_2
const QUARTERS: readonly Quat[] = [
  [0, 0, 0, 1],
  [0, 0, round6(H), round6(H)],
  [0, 0, 1, 0],
  [0, 0, round6(-H), round6(H)],
]

/** About z by a heading, degrees; quarter turns are shared. */
export function headingTurn(heading: number): Quat {
  const quarter = heading / 90
  if (Number.isInteger(quarter)) return QUARTERS[quarter & 3]!
  // Between -180 and 180, so that w is not negative.
  const half = ((heading - 360 * Math.round(heading / 360)) * Math.PI) / 360
  return [0, 0, round6(Math.sin(half)), round6(Math.cos(half))]
}

/** The heading of a direction of unit length, degrees; along an axis exact. */
export function headingOf(nx: number, ny: number): number {
  if (nx === 0 || ny === 0) return nx > 0.5 ? 0 : ny > 0.5 ? 90 : nx < -0.5 ? 180 : 270
  return (Math.atan2(ny, nx) * 180) / Math.PI
}

/** About z by `yaw`, then nose up by `pitch`, radians: x axis along (cos yaw cos pitch, sin yaw cos pitch, sin pitch), y level. */
export function yawPitch(yaw: number, pitch: number): Quat {
  const sy = Math.sin(yaw / 2)
  const cy = Math.cos(yaw / 2)
  const sp = Math.sin(-pitch / 2)
  const cp = Math.cos(-pitch / 2)
  const sign = cy * cp < 0 ? -1 : 1
  return [round6(-sign * sy * sp), round6(sign * cy * sp), round6(sign * sy * cp), round6(sign * cy * cp)]
}
