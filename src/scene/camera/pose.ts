/**
 * Where the eye is: a point looked at, a direction to it and how much of the lake is in view. Plain numbers, so that going
 * from one pose to another is mixing them. Angles in radians; azimuth counter-clockwise from above, 0 = the eye lakeward.
 */
import type { Vec3 } from '../../../rules/index.ts'

export interface Pose {
  readonly target: Vec3
  /** Direction from the target to the eye. */
  readonly azimuth: number
  readonly elevation: number
  /** Height of the view at the target, m. */
  readonly span: number
  /** Upright angle of view. */
  readonly fov: number
}

export const distanceOf = ({ span, fov }: Pose): number => span / 2 / Math.tan(fov / 2)

const directionOf = (azimuth: number, elevation: number): Vec3 => [
  Math.cos(azimuth) * Math.cos(elevation),
  Math.sin(azimuth) * Math.cos(elevation),
  Math.sin(elevation),
]

export function eyeOf(pose: Pose): Vec3 {
  const [x, y, z] = directionOf(pose.azimuth, pose.elevation)
  const d = distanceOf(pose)
  return [pose.target[0] + x * d, pose.target[1] + y * d, pose.target[2] + z * d]
}

/** A pose from an eye and what it looks at. */
export function lookFrom(eye: Vec3, target: Vec3, fov: number): Pose {
  const [dx, dy, dz] = [eye[0] - target[0], eye[1] - target[1], eye[2] - target[2]]
  const d = Math.hypot(dx, dy, dz)
  return {
    target,
    azimuth: Math.atan2(dy, dx),
    elevation: Math.asin(dz / d),
    span: 2 * d * Math.tan(fov / 2),
    fov,
  }
}

/** Free shares of the picture around what is fitted. */
export interface Margins {
  readonly side: number
  readonly above: number
  readonly below: number
}

/** The nearest pose of a direction from which all points are in view. At least one point. */
export function fitted(
  points: readonly Vec3[],
  direction: { readonly azimuth: number; readonly elevation: number; readonly fov: number },
  aspect: number,
  margins: Margins,
): Pose {
  const { azimuth, elevation, fov } = direction
  const back = directionOf(azimuth, elevation)
  const forward: Vec3 = [-back[0], -back[1], -back[2]]
  const right: Vec3 = [-Math.sin(azimuth), Math.cos(azimuth), 0]
  const up: Vec3 = [
    -Math.cos(azimuth) * Math.sin(elevation),
    -Math.sin(azimuth) * Math.sin(elevation),
    Math.cos(elevation),
  ]
  const tan = Math.tan(fov / 2)
  const side = tan * aspect * (1 - 2 * margins.side)
  const above = tan * (1 - 2 * margins.above)
  const below = tan * (1 - 2 * margins.below)
  const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
  let [mostRight, mostLeft, mostUp, mostDown] = [
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
  ]
  let depth = 0
  for (const point of points) {
    const [r, u, f] = [dot(point, right), dot(point, up), dot(point, forward)]
    mostRight = Math.max(mostRight, r - f * side)
    mostLeft = Math.min(mostLeft, r + f * side)
    mostUp = Math.max(mostUp, u - f * above)
    mostDown = Math.min(mostDown, u + f * below)
    depth += f / points.length
  }
  // The eye in the basis of the view: as far forward as both pairs of sides allow, in the middle of what is free.
  const f = Math.min((mostLeft - mostRight) / (2 * side), (mostDown - mostUp) / (above + below))
  const r = (mostLeft + mostRight) / 2
  const u = (mostUp + f * above + (mostDown - f * below)) / 2
  const far = Math.max(0.5, depth - f)
  const along = f + far
  const target: Vec3 = [0, 1, 2].map(
    (k) => right[k]! * r + up[k]! * u + forward[k]! * along,
  ) as unknown as Vec3
  return { target, azimuth, elevation, span: 2 * far * tan, fov }
}

/** From one pose to another, t in 0 to 1; the short way round. */
export function mixPose(a: Pose, b: Pose, t: number): Pose {
  const mix = (x: number, y: number): number => x + (y - x) * t
  const grow = (x: number, y: number): number => x * (y / x) ** t
  const turn = Math.atan2(Math.sin(b.azimuth - a.azimuth), Math.cos(b.azimuth - a.azimuth))
  return {
    target: [mix(a.target[0], b.target[0]), mix(a.target[1], b.target[1]), mix(a.target[2], b.target[2])],
    azimuth: a.azimuth + turn * t,
    elevation: mix(a.elevation, b.elevation),
    span: grow(a.span, b.span),
    fov: grow(a.fov, b.fov),
  }
}
