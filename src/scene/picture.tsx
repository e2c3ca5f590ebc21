/** One WebGL picture on one canvas: the renderer, its frames, its loss and return. */
import { advance, createRoot, extend, type RootState } from '@react-three/fiber'
import { Group, Mesh, PCFShadowMap, PerspectiveCamera, Vector3, WebGLRenderer } from 'three'
import type { LeadlineStore } from '../state/store.ts'
import type { Rig } from './camera/rig.ts'
import { makeCoarse } from './coarse.ts'
import { NoWebGLError } from './errors.ts'
import type { World } from './look/world.ts'
import type { Parts } from './parts/parts.ts'
import { isSoftware, makeSharpness } from './sharpness.ts'
import type { Shell } from './shell.ts'
import { snapshot } from './snapshot.ts'
import { Stage } from './stage/stage.tsx'
import { READY, type SceneStats, STATS } from './stats.ts'

extend({ Mesh, Group })

export interface Picture {
  resize(width: number, height: number): void
  /** A PNG of what is seen, px; rejects while it is not there. */
  snapshot(width: number, height: number): Promise<Blob>
  /** Draws nothing while out of sight. */
  setVisible(visible: boolean): void
  dispose(): void
}

export interface PictureEvents {
  onLost(): void
  onBack(): void
}

/** Throws NoWebGLError. */
export function makePicture(
  canvas: HTMLCanvasElement,
  store: LeadlineStore,
  shell: Shell,
  on: PictureEvents,
): Picture {
  const slow = isSoftware()
  const context = canvas.getContext('webgl2', {
    alpha: false,
    // Costs a processor more than finer pixels at rest do.
    antialias: !slow,
    depth: true,
    stencil: false,
    powerPreference: 'high-performance',
  })
  if (!context) throw new NoWebGLError()
  const renderer = new WebGLRenderer({ canvas, context })
  renderer.info.autoReset = false
  const root = createRoot(canvas)
  let state: RootState | null = null
  let size: { width: number; height: number } | null = null
  let visible = true
  let missed = false
  let lost = false
  let over = false
  let ready = false
  let told = false
  const stats = { frames: 0, drawCalls: 0, triangles: 0, instances: 0, mostDrawCalls: 0, still: true }
  const at = (x: number, y: number, z: number): { x: number; y: number } | null => {
    if (!state || !size) return null
    const point = new Vector3(x, y, z).applyMatrix4(state.camera.matrixWorldInverse)
    if (point.z >= 0) return null
    point.applyMatrix4(state.camera.projectionMatrix)
    return { x: ((point.x + 1) / 2) * size.width, y: ((1 - point.y) / 2) * size.height }
  }
  Object.defineProperty(canvas, STATS, { get: (): SceneStats => ({ ...stats, at }), enumerable: false })

  let seen: World | null = null
  const take = (width: number, height: number): Promise<Blob> => {
    if (!state || !seen || lost || !ready) return Promise.reject(new Error('the picture is not there'))
    const { gl, scene, camera } = state
    const { uScreen } = seen
    return snapshot(
      { gl, scene, camera: camera as PerspectiveCamera },
      [width, height],
      // Lines are as wide, of the whole, as they are on the screen.
      (w, h) => uScreen.value.set(w, h, Math.max(1, height / size!.height)),
      () => advance(performance.now(), false, state!),
    )
  }

  const coarse = makeCoarse()
  const sharpness = makeSharpness(slow, () => state?.invalidate())

  const draw = (rig: Rig, parts: Parts, world: World, playing: boolean): void => {
    if (!state || over) return
    if (!visible || lost || !ready) {
      missed = true
      return
    }
    seen = world
    const { gl, scene, camera } = state
    const { width, height } = size!
    const ratio = sharpness.next(width, height, rig.moving || playing)
    const sharp = ratio >= gl.getPixelRatio() - 1e-6
    gl.info.reset()
    if (sharp) {
      world.uScreen.value.set(canvas.width, canvas.height, ratio)
      gl.render(scene, camera)
    } else {
      const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)]
      world.uScreen.value.set(w, h, ratio)
      coarse.draw(gl, scene, camera, w, h)
    }
    const { calls, triangles } = gl.info.render
    stats.frames++
    stats.drawCalls = calls
    stats.triangles = triangles
    stats.mostDrawCalls = Math.max(stats.mostDrawCalls, calls)
    stats.instances = parts.instances()
    stats.still = !rig.moving && !playing && sharp
    if (playing) state.invalidate()
    // Water that moves never comes to rest: a picture it is all the same.
    if (stats.still || (playing && !told)) {
      told = true
      canvas.dispatchEvent(
        new CustomEvent(READY, {
          bubbles: true,
          composed: true,
          detail: { drawCalls: calls, instances: stats.instances, triangles },
        }),
      )
    }
  }
  const drawMissed = (): void => {
    if (missed && visible && !lost && ready) {
      missed = false
      state?.invalidate()
    }
  }

  /** The first frame comes when the shaders are there: compiling in its midst would hold up the page. */
  const begin = (created: RootState): void => {
    state = created
    const go = (): void => {
      if (over) return
      ready = true
      drawMissed()
    }
    // Where the browser compiles beside the page; else there is nothing to wait for.
    if (renderer.extensions.has('KHR_parallel_shader_compile'))
      renderer.compileAsync(created.scene, created.camera).then(go, go)
    else go()
  }
  const start = async (first: { width: number; height: number }): Promise<void> => {
    await root.configure({
      gl: () => renderer,
      frameloop: 'demand',
      shadows: { type: PCFShadowMap, autoUpdate: false },
      camera: new PerspectiveCamera(35, first.width / first.height, 0.1, 1000),
      dpr: sharpness.ratio(first.width, first.height),
      // Curve and color space are in our shaders.
      flat: true,
      linear: true,
      size: { ...first, top: 0, left: 0 },
      onCreated: begin,
    })
    if (over) return
    root.render(<Stage store={store} shell={shell} draw={draw} />)
    // The box may have changed while it was being set up.
    if (size && size !== first) resize(size.width, size.height)
  }
  const resize = (width: number, height: number): void => {
    // Nothing is made for a box without a size, and what is there stays as it was.
    if (over || width < 1 || height < 1) return
    const first = size === null
    size = { width, height }
    if (first) void start(size)
    if (!state) return
    state.setDpr(sharpness.ratio(width, height))
    state.setSize(width, height)
    // The canvas is empty now: drawn in the same task, nobody sees it so.
    if (ready && visible && !lost) advance(performance.now(), false, state)
  }
  const onLost = (event: Event): void => {
    // Without this the browser never gives it back.
    event.preventDefault()
    lost = true
    on.onLost()
  }
  const onBack = (): void => {
    lost = false
    // What was drawn into the shadow map is gone (three #33532).
    renderer.shadowMap.needsUpdate = true
    on.onBack()
    state?.invalidate()
  }
  // After three's own listeners, which put its state in order first.
  canvas.addEventListener('webglcontextlost', onLost)
  canvas.addEventListener('webglcontextrestored', onBack)

  return {
    resize,
    snapshot: take,
    setVisible(now) {
      visible = now
      drawMissed()
    },
    dispose() {
      over = true
      sharpness.dispose()
      coarse.dispose()
      canvas.removeEventListener('webglcontextlost', onLost)
      canvas.removeEventListener('webglcontextrestored', onBack)
      root.unmount()
      renderer.dispose()
      renderer.forceContextLoss()
      // R3F does that once more half a second later, to a context that is gone by then.
      renderer.forceContextLoss = () => {}
      // Safari keeps the memory of a canvas that is still large.
      canvas.width = canvas.height = 1
    },
  }
}
