/** Moves the camera: from pose to pose, and by hand. Asks for a frame while it moves, and for none when it stands. */
import { MathUtils, type PerspectiveCamera } from 'three'
import type { Vec3 } from '../../../rules/index.ts'
import { distanceOf, eyeOf, mixPose, type Pose } from './pose.ts'

/** Time of a move between views, ms. */
const MOVE = 900
const LOWEST = MathUtils.degToRad(-30)
const HIGHEST = MathUtils.degToRad(89)
/** The eye stays this far over the ground, m. */
const OVER_GROUND = 0.14
/** And over the water, m, unless it was sent or tilted under it. */
const OVER_WATER = 0.12

export interface Rig {
  readonly pose: Pose
  /** True once someone has turned the view by hand: it is theirs until another view is asked for. */
  readonly byHand: boolean
  readonly moving: boolean
  goTo(pose: Pose, smooth: boolean): void
  /** Radians. */
  orbit(turn: number, tilt: number): void
  /** Factor of the span; less than 1 comes nearer. */
  zoom(factor: number): void
  /** Shares of the picture's height. */
  pan(right: number, up: number): void
  /** Called at each frame with its time, ms. */
  tick(now: number): void
}

/** Between two poses, begun at the first frame that shows it. */
interface Move {
  readonly from: Pose
  readonly to: Pose
  start: number | null
}

/** How much of it is done at a time, ms: 0 to 1. */
function partOf(move: Move, now: number): number {
  move.start ??= now
  return Math.min(1, (now - move.start) / MOVE)
}

/** Slow at both ends. */
const eased = (t: number): number => t * t * (3 - 2 * t)

export function makeRig(
  camera: PerspectiveCamera,
  invalidate: () => void,
  ground: (x: number, y: number) => number,
  /** Of the water that is shown, m. */
  level: () => number,
  /** Bounds for the target and the span. */
  limits: () => { readonly reach: number; readonly center: readonly [number, number] },
): Rig {
  let pose: Pose = { target: [0, 0, 0], azimuth: 0, elevation: 0.3, span: 10, fov: 0.6 }
  let move: Move | null = null
  let byHand = false
  /** Under water on purpose: nothing else takes the eye there. */
  let dived = false

  const floorAt = (x: number, y: number): number =>
    Math.max(ground(x, y) + OVER_GROUND, dived ? Number.NEGATIVE_INFINITY : level() + OVER_WATER)
  const apply = (): void => aim(camera, pose, floorAt)
  const take = (change: Partial<Pose>): void => {
    pose = { ...pose, ...change }
    move = null
    byHand = true
    apply()
    invalidate()
  }
  const isUnder = (at: Pose): boolean => eyeOf(at)[2] < level()
  return {
    get pose() {
      return pose
    },
    get byHand() {
      return byHand
    },
    get moving() {
      return move !== null
    },
    goTo(to, smooth) {
      byHand = false
      dived = isUnder(to) || (smooth && isUnder(pose))
      if (smooth) move = { from: pose, to, start: null }
      else {
        move = null
        pose = to
        apply()
      }
      invalidate()
    },
    orbit(turn, tilt) {
      const elevation = Math.min(HIGHEST, Math.max(LOWEST, pose.elevation + tilt))
      // By tilting only: turned or brought nearer the eye stays over the water.
      if (tilt < 0) dived ||= isUnder({ ...pose, elevation })
      take({ azimuth: pose.azimuth + turn, elevation })
      dived &&= isUnder(pose)
    },
    zoom(factor) {
      const { reach } = limits()
      take({ span: Math.min(reach * 3, Math.max(0.4, pose.span * factor)) })
    },
    pan(right, up) {
      const { reach, center } = limits()
      take({ target: panned(pose, right, up, reach, center) })
    },
    tick(now) {
      if (!move) {
        // The water or the ground may have risen.
        const { x, y, z } = camera.position
        if (z < floorAt(x, y) - 1e-6) apply()
        return
      }
      const part = partOf(move, now)
      pose = mixPose(move.from, move.to, eased(part))
      if (part >= 1) {
        dived = isUnder(move.to)
        move = null
      }
      apply()
      if (move) invalidate()
    },
  }
}

function aim(camera: PerspectiveCamera, pose: Pose, floorAt: (x: number, y: number) => number): void {
  const [x, y, z] = eyeOf(pose)
  camera.position.set(x, y, Math.max(z, floorAt(x, y)))
  camera.up.set(0, 0, 1)
  camera.lookAt(pose.target[0], pose.target[1], pose.target[2])
  const far = distanceOf(pose)
  camera.fov = MathUtils.radToDeg(pose.fov)
  camera.near = Math.min(2, Math.max(0.05, far * 0.01))
  // To where the water ends.
  camera.far = far + 8000
  camera.updateProjectionMatrix()
  camera.updateMatrixWorld()
}

/** The target moved in the plane of the picture, by shares of its height; it stays within reach of the center. */
function panned(
  { target, azimuth, elevation, span }: Pose,
  right: number,
  up: number,
  reach: number,
  center: readonly [number, number],
): Vec3 {
  const [s, c] = [Math.sin(azimuth), Math.cos(azimuth)]
  const [ts, tc] = [Math.sin(elevation), Math.cos(elevation)]
  const x = target[0] + span * (-s * right - c * ts * up)
  const y = target[1] + span * (c * right - s * ts * up)
  const clamp = (value: number, middle: number): number =>
    Math.min(middle + reach, Math.max(middle - reach, value))
  return [clamp(x, center[0]), clamp(y, center[1]), clamp(target[2] + span * tc * up, 0)]
}
