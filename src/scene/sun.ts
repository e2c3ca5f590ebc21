/** The sun and its shadow: one map, drawn anew only when what throws it changes, fitted to the dock. */
import { DirectionalLight, Vector3 } from 'three'
import type { World } from './materials/world.ts'

export interface Box3 {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
  readonly z0: number
  readonly z1: number
}

const SIZE = { across: 512, along: 1024 } as const
/** Between the sun and the middle of the dock, m; and how far beyond shadows reach. */
const AWAY = 60
const BEYOND = 80
/** Room for what is averaged over at the rim of the map, m. */
const RIM = 0.4

export function makeSun(): DirectionalLight {
  const sun = new DirectionalLight(0xffffff, 1)
  sun.castShadow = true
  sun.shadow.mapSize.set(SIZE.across, SIZE.along)
  sun.shadow.bias = -0.00012
  sun.shadow.normalBias = 0.006
  return sun
}

const _right = /*@__PURE__*/ new Vector3()
const _up = /*@__PURE__*/ new Vector3()
const _corner = /*@__PURE__*/ new Vector3()

/** Turns the map so that its long side lies along the dock, and makes it just large enough. */
export function fitSun(sun: DirectionalLight, box: Box3, world: World): void {
  const direction = world.uSun.value
  const target = sun.target.position.set((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2, (box.z0 + box.z1) / 2)
  sun.position.copy(target).addScaledVector(direction, AWAY)
  sun.target.updateMatrixWorld()
  sun.updateMatrixWorld()
  const camera = sun.shadow.camera
  const long = box.x1 - box.x0 >= box.y1 - box.y0
  camera.up.set(long ? 1 : 0, long ? 0 : 1, 0)
  // The basis that looking from the sun to the target gives.
  _right.crossVectors(camera.up, direction).normalize()
  _up.crossVectors(direction, _right)
  let across = 0
  let along = 0
  for (const x of [box.x0, box.x1])
    for (const y of [box.y0, box.y1])
      for (const z of [box.z0, box.z1]) {
        _corner.set(x, y, z).sub(target)
        across = Math.max(across, Math.abs(_corner.dot(_right)))
        along = Math.max(along, Math.abs(_corner.dot(_up)))
      }
  across += RIM
  along += RIM
  camera.left = -across
  camera.right = across
  camera.bottom = -along
  camera.top = along
  camera.near = 1
  camera.far = AWAY + BEYOND + Math.max(box.x1 - box.x0, box.y1 - box.y0)
  camera.updateProjectionMatrix()
  world.uShadowPerMeter.value.set(0.5 / across, 0.5 / along)
}
