/** A page with nothing but scenes, for tests: built beside the tests, never shipped. */
import { type Catalog, demoCatalog, demoDesign, derive, parseDesign } from '../../rules/index.ts'
import { swayShapes } from '../../src/assessment/assess.ts'
import mountScene, {
  type MountedScene,
  NoWebGLError,
  type SceneStats,
  STATS,
} from '../../src/scene/scene.tsx'
import { createLeadlineStore, dockOf, type LeadlineStore, type ViewState } from '../../src/state/store.ts'

/** What differs from the demo. */
export interface Wanted {
  readonly site?: Record<string, unknown>
  readonly dock?: Record<string, unknown>
  readonly view?: Partial<ViewState>
  readonly catalog?: Catalog
  /** CSS size of the host. */
  readonly size?: readonly [width: number, height: number]
}

export interface Shown {
  readonly host: HTMLElement
  readonly store: LeadlineStore
  readonly mounted: MountedScene
  readonly canvas: () => HTMLCanvasElement
  readonly stats: () => SceneStats
}

const shown: Shown[] = []

function show({ site, dock, view, catalog = demoCatalog, size = [640, 400] }: Wanted): number {
  const parsed = parseDesign({
    ...demoDesign,
    site: { ...demoDesign.site, ...site },
    dock: { ...demoDesign.dock, ...dock },
  })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const host = document.createElement('div')
  host.style.width = `${size[0]}px`
  host.style.height = `${size[1]}px`
  document.body.append(host)
  const store = createLeadlineStore({ design: parsed.value, catalog, view: { units: 'imperial', ...view } })
  followSway(store)
  const mounted = mountScene(host, store)
  const canvas = () => host.querySelector('canvas')!
  const stats = () => (canvas() as never as Record<string, SceneStats>)[STATS]!
  return shown.push({ host, store, mounted, canvas, stats }) - 1
}

/** Nothing comes later than this by itself: the frame at rest (220 ms), gaps (160 ms after an edit, then an idle moment, 400 at most), ms. */
const LATEST = 700

const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 20)))

/**
 * Resolves when the picture stands still and nothing more is drawn for a while. Counted in the browser's own frames as well: while the
 * processor still draws the last one, none come.
 */
async function settled(i = 0): Promise<SceneStats> {
  const { stats } = shown[i]!
  const end = performance.now() + 90_000
  let last = -1
  let since = performance.now()
  let quiet = 0
  while (performance.now() < end) {
    const now = stats()
    if (now.frames !== last || !now.still || now.frames === 0) {
      last = now.frames
      since = performance.now()
      quiet = 0
    } else if (++quiet > 4 && performance.now() - since > 250) return now
    await frame()
  }
  throw new Error(`not settled: ${JSON.stringify(stats())}`)
}

/** Changes what is looked at, and resolves when the picture stands still again. */
function set(view: Partial<ViewState>, i = 0): Promise<SceneStats> {
  shown[i]!.store.getState().set(view)
  return settled(i)
}

/** Resolves with the frames drawn from now on, as soon as there are `most`. */
async function drawn(most: number, i = 0): Promise<number> {
  const { stats } = shown[i]!
  const start = stats().frames
  const end = performance.now() + 60_000
  while (stats().frames < start + most && performance.now() < end) await frame()
  return stats().frames - start
}

/** Frames drawn by themselves: for so long as anything that is still to come would take to come. To show that there are none. */
async function drawnAtRest(i = 0): Promise<number> {
  const { stats } = shown[i]!
  const before = stats().frames
  await new Promise((done) => setTimeout(done, LATEST))
  return stats().frames - before
}

/** Resolves with how many of these are not given back to the browser: none, or what there are after 5 s. */
async function lost(canvases: readonly HTMLCanvasElement[]): Promise<number> {
  const contexts = canvases.map((canvas) => canvas.getContext('webgl2')!)
  const alive = () => contexts.filter((gl) => !gl.isContextLost()).length
  for (const end = performance.now() + 5000; alive() > 0 && performance.now() < end; ) await frame()
  return alive()
}

/** As before the first one was shown: the next test's page. */
function clear(): void {
  for (const { mounted, host } of shown.splice(0)) {
    mounted.dispose()
    host.remove()
  }
  document.body.replaceChildren()
  window.scrollTo(0, 0)
}

/** Works out how the dock sways while that is shown, as the page does beside it. */
function followSway(store: LeadlineStore): void {
  const follow = (): void => {
    const { design, catalog, sway: way, dragging, swayed, set } = store.getState()
    if (way === 'none' || dragging || (swayed?.of.design === design && swayed.way === way)) return
    set({ swayed: { of: { design, catalog }, way, shapes: swayShapes(design, catalog, way) } })
  }
  follow()
  store.subscribe(follow)
}

/** Has the dock of a scene judged, as the page does beside it. */
function judge(i: number): void {
  const { design, catalog, judged } = shown[i]!.store.getState()
  judged({ design, catalog }, derive(design, catalog), true)
}

/** How far it gives sideways with its braces and without, as the structure tells, m. */
function swayOf(i: number): { readonly across: number; readonly bare: number } {
  const { design, catalog } = shown[i]!.store.getState()
  const { swayAcross, swayUnbracedAcross } = derive(design, catalog).structure!
  return { across: swayAcross, bare: swayUnbracedAcross }
}

const api = {
  show,
  shown,
  settled,
  set,
  drawn,
  drawnAtRest,
  lost,
  clear,
  judge,
  swayOf,
  dockOf,
  NoWebGLError,
}
export type SceneApi = typeof api
Object.assign(window, { scenes: api })
