/** What the scene is built from: the store's state and what follows from it, computed once a change. */
import { useMemo, useRef } from 'react'
import { useStore } from 'zustand'
import { extentOf } from '../../../geometry/index.ts'
import type { Catalog, Design, Dock } from '../../../rules/index.ts'
import { berthsOf, hullBox, mooredOf } from '../../../rules/layout/berth.ts'
import { footprintOfAll } from '../../../rules/layout/footprint.ts'
import { dockOf, type LeadlineStore, placedOf, pointedOf } from '../../state/store.ts'
import type { StripRange } from '../../state/strip-range.ts'
import { type Slab, slabsOf, type TurnedSlab } from '../deck-rectangles.ts'
import { MOST_SLABS } from '../materials/world.ts'
import { contourStep } from '../measures/dimensions.ts'
import { warnedParts } from '../parts/marks.ts'
import { type Land, makeLand } from '../terrain.ts'
import { useMedia } from './use-media.ts'

export interface SceneData {
  readonly design: Design
  readonly catalog: Catalog
  /** With its findings so far: for marks and labels. A new object only when those change. */
  readonly dock: Dock
  /** As placed: for the parts that are drawn. Stays the same object when findings arrive. */
  readonly placed: Dock
  readonly land: Land
  readonly range: StripRange
  /** What boats cover in plan. */
  readonly moored: readonly Slab[]
  /** Bounds of the deck and the boats at it in plan; a small area at the shore for an empty dock. */
  readonly bounds: Slab
  /** The deck as few rectangles. */
  readonly slabs: readonly TurnedSlab[]
  readonly deck: number
  /** Water shown, m over the survey level. */
  readonly level: number
  /** The lake is cut open. A view from the end is a section by itself. */
  readonly cut: boolean
  readonly dark: boolean
  /** Interval of contour lines, m; 0 = none. */
  readonly contour: number
}

const around = (a: Slab, b: Slab): Slab => ({
  x0: Math.min(a.x0, b.x0),
  x1: Math.max(a.x1, b.x1),
  y0: Math.min(a.y0, b.y0),
  y1: Math.max(a.y1, b.y1),
})

const NOTHING: Slab = { x0: 0, x1: 3, y0: -0.6, y1: 0.6 }

export function useSceneData(store: LeadlineStore): SceneData {
  const design = useStore(store, (s) => s.design)
  const catalog = useStore(store, (s) => s.catalog)
  const placed = useStore(store, placedOf)
  const judged = useStore(store, dockOf)
  const pointed = useStore(store, pointedOf)
  const warned = useMemo(() => [...warnedParts(judged)].join(' '), [judged])
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is found later is drawn anew where it marks other parts, or is picked.
  const dock = useMemo(() => judged, [placed, pointed, warned])
  const range = useStore(store, (s) => s.range)
  const level = useStore(store, (s) => s.waterLevel)
  const cut = useStore(store, (s) => s.cut || s.view === 'end')
  const theme = useStore(store, (s) => s.theme)
  const units = useStore(store, (s) => s.units)
  const labels = useStore(store, (s) => s.labels)
  const prefersDark = useMedia('(prefers-color-scheme: dark)')
  const dark = theme === 'dark' || (theme === 'auto' && prefersDark)
  const bed = useStore(store, (s) => s.project.bed)
  const before = useRef<Land | null>(null)
  const land = useMemo(
    () => makeLand(bed, extentOf(placed, design), design.site, range.x0, before.current),
    [bed, placed, design, range.x0],
  )
  before.current = land
  const { boat, boats } = design.dock
  const moored = useMemo(
    () => berthsOf({ boat, boats }, mooredOf(placed.sections)).map(hullBox),
    [boat, boats, placed],
  )
  const bounds = useMemo(
    () => moored.reduce(around, footprintOfAll(placed.sections) ?? NOTHING),
    [moored, placed],
  )
  const slabs = useMemo(() => slabsOf(placed.sections, MOST_SLABS), [placed])
  // Seen from the end lines of equal depth would lie over the legs behind one another.
  const fromEnd = useStore(store, (s) => s.view === 'end')
  const contour = labels && !fromEnd ? contourStep(Math.max(0.1, level - range.z0), units) : 0
  return useMemo(
    () => ({
      design,
      catalog,
      dock,
      placed,
      land,
      range,
      moored,
      bounds,
      slabs,
      deck: design.dock.deckHeight,
      level,
      cut,
      dark,
      contour,
    }),
    [design, catalog, dock, placed, land, range, moored, bounds, slabs, level, cut, dark, contour],
  )
}
