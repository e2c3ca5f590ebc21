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
    } else if (++quiet > 4 && performance.now() - since > 450) return now
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 20)))
  }
  throw new Error(`not settled: ${JSON.stringify(stats())}`)
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

const api = { show, shown, settled, judge, swayOf, dockOf, NoWebGLError }
export type SceneApi = typeof api
Object.assign(window, { scenes: api })
