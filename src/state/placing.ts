/** The dock of a design as views have it: placed at once, or, where it is too large for that, left to be placed beside the page. */
import {
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  deriveKit,
  type Project,
  projectOf,
} from '../../rules/index.ts'
import { BLANK } from './blank-dock.ts'
import { tooLarge } from './placing-time.ts'
import { sameDesign } from './same-design.ts'

/**
 * How far the dock of the design in hand is known: being placed beside the page; placed, fitted and counted; with its structure; with all that
 * is going to be found; or without, because what works it out does not come or does not answer.
 */
export type Status = 'placing' | 'placed' | 'quick' | 'deep' | 'unavailable'

export interface DockState {
  /** What views are made from, of `placed`: it too stays one object, whatever is found later. */
  readonly project: Project
  /** As it was placed, fitted and counted: it stays one object, whatever is found later. */
  readonly placed: Dock
  /** The same with what is found. */
  readonly dock: Dock
  readonly status: Status
  /** Both are of an earlier design: the one in hand is not placed yet. Nothing of them may be shown as its own. */
  readonly stale: boolean
}

export interface Placer {
  /** Of the design to begin with. */
  first(design: Design, catalog: Catalog): DockState
  /** Of the design after that; while it is too large the dock before stays in view, or none where it is of quite `other` a thing. */
  next(design: Design, catalog: Catalog, before: DockState, other: boolean): DockState
  /** Takes note of how long placing took elsewhere, ms. */
  note(ms: number): void
}

export function makePlacer(): Placer {
  /** Of the last two placings, ms. */
  let took: readonly number[] = []
  const note = (ms: number): void => {
    took = [...took, ms].slice(-2)
  }
  /** `bed`: of the same site, where the edit left it alone. */
  const place = (design: Design, catalog: Catalog, bed?: Project['bed']): DockState => {
    const begun = performance.now()
    const kit = deriveKit(design, catalog, bed)
    const placed = assessKit(kit)
    note(performance.now() - begun)
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
      const { placed, dock } = before
      return {
        project: projectOf(design, catalog, placed, bed),
        placed,
        dock,
        status: 'placing',
        stale: true,
      }
    },
    note,
  }
}

/** Placed, and nothing found yet. */
export const placedState = (project: Project): DockState => ({
  project,
  placed: project.dock,
  dock: project.dock,
  status: 'placed',
  stale: false,
})
