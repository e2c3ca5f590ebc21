/**
 * One store for each element: the Design, how it is looked at, undo, and the Dock that follows from the Design, so that every view reads
 * one and the same. It is placed at once, or, where it is too large for that (`placing-time.ts`), beside the page: then the last one placed stays in
 * view, `stale`. What takes longer than a frame comes after it (`start-assessment.ts`), and `status` tells how far it is.
 */

import { createContext, useContext, useSyncExternalStore } from 'react'
import { createStore, type StoreApi } from 'zustand/vanilla'
import { parseEdited } from '../../rules/design/parse.ts'
import {
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  deriveKit,
  ENGLISH,
  type Issue,
  type Language,
  type Project,
  publishKit,
  type Subject,
} from '../../rules/index.ts'
import { audienceShown, type PricesShown, pricesFor } from '../../rules/papers/prices-shown.ts'
import type { SwayShape, Way } from '../../rules/structure/dock/sway-shape.ts'
import type { NewSection } from '../plan-editor/new-section.ts'
import type { Word } from '../words/index.ts'
import { closeGesture, emptyHistory, type History, remember, stepBack, stepForward } from './history.ts'
import { type Assess, type DockState, makePlacer, type Placer, placedState } from './placing.ts'
import { sameDesign } from './same-design.ts'
import { type StripRange, stripRange } from './strip-range.ts'

/** What of the shore is asked: a place that is sounded (the near one, the far one, the bank, one of the others by its index), or what the field says. */
export type AskedAt = 'near' | 'far' | 'bank' | number | 'bottom' | 'levels.high' | 'levels.low' | 'wind'

export interface ViewState {
  readonly units: 'imperial' | 'metric'
  readonly language: Language
  readonly theme: 'light' | 'dark' | 'auto'
  /** Who the screen is for. Decides what is offered; it is no access control. */
  readonly audience: 'customer' | 'shop' | 'crew'
  /** No price is shown: to a crew, or where the page wants none. */
  readonly unpriced: boolean
  /** Id of a section, leg, pair, joint or extra, or of a finding or a row of the list (`highlight.ts`). */
  readonly selection: string | null
  readonly hover: string | null
  /** Level shown, m over the level of the survey day. Only looked at: it changes nothing in the design. */
  readonly waterLevel: number
  readonly view: 'shore' | 'lake' | 'end' | 'above' | 'under'
  /** Counts how often a view was asked for: each time the whole of it comes into the picture, however it was turned. */
  readonly framed: number
  readonly cut: boolean
  /** Where the cut was moved to: its offset, seen from the end its distance, m. Null: before the whole dock. */
  readonly cutAt: number | null
  readonly person: boolean
  readonly labels: boolean
  /** Legs are numbered where they are seen, and listed; null: as it suits the audience (`isNumbered`). */
  readonly legs: boolean | null
  /** Levels drawn in the section besides the lake's own, in words, m over the level of the survey day. */
  readonly marks?: readonly { readonly at: number; readonly text: string }[] | undefined
  /** The water moves as the wind of the design raises it; else it lies still. */
  readonly waves: boolean
  /** Legs, braces and frames in the colors of what they use of their strength. */
  readonly forces: boolean
  /** The dock moving as it does under a shove, many times as far; and which way. */
  readonly sway: 'none' | Way
  /** How it moves then, once that is worked out; of another design or another way it says nothing. */
  readonly swayed: Swayed | null
  /** The dock is being shaped by hand: new sections stand out, or lie along the edge that they hang on. */
  readonly shaping: NewSection | null
  /** The shore is being asked about, in the place of the panel; or what nobody has said of it, from there on. */
  readonly starting: boolean | AskedAt
  /** The day at the lake, in the place of the page. */
  readonly atLake: boolean
  /** A gesture that changes the design is going on. */
  readonly dragging: boolean
  /** Something to tell the user once; null when read. */
  readonly notice: Notice | null
  /** Whether the design is kept on this device. */
  readonly kept: 'no' | 'saving' | 'saved'
  /** Words for findings: loaded together with the code that finds them. */
  readonly foundLater: readonly Subject[]
}

/** With its braces, then without them where they make a difference; none where the dock cannot be pushed. */
export interface Swayed {
  readonly of: Designed
  readonly way: Way
  readonly shapes: readonly SwayShape[]
}

export interface Notice {
  readonly key: Word
  /** The faults of a file, one a line, in the engine's words. */
  readonly details?: readonly string[]
  readonly bad?: boolean
  /** An action offered with the notice: take the dock from the other tab, or reload the page. */
  readonly offer?: 'other' | 'reload'
}

export interface LeadlineState extends ViewState, DockState {
  readonly design: Design
  readonly catalog: Catalog
  /** How often somebody asked to try again. */
  readonly tries: number
  readonly canUndo: boolean
  readonly canRedo: boolean
  /** Distances that the strip spans from edge to edge, m. Held still while dragging. */
  readonly range: StripRange
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
  /** Replaces the design that the store was created with. Clears undo. */
  begin(design: Design): void
  /** Another catalog. No step of undo: a catalog is not the user's. */
  setCatalog(catalog: Catalog): void
  set(view: Partial<ViewState>): void
  /** From now on docks are placed with what `assess` finds of them at once; so is the one in hand. */
  checkWith(assess: Assess): void
  /** Takes the Dock that a worker placed, and how long that took, ms. Dropped if it is of another design. */
  takePlaced(of: Designed, dock: Dock, took: number): void
  /** Takes the Dock with the findings that came after its frame. `whole`: no more findings will come. */
  judged(of: Designed, dock: Dock, whole: boolean): void
  /** The design can be neither placed nor assessed: the worker gave no answer. */
  giveUp(of: Designed): void
  /** Tries again after `giveUp`. */
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
  language: ENGLISH,
  theme: 'auto',
  audience: 'customer',
  unpriced: false,
  selection: null,
  hover: null,
  waterLevel: 0,
  view: 'shore',
  framed: 0,
  cut: false,
  cutAt: null,
  person: true,
  labels: true,
  legs: null,
  waves: false,
  forces: false,
  sway: 'none',
  swayed: null,
  shaping: null,
  starting: false,
  atLake: false,
  dragging: false,
  notice: null,
  kept: 'no',
  foundLater: [],
}

export function createLeadlineStore(init: StoreInit = {}): LeadlineStore {
  const placer = makePlacer()
  const design = init.design ?? demoDesign
  const catalog = init.catalog ?? demoCatalog
  const first = placer.first(design, catalog)
  return createStore<LeadlineState>()((set, get) => ({
    ...initialView,
    ...init.view,
    ...first,
    design,
    catalog,
    tries: 0,
    range: stripRange(first.project),
    canUndo: false,
    canRedo: false,
    ...editing(set, get, placer),
    ...assessing(set, get, placer),
    set(view) {
      set(view)
    },
  }))
}

type Set = LeadlineStore['setState']
type Get = LeadlineStore['getState']

type Editing = Pick<
  LeadlineState,
  'edit' | 'endGesture' | 'undo' | 'redo' | 'replace' | 'begin' | 'setCatalog'
>

/** The actions that change the design, its history or the catalog. */
function editing(set: Set, get: Get, placer: Placer): Editing {
  let history: History = emptyHistory
  /** Puts a design in place with what must agree with it. `other`: nothing of what is in view has to do with it. */
  const show = (wanted: Design, next: History, other: boolean, more: Partial<LeadlineState> = {}): void => {
    history = next
    const now = get()
    const { project, dock, status, stale } = now
    const derived =
      wanted === now.design ? { project, dock, status, stale } : placer.next(wanted, now.catalog, now, other)
    const dragging = next.gesture !== null
    set({
      ...more,
      ...derived,
      design: wanted,
      dragging,
      range: dragging || derived.stale ? now.range : stripRange(derived.project),
      canUndo: next.past.length > 0,
      canRedo: next.future.length > 0,
    })
  }
  return {
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
      if (history.gesture !== null) show(get().design, closeGesture(history, get().design, sameDesign), false)
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
      const now = get()
      // Another shop's prices are not left in view.
      const derived = placer.next(now.design, wanted, now, true)
      set({ ...derived, catalog: wanted, range: derived.stale ? now.range : stripRange(derived.project) })
    },
  }
}

type Assessing = Pick<LeadlineState, 'checkWith' | 'takePlaced' | 'judged' | 'giveUp' | 'tryAgain'>

/** What workers send: docks placed there, and findings. */
function assessing(set: Set, get: Get, placer: Placer): Assessing {
  const inHand = (of: Designed): boolean => of.design === get().design && of.catalog === get().catalog
  return {
    checkWith(assess) {
      const last = placer.check(assess)
      const { project, stale } = get()
      if (last && !stale && project.dock === last.placed)
        set({ project: { ...project, dock: last.assessed }, dock: last.assessed })
    },
    takePlaced(of, placed, ms) {
      if (!inHand(of)) return
      placer.note(ms)
      const { dragging, range, project: before } = get()
      const project: Project = { ...before, dock: placed }
      set({
        ...placedState(project),
        range: dragging ? range : stripRange(project),
      })
    },
    judged(of, dock, whole) {
      if (!inHand(of)) return
      const known = dock.pending ? get().status : 'quick'
      set({ dock, status: whole ? (dock.pending ? 'unavailable' : 'deep') : known })
    },
    giveUp(of) {
      if (inHand(of)) set({ status: 'unavailable' })
    },
    tryAgain() {
      const { stale, tries } = get()
      set({ status: stale ? 'placing' : 'placed', tries: tries + 1 })
    },
  }
}

/** The Dock with the findings so far. */
export const dockOf = ({ dock }: Pick<LeadlineState, 'dock'>): Dock => dock

/** The same as it was placed, fitted and counted: for views that show nothing of what is found later, it stays one object. */
export const placedOf = ({ project }: Pick<LeadlineState, 'project'>): Dock => project.dock

/** The Dock for the host page, which cannot see `stale`: while the dock is of an earlier design, it says that it is pending. */
export const toldOf = ({ dock, stale }: Pick<LeadlineState, 'dock' | 'stale'>): Dock =>
  stale ? Object.freeze({ ...dock, structure: null, pending: true, findings: [] }) : dock

/** The Dock of the current design, for what is sent away: placed here and now if it is stale, and then nothing is found of it. */
export const placedNow = ({ design, catalog, dock, stale }: LeadlineState): Dock =>
  stale ? publishKit(deriveKit(design, catalog)) : dock

/** The Dock in which selection and hover are looked up: `placed`, which later findings leave alone, unless a finding itself is selected. */
export const pointedOf = (state: LeadlineState): Dock =>
  [state.selection, state.hover].some((id) => id?.startsWith('finding:')) ? dockOf(state) : placedOf(state)

/** What of prices is shown: as the page says, and to customers as the shop does. */
export const pricesIn = ({ audience, unpriced, catalog }: LeadlineState): PricesShown =>
  unpriced ? 'none' : pricesFor(catalog, audience)

/** Whose papers are offered: the crew's are those without prices. */
export const papersAudience = (state: LeadlineState): ViewState['audience'] =>
  audienceShown(state.audience, pricesIn(state))

/** A crew sets up by number. */
export const isNumbered = ({ legs, audience }: ViewState): boolean => legs ?? audience === 'crew'

/** True when no more findings will come. */
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
