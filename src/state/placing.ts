/** Places the dock of a design at once; or, where it is too large for that, leaves it to a worker. */
import {
  type Catalog,
  type Design,
  type Dock,
  deriveKit,
  type Kit,
  type Project,
  projectOf,
  publishKit,
} from '../../rules/index.ts'
import { BLANK } from './blank-dock.ts'
import { tooLarge } from './placing-time.ts'
import { sameDesign } from './same-design.ts'

/**
 * How much is known about the dock of the current design: a worker is placing it; it is placed, fitted and counted; its structure is known;
 * all findings are known; or there will be none, because the worker did not load or does not answer.
 */
export type Status = 'placing' | 'placed' | 'quick' | 'deep' | 'unavailable'

export interface DockState {
  /** What views are made from. Its dock is placed, fitted and counted: both stay the same objects whatever is found later. */
  readonly project: Project
  /** The same dock with its findings. */
  readonly dock: Dock
  readonly status: Status
  /** True while both docks are of an earlier design, because the current one is not placed yet. Their figures must not be shown as current. */
  readonly stale: boolean
}

/** What is found of a kit in its frame; `placed`: as it was published before. */
export type Assess = (kit: Kit, placed?: Dock) => Dock

export interface Placer {
  /** For the first design. */
  first(design: Design, catalog: Catalog): DockState
  /** For each later design. If it is too large, the dock `before` stays in view; or a blank one if that dock has nothing to do with it (`other`). */
  next(design: Design, catalog: Catalog, before: DockState, other: boolean): DockState
  /**
   * From now on docks are placed with what `assess` finds of them: until then, before its code is there, they are without findings and reasons.
   * Back comes the last one that was placed so, and the same assessed; null where there is none.
   */
  check(assess: Assess): { readonly placed: Dock; readonly assessed: Dock } | null
  /** Records how long a worker took to place, ms. */
  note(ms: number): void
}

export function makePlacer(): Placer {
  /** How long the last two placings took, ms. */
  let took: readonly number[] = []
  const note = (ms: number): void => {
    took = [...took, ms].slice(-2)
  }
  let publish: Assess = publishKit
  let unchecked: { readonly kit: Kit; readonly placed: Dock } | null = null
  /** `bed`: reused when the edit did not change the site. */
  const place = (design: Design, catalog: Catalog, bed?: Project['bed']): DockState => {
    const begun = performance.now()
    const kit = deriveKit(design, catalog, bed)
    const placed = publish(kit)
    note(performance.now() - begun)
    if (publish === publishKit) unchecked = { kit, placed }
    return placedState(projectOf(design, catalog, placed, kit.bed))
  }
  const blank = (design: Design, catalog: Catalog, bed?: Project['bed']): DockState => ({
    ...placedState(projectOf(design, catalog, BLANK, bed)),
    status: 'placing',
    stale: true,
  })
  return {
    first: (design, catalog) => (tooLarge(design, took) ? blank(design, catalog) : place(design, catalog)),
    next(design, catalog, before, other) {
      const { site } = before.project.design
      const bed = sameDesign(site, design.site) ? before.project.bed : undefined
      if (!tooLarge(design, took)) return place(design, catalog, bed)
      if (other) return blank(design, catalog, bed)
      const { dock } = before
      return {
        project: projectOf(design, catalog, before.project.dock, bed),
        dock,
        status: 'placing',
        stale: true,
      }
    },
    check(assess) {
      publish = assess
      const last = unchecked
      unchecked = null
      return last && { placed: last.placed, assessed: assess(last.kit, last.placed) }
    },
    note,
  }
}

/** Placed, and nothing found yet. */
export const placedState = (project: Project): DockState => ({
  project,
  dock: project.dock,
  status: 'placed',
  stale: false,
})
