/** Which part a ray meets first. Exact on the triangles of each solid, after a test of its box. */
import type { Placement, Vec3 } from '../../../rules/index.ts'
import type { Item } from './parts.ts'
import type { Shape } from './shape.ts'

export interface Ray {
  readonly from: Vec3
  /** Unit. */
  readonly along: Vec3
}

export interface Hit {
  readonly placement: Placement
  /** Along the ray, m. */
  readonly distance: number
}

export function pick(ray: Ray, items: readonly Item[]): Hit | null {
  let best: Hit | null = null
  for (const { placement, shape } of items) {
    const local = toLocal(ray, placement)
    const limit: number = best?.distance ?? Number.POSITIVE_INFINITY
    if (!meetsBox(local, shape.box, limit)) continue
    const distance = firstTriangle(local, shape, limit)
    if (distance < limit) best = { placement, distance }
  }
  return best
}

function toLocal({ from, along }: Ray, { at, turn }: Placement): Ray {
  return {
    from: turnedBack(turn, [from[0] - at[0], from[1] - at[1], from[2] - at[2]]),
    along: turnedBack(turn, along),
  }
}

function turnedBack([qx, qy, qz, qw]: Placement['turn'], [x, y, z]: Vec3): Vec3 {
  const tx = 2 * (qz * y - qy * z)
  const ty = 2 * (qx * z - qz * x)
  const tz = 2 * (qy * x - qx * y)
  return [x + qw * tx - qy * tz + qz * ty, y + qw * ty - qz * tx + qx * tz, z + qw * tz - qx * ty + qy * tx]
}

function meetsBox({ from, along }: Ray, box: Shape['box'], limit: number): boolean {
  let enter = 0
  let leave = limit
  for (let k = 0; k < 3; k++) {
    const inverse = 1 / along[k]!
    const a = (box[k]! - from[k]!) * inverse
    const b = (box[k + 3]! - from[k]!) * inverse
    // A ray in the plane of a side gives NaN, which these keep out.
    enter = Math.max(enter, Math.min(a, b) || 0)
    leave = Math.min(leave, Math.max(a, b))
    if (!(enter <= leave)) return false
  }
  return true
}

/** Moeller and Trumbore's intersection, both sides. Infinity where none is nearer than the limit. */
function firstTriangle({ from, along }: Ray, { positions, parts }: Shape, limit: number): number {
  let best = Number.POSITIVE_INFINITY
  const [dx, dy, dz] = along
  for (const { indices } of parts)
    for (let i = 0; i < indices.length; i += 3) {
      const a = 3 * indices[i]!
      const b = 3 * indices[i + 1]!
      const c = 3 * indices[i + 2]!
      const [ax, ay, az] = [positions[a]!, positions[a + 1]!, positions[a + 2]!]
      const [ex, ey, ez] = [positions[b]! - ax, positions[b + 1]! - ay, positions[b + 2]! - az]
      const [fx, fy, fz] = [positions[c]! - ax, positions[c + 1]! - ay, positions[c + 2]! - az]
      const [px, py, pz] = [dy * fz - dz * fy, dz * fx - dx * fz, dx * fy - dy * fx]
      const det = ex * px + ey * py + ez * pz
      if (Math.abs(det) < 1e-12) continue
      const [tx, ty, tz] = [from[0] - ax, from[1] - ay, from[2] - az]
      const u = (tx * px + ty * py + tz * pz) / det
      if (u < 0 || u > 1) continue
      const [qx, qy, qz] = [ty * ez - tz * ey, tz * ex - tx * ez, tx * ey - ty * ex]
      const v = (dx * qx + dy * qy + dz * qz) / det
      if (v < 0 || u + v > 1) continue
      const t = (fx * qx + fy * qy + fz * qz) / det
      if (t > 1e-6 && t < best && t < limit) best = t
    }
  return best
}
