/**
 * The axes of a member: where its local x, y and z point in global axes.
 */
import type { FrameNode, Vec3 } from './frame-model.ts'

export interface MemberAxes {
  /** m */
  readonly length: number
  /** Unit vectors in global axes. */
  readonly x: Vec3
  readonly y: Vec3
  readonly z: Vec3
}

/**
 * Sine of the angle under which two directions count as parallel. An `up` so close to the member no longer
 * says where local y points; the same angle decides whether a member without `up` counts as vertical.
 */
const PARALLEL = 1e-6

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

/**
 * Local x along the member, y = up × x, z = x × y.
 * Throws a RangeError that names the member if `up` is parallel to it.
 *
 * @param index the member's index, for the error
 */
export function memberAxes(index: number, from: FrameNode, to: FrameNode, up: Vec3 | undefined): MemberAxes {
  const dx = to.x - from.x
  const dy = to.y - from.y
  const dz = to.z - from.z
  const length = Math.hypot(dx, dy, dz)
  const x: Vec3 = [dx / length, dy / length, dz / length]
  const vertical = Math.hypot(x[0], x[1]) < PARALLEL
  const reference: Vec3 = up ?? (vertical ? [0, 1, 0] : [0, 0, 1])
  const across = cross(reference, x)
  const size = Math.hypot(...across)
  if (!(size >= PARALLEL * Math.hypot(...reference)) || size === 0)
    throw new RangeError(`frame: member ${index}: up [${reference.join(', ')}] is parallel to the member`)
  const y: Vec3 = [across[0] / size, across[1] / size, across[2] / size]
  return { length, x, y, z: cross(x, y) }
}
