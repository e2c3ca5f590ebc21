/** The little vector arithmetic that shapes need. Plain tuples, m. */
import type { Quat, Vec3 } from './dock.ts'

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k]
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2])
export const unit = (a: Vec3): Vec3 => scale(a, 1 / length(a))

/** Turns a vector by a unit quaternion (x, y, z, w). */
export function rotate([x, y, z, w]: Quat, v: Vec3): Vec3 {
  const t = scale(cross([x, y, z], v), 2)
  return add(add(v, scale(t, w)), cross([x, y, z], t))
}
