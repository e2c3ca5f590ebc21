/** Draws the frames of one picture: only while it can be seen, as fine as there is time for, each of them told of. */
import { advance, type RootState } from '@react-three/fiber'
import { type PerspectiveCamera, Vector3 } from 'three'
import type { Rig } from './camera/rig.ts'
import { makeLowResolution } from './low-resolution.ts'
import type { World } from './materials/world.ts'
import type { Parts } from './parts/parts.ts'
import { makePixelRatio } from './pixel-ratio.ts'
import { snapshot } from './snapshot.ts'
import { makeFrameReport } from './stats.ts'

interface Conditions {
  /** In sight. */
  readonly visible: boolean
  /** The shaders are there. */
  readonly ready: boolean
  /** The browser has taken the context away. */
  readonly lost: boolean
  /** It is being disposed of. */
  readonly over: boolean
}

export interface Frames {
  /** From now on there is something to draw. */
  begin(state: RootState): void
  /** px; a frame is drawn at once, for the canvas is empty after it. */
  resize(width: number, height: number): void
  /** Pixels of the canvas to one of CSS. */
  ratio(width: number, height: number): number
  /** A frame that was asked for meanwhile is drawn once it can be. */
  set(conditions: Partial<Conditions>): void
  invalidate(): void
  /** `playing`: something moves by itself, and the next frame is to follow at once. */
  draw(rig: Rig, parts: Parts, world: World, playing: boolean): void
  /** A PNG of what is seen, px; rejects while it is not there. */
  snapshot(width: number, height: number): Promise<Blob>
  dispose(): void
}

export function makeFrames(canvas: HTMLCanvasElement, slow: boolean): Frames {
  let state: RootState | null = null
  let size: { readonly width: number; readonly height: number } | null = null
  let now: Conditions = { visible: true, ready: false, lost: false, over: false }
  let missed = false
  let world: World | null = null
  const canDraw = (): boolean => now.visible && now.ready && !now.lost
  const lowResolution = makeLowResolution()
  const pixelRatio = makePixelRatio(slow, () => state?.invalidate())
  const report = makeFrameReport(canvas, (x, y, z) => (state && size ? onCanvas(state, size, x, y, z) : null))

  return {
    begin(created) {
      state = created
    },
    ratio: pixelRatio.ratio,
    resize(width, height) {
      size = { width, height }
      if (!state) return
      state.setDpr(pixelRatio.ratio(width, height))
      state.setSize(width, height)
      // Drawn in the same task, nobody sees the empty canvas.
      if (canDraw()) advance(performance.now(), false, state)
    },
    set(conditions) {
      now = { ...now, ...conditions }
      if (!missed || !canDraw()) return
      missed = false
      state?.invalidate()
    },
    invalidate: () => state?.invalidate(),
    draw(rig, parts, shown, playing) {
      if (!state || now.over) return
      if (!canDraw()) {
        missed = true
        return
      }
      world = shown
      const { gl, scene, camera } = state
      const { width, height } = size!
      const ratio = pixelRatio.next(width, height, rig.moving || playing)
      const sharp = ratio >= gl.getPixelRatio() - 1e-6
      gl.info.reset()
      if (sharp) {
        world.uScreen.value.set(canvas.width, canvas.height, ratio)
        gl.render(scene, camera)
      } else {
        const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)]
        world.uScreen.value.set(w, h, ratio)
        lowResolution.draw(gl, scene, camera, w, h)
      }
      if (playing) state.invalidate()
      const { calls: drawCalls, triangles } = gl.info.render
      const still = !rig.moving && !playing && sharp
      report.record({ drawCalls, triangles, instances: parts.instances(), still }, playing)
    },
    snapshot(width, height) {
      if (!state || !size || !world || now.lost || !now.ready)
        return Promise.reject(new Error('the picture is not there'))
      return takeSnapshot(state, size, world, width, height)
    },
    dispose() {
      pixelRatio.dispose()
      lowResolution.dispose()
    },
  }
}

/** Where a place of the dock's frame is seen, CSS px; null behind the eye. */
function onCanvas(
  { camera }: RootState,
  { width, height }: { readonly width: number; readonly height: number },
  x: number,
  y: number,
  z: number,
): { x: number; y: number } | null {
  const point = new Vector3(x, y, z).applyMatrix4(camera.matrixWorldInverse)
  if (point.z >= 0) return null
  point.applyMatrix4(camera.projectionMatrix)
  return { x: ((point.x + 1) / 2) * width, y: ((1 - point.y) / 2) * height }
}

function takeSnapshot(
  state: RootState,
  size: { readonly height: number },
  { uScreen }: World,
  width: number,
  height: number,
): Promise<Blob> {
  const { gl, scene, camera } = state
  return snapshot(
    { gl, scene, camera: camera as PerspectiveCamera },
    [width, height],
    // Lines are as wide, of the whole, as they are on the screen.
    (w, h) => uScreen.value.set(w, h, Math.max(1, height / size.height)),
    () => advance(performance.now(), false, state),
  )
}
