/**
 * One store for each element: the Design, how it is looked at, undo, and the Dock that follows from the Design, so that every view reads
 * one and the same. It is placed at once, or, where it is too large for that (`placing-time.ts`), beside the page: then the last one placed stays in
 * view, `stale`. What takes longer than a frame comes after it (`start-assessment.ts`), and `status` tells how far it is.
 */
import { createContext, useContext, useSyncExternalStore } from 'react'
import { createStore, type StoreApi } from 'zustand/vanilla'
import { parseEdited } from '../../rules/design/parse.ts'
import {
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  deriveKit,
  type Issue,
  type MoreWords,
  type Project,
  projectOf,
} from '../../rules/index.ts'
import type { SwayShape, Way } from '../../rules/structure/dock/sway-shape.ts'
import type { Word } from '../words/index.ts'
import { BLANK } from './blank-dock.ts'
import { closeGesture, emptyHistory, type History, remember, stepBack, stepForward } from './history.ts'
import { tooLarge } from './placing-time.ts'
import { type Range, rangeOf } from './strip-range.ts'

export interface ViewState {
  readonly units: 'imperial' | 'metric'
  readonly lang: string
  readonly theme: 'light' | 'dark' | 'auto'
  /** Who looks on: what is offered, no guard against anyone. */
  readonly audience: 'customer' | 'shop' | 'crew'
  /** Id of a section, leg, pair, joint or extra, or of a finding or a row of the list (`highlight.ts`). */
  readonly selection: string | null
  readonly hover: string | null
  /** Level shown, m over the level of the survey day. Only looked at: it changes nothing in the design. */
  readonly waterLevel: number
  readonly view: 'shore' | 'lake' | 'side' | 'above' | 'under'
  readonly cut: boolean
  readonly person: boolean
  readonly labels: boolean
  /** The water moves as the wind of the design raises it; else it lies still. */
  readonly waves: boolean
  /** Legs, braces and frames in the colors of what they use of their strength. */
  readonly forces: boolean
  /** The dock moving as it does under a shove, many times as far; and which way. */
  readonly sway: 'none' | Way
  /** How it moves then, once that is worked out; of another design or another way it says nothing. */
  readonly swayed: Swayed | null
  /** A gesture that changes the design is going on. */
  readonly dragging: boolean
  /** Something to tell the user once; null when read. */
  readonly notice: Notice | null
  /** Whether the design is kept on this device. */
  readonly kept: 'no' | 'saving' | 'saved'
  /** The words of what is found after the frame of an edit: they come with the code that finds it. */
  readonly moreWords: MoreWords
}

/**
 * How far the dock of the design in hand is known: being placed beside the page; placed, fitted and counted; with its structure; with all that
 * is going to be found; or without, because what works it out does not come or does not answer.
 */
export type Status = 'placing' | 'placed' | 'quick' | 'deep' | 'unavailable'

/** With its braces, then without them where they make a difference; none where the dock cannot be pushed. */
export interface Swayed {
  readonly of: Designed
  readonly way: Way
  readonly shapes: readonly SwayShape[]
}

export interface Notice {
  readonly key: Word
  /** Lines of a file's faults, as the engine tells them. */
  readonly details?: readonly string[]
  readonly bad?: boolean
  /** What can be done about it: have the dock of another tab, load the page again. */
  readonly offer?: 'other' | 'reload'
}

export interface LeadlineState extends ViewState {
  readonly design: Design
  readonly catalog: Catalog
  /** What views are made from, of `placed`: it too stays one object, whatever is found later. */
  readonly project: Project
  /** As it was placed, fitted and counted: it stays one object, whatever is found later. */
  readonly placed: Dock
  /** The same with what is found. */
  readonly dock: Dock
  readonly status: Status
  /** Both are of an earlier design: the one in hand is not placed yet. Nothing of them may be shown as its own. */
  readonly stale: boolean
  /** How often somebody asked to try again. */
  readonly tries: number
  readonly canUndo: boolean
  readonly canRedo: boolean
  /** Distances that the strip and the side view of the scene both span from edge to edge, m. Held still while dragging. */
  readonly range: Range
  /**
   * Changes the design. The result is checked; where it is not valid nothing changes and the issues come back.
   * Edits of one `gesture` are one step of undo until `endGesture`.
   */
  edit(change: (design: Design) => Design, options?: { readonly gesture?: string }): readonly Issue[]
  endGesture(): void
  undo(): void
  redo(): void
  /** Another design in the place of this one; one step of undo. It must have been parsed. */
  replace(design: Design): void
  /** The design to begin with, in the place of the one that the store was made with: nothing to take back. */
  begin(design: Design): void
  /** Another catalog. No step of undo: a catalog is not the user's. */
  setCatalog(catalog: Catalog): void
  set(view: Partial<ViewState>): void
  /** Takes in the Dock of a design that was placed beside the page, and how long that took, ms. One of another design is dropped. */
  takePlaced(of: Designed, dock: Dock, took: number): void
  /** Takes in the Dock of a design with what was found after its frame. `whole`: nothing more is going to be found. */
  judged(of: Designed, dock: Dock, whole: boolean): void
  /** The design can be neither placed nor judged here: what does it gave no answer. */
  giveUp(of: Designed): void
  /** Asks once more after that. */
  tryAgain(): void
}

/** A design and the catalog that it is made with: what a Dock is of. */
export type Designed = Pick<LeadlineState, 'design' | 'catalog'>

export type LeadlineStore = StoreApi<LeadlineState>

export interface StoreInit {
  readonly design?: Design
  readonly catalog?: Catalog
  readonly view?: Partial<ViewState>
}

const initialView: ViewState = {
  units: 'imperial',
  lang: 'en',
  theme: 'auto',
  audience: 'customer',
  selection: null,
  hover: null,
  waterLevel: 0,
  view: 'shore',
  cut: false,
  person: true,
  labels: true,
  waves: false,
  forces: false,
  sway: 'none',
  swayed: null,
  dragging: false,
  notice: null,
  kept: 'no',
  moreWords: {},
}

export function createLeadlineStore(init: StoreInit = {}): LeadlineStore {
  let history: History = emptyHistory
  /** Of the last two placings, ms. */
  let took: readonly number[] = []
  type Derived = Pick<LeadlineState, 'project' | 'placed' | 'dock' | 'status' | 'stale'>
  /** `bed`: of the same site, where the edit left it alone. */
  const place = (design: Design, catalog: Catalog, bed?: Project['bed']): Derived => {
    const begun = performance.now()
    const kit = deriveKit(design, catalog, bed)
    const placed = assessKit(kit)
    took = [...took, performance.now() - begun].slice(-2)
    const project = projectOf(design, catalog, placed, kit.bed)
    return { project, placed, dock: placed, status: 'placed', stale: false }
  }
  return createStore<LeadlineState>()((set, get) => {
    /** `other`: nothing of what is in view has to do with it. */
    const derive = (design: Design, catalog: Catalog, other: boolean): Derived => {
      const { project: before } = get()
      const bed = sameDesign(before.design.site, design.site) ? before.bed : undefined
      if (!tooLarge(design, took)) return place(design, catalog, bed)
      const { placed, dock } = other ? { placed: BLANK, dock: BLANK } : get()
      return {
        project: projectOf(design, catalog, placed, bed),
        placed,
        dock,
        status: 'placing',
        stale: true,
      }
    }
    /** Puts a design in place with what must agree with it. */
    const show = (wanted: Design, next: History, other: boolean, more: Partial<LeadlineState> = {}): void => {
      history = next
      const { design, catalog, range, project, placed, dock, status, stale } = get()
      const derived =
        wanted === design ? { project, placed, dock, status, stale } : derive(wanted, catalog, other)
      const dragging = next.gesture !== null
      set({
        ...more,
        ...derived,
        design: wanted,
        dragging,
        range: dragging || derived.stale ? range : rangeOf(derived.project),
        canUndo: next.past.length > 0,
        canRedo: next.future.length > 0,
      })
    }
    const design = init.design ?? demoDesign
    const catalog = init.catalog ?? demoCatalog
    const first: Derived = tooLarge(design, took)
      ? {
          project: projectOf(design, catalog, BLANK),
          placed: BLANK,
          dock: BLANK,
          status: 'placing',
          stale: true,
        }
      : place(design, catalog)
    const mine = (of: Designed): boolean => of.design === get().design && of.catalog === get().catalog
    return {
      ...initialView,
      ...init.view,
      ...first,
      design,
      catalog,
      tries: 0,
      range: rangeOf(first.project),
      canUndo: false,
      canRedo: false,
      edit(change, options = {}) {
        const before = get().design
        const wanted = change(before)
        if (wanted === before) return []
        const parsed = parseEdited(wanted, before)
        if (!parsed.ok) return parsed.issues
        if (sameDesign(parsed.value, before)) return []
        show(parsed.value, remember(history, before, options.gesture ?? null), false)
        return []
      },
      endGesture() {
        if (history.gesture !== null)
          show(get().design, closeGesture(history, get().design, sameDesign), false)
      },
      undo() {
        const step = stepBack(history, get().design)
        if (step) show(step.design, step.history, false)
      },
      redo() {
        const step = stepForward(history, get().design)
        if (step) show(step.design, step.history, false)
      },
      replace(wanted) {
        const before = get().design
        if (!sameDesign(wanted, before))
          show(wanted, remember(history, before, null), false, { selection: null, hover: null })
      },
      begin(wanted) {
        show(wanted, emptyHistory, true, { selection: null, hover: null })
      },
      setCatalog(wanted) {
        const { design: now, range } = get()
        // Another shop's prices are not left in view.
        const derived = derive(now, wanted, true)
        set({ ...derived, catalog: wanted, range: derived.stale ? range : rangeOf(derived.project) })
      },
      set(view) {
        set(view)
      },
      takePlaced(of, placed, ms) {
        if (!mine(of)) return
        took = [...took, ms].slice(-2)
        const { dragging, range } = get()
        const project: Project = { ...get().project, dock: placed }
        const status: Status = 'placed'
        set({
          project,
          placed,
          dock: placed,
          status,
          stale: false,
          range: dragging ? range : rangeOf(project),
        })
      },
      judged(of, dock, whole) {
        if (!mine(of)) return
        const known = dock.pending ? get().status : 'quick'
        set({ dock, status: whole ? (dock.pending ? 'unavailable' : 'deep') : known })
      },
      giveUp(of) {
        if (mine(of)) set({ status: 'unavailable' })
      },
      tryAgain() {
        const { stale, tries } = get()
        set({ status: stale ? 'placing' : 'placed', tries: tries + 1 })
      },
    }
  })
}

/** Plain data, compared as it is: lists that an edit left alone are the same objects. */
export function sameDesign(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const keys = Object.keys(a)
  if (keys.length !== Object.keys(b).length) return false
  return keys.every(
    (key) =>
      Object.hasOwn(b, key) &&
      sameDesign((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  )
}

/** The Dock of this state, as far as it is judged. */
export const dockOf = ({ dock }: Pick<LeadlineState, 'dock'>): Dock => dock

/** The same as it was placed, fitted and counted: for views that show nothing of what is found later, it stays one object. */
export const placedOf = ({ placed }: Pick<LeadlineState, 'placed'>): Dock => placed

/** For who is outside and sees no mark on it: while the dock is of an earlier design it says that it is pending. */
export const toldOf = ({ dock, stale }: Pick<LeadlineState, 'dock' | 'stale'>): Dock =>
  stale ? Object.freeze({ ...dock, structure: null, pending: true, findings: [] }) : dock

/** Totals and check code of the very design in hand, for what is sent away: worked out here and now if need be. */
export const placedNow = ({ design, catalog, dock, stale }: LeadlineState): Dock =>
  stale ? assessKit(deriveKit(design, catalog)) : dock

/** What is picked and pointed at is looked up in this one: the same object whatever is found later, unless a finding is meant. */
export const pointedOf = (state: LeadlineState): Dock =>
  [state.selection, state.hover].some((id) => id?.startsWith('finding:')) ? dockOf(state) : placedOf(state)

/** Nothing more is going to be found about it. */
export const isJudged = ({ status, stale }: Pick<LeadlineState, 'status' | 'stale'>): boolean =>
  !stale && (status === 'deep' || status === 'unavailable')

/** Given by the element to all that is drawn in it. */
export const StoreContext = createContext<LeadlineStore | null>(null)

export function useLeadlineStore(): LeadlineStore {
  const store = useContext(StoreContext)
  if (!store) throw new Error('useLeadlineStore: no StoreContext above this component')
  return store
}

/** Not zustand's own hook: that one is bound to React, which draws only the scene (`src/build/screen-react.ts`). */
export function useLeadline<T>(selector: (state: LeadlineState) => T): T {
  const store = useLeadlineStore()
  return useSyncExternalStore(store.subscribe, () => selector(store.getState()))
}

export const useDock = (): Dock => useLeadline(dockOf)
export const usePlaced = (): Dock => useLeadline(placedOf)
