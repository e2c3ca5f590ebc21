/** One WebGL picture on one canvas: the renderer, its frames, its loss and return. */
import { createRoot, extend, type ReconcilerRoot, type RootState } from '@react-three/fiber'
import { Group, Mesh, PCFShadowMap, PerspectiveCamera, WebGLRenderer } from 'three'
import type { LeadlineStore } from '../state/store.ts'
import { SceneRoot } from './components/scene-root.tsx'
import { NoWebGLError } from './errors.ts'
import { makeFrames } from './frames.ts'
import type { Shell } from './shell.ts'

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

/** `slow`: the processor draws. Throws NoWebGLError. */
export function makePicture(
  canvas: HTMLCanvasElement,
  store: LeadlineStore,
  shell: Shell,
  slow: boolean,
  on: PictureEvents,
): Picture {
  const renderer = makeRenderer(canvas, slow)
  const root = createRoot(canvas)
  const frames = makeFrames(canvas, slow)
  let size: Size | null = null
  let over = false

  /** The first frame comes when the shaders are there: compiling in its midst would hold up the page. */
  const begin = (created: RootState): void => {
    frames.begin(created)
    const go = (): void => {
      if (!over) frames.set({ ready: true })
    }
    compiled(renderer, created).then(go, go)
  }
  const start = async (first: Size): Promise<void> => {
    await configure(root, renderer, first, frames.ratio(first.width, first.height), begin)
    if (over) return
    root.render(<SceneRoot store={store} shell={shell} draw={frames.draw} />)
    // The box may have changed while it was being set up.
    if (size && size !== first) frames.resize(size.width, size.height)
  }
  const forgetLoss = followLoss(canvas, {
    onLost() {
      frames.set({ lost: true })
      on.onLost()
    },
    onBack() {
      frames.set({ lost: false })
      // What was drawn into the shadow map is gone (three #33532).
      renderer.shadowMap.needsUpdate = true
      on.onBack()
      frames.invalidate()
    },
  })

  return {
    resize(width, height) {
      // Nothing is made for a box without a size, and what is there stays as it was.
      if (over || width < 1 || height < 1) return
      const first = size === null
      size = { width, height }
      if (first) void start(size)
      frames.resize(width, height)
    },
    snapshot: frames.snapshot,
    setVisible: (visible) => frames.set({ visible }),
    dispose() {
      over = true
      frames.set({ over })
      frames.dispose()
      forgetLoss()
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

/**
 * Where the browser compiles beside the page that is waited for. Else all programs are asked for before one is used, and taken one a task:
 * used as it comes, each would hold up the page until it is compiled, and that behind all that was drawn with those before it.
 */
async function compiled(renderer: WebGLRenderer, { scene, camera }: RootState): Promise<void> {
  if (renderer.extensions.has('KHR_parallel_shader_compile')) {
    await renderer.compileAsync(scene, camera)
    return
  }
  scene.traverseVisible((object) => {
    if (object instanceof Mesh) renderer.compile(object, camera, scene)
  })
  for (const program of [...(renderer.info.programs ?? [])]) {
    // Asks for what only a compiled program can tell.
    program.getUniforms()
    await new Promise((done) => setTimeout(done))
  }
}

interface Size {
  readonly width: number
  readonly height: number
}

/** `ratio`: pixels of the canvas to one of CSS. */
const configure = (
  root: ReconcilerRoot<HTMLCanvasElement>,
  renderer: WebGLRenderer,
  size: Size,
  ratio: number,
  onCreated: (state: RootState) => void,
): Promise<unknown> =>
  root.configure({
    gl: () => renderer,
    frameloop: 'demand',
    shadows: { type: PCFShadowMap, autoUpdate: false },
    camera: new PerspectiveCamera(35, size.width / size.height, 0.1, 1000),
    dpr: ratio,
    // Curve and color space are in our shaders.
    flat: true,
    linear: true,
    size: { ...size, top: 0, left: 0 },
    onCreated,
  })

function makeRenderer(canvas: HTMLCanvasElement, slow: boolean): WebGLRenderer {
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
  return renderer
}

/** After three's own listeners, which put its state in order first. Gives what ends it. */
function followLoss(canvas: HTMLCanvasElement, on: PictureEvents): () => void {
  const lost = (event: Event): void => {
    // Without this the browser never gives it back.
    event.preventDefault()
    on.onLost()
  }
  canvas.addEventListener('webglcontextlost', lost)
  canvas.addEventListener('webglcontextrestored', on.onBack)
  return () => {
    canvas.removeEventListener('webglcontextlost', lost)
    canvas.removeEventListener('webglcontextrestored', on.onBack)
  }
}
