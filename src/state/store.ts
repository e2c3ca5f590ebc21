/**
 * One store for each element: the Design, how it is looked at, and undo. Nothing derived is kept in it; `dockOf` derives and
 * remembers by identity, so that every view reads one and the same Dock. What takes longer than a frame comes after it
 * (`judging.ts`): `dockOf` then gives the Dock with it.
 */
import { createContext, useContext, useSyncExternalStore } from 'react'
import { createStore, type StoreApi } from 'zustand/vanilla'
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
  parseDesign,
} from '../../rules/index.ts'
import type { Word } from '../words/index.ts'
import { closeGesture, emptyHistory, type History, remember, stepBack, stepForward } from './history.ts'
import { type Range, rangeOf } from './range.ts'

export interface ViewState {
  readonly units: 'imperial' | 'metric'
  readonly lang: string
  readonly theme: 'light' | 'dark' | 'auto'
  /** Who looks on: what is offered, no guard against anyone. */
  readonly audience: 'customer' | 'shop' | 'crew'
  /** Id of a section, leg, pair, joint or extra, or of a finding or a row of the list (`lit.ts`). */
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
  readonly sway: 'none' | 'across' | 'along'
  /** A gesture that changes the design is going on. */
  readonly dragging: boolean
  /** Something to tell the user once; null when read. */
  readonly notice: Notice | null
  /** Whether the design is kept on this device. */
  readonly kept: 'no' | 'saving' | 'saved'
  /** The words of what is found after the frame of an edit: they come with the code that finds it. */
  readonly moreWords: MoreWords
  /** How often a dock was judged: `dockOf` gives another for the same design then. */
  readonly judgements: number
}

export interface Notice {
  readonly key: Word
  /** Lines of a file's faults, as the engine tells them. */
  readonly details?: readonly string[]
  readonly bad?: boolean
}

export interface LeadlineState extends ViewState {
  readonly design: Design
  readonly catalog: Catalog
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
  /** Takes in the Dock of a design with what was found after its frame. `whole`: nothing more is going to be found. */
  judged(of: Designed, dock: Dock, whole: boolean): void
}

export type Designed = Pick<LeadlineState, 'design' | 'catalog'>

export type LeadlineStore = StoreApi<LeadlineState>

export interface StoreInit {
  readonly design?: Design
  readonly catalog?: Catalog
  readonly view?: Partial<ViewState>
}

export const initialView: ViewState = {
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
  dragging: false,
  notice: null,
  kept: 'no',
  moreWords: {},
  judgements: 0,
}

export function createLeadlineStore(init: StoreInit = {}): LeadlineStore {
  let history: History = emptyHistory
  return createStore<LeadlineState>()((set, get) => {
    /** Puts a design in place with what must agree with it. */
    const show = (design: Design, next: History, more: Partial<LeadlineState> = {}): void => {
      history = next
      const { catalog, range } = get()
      const dragging = next.gesture !== null
      set({
        ...more,
        design,
        dragging,
        range: dragging ? range : rangeOf(dockOf({ design, catalog }), design),
        canUndo: next.past.length > 0,
        canRedo: next.future.length > 0,
      })
    }
    const design = init.design ?? demoDesign
    const catalog = init.catalog ?? demoCatalog
    return {
      ...initialView,
      ...init.view,
      design,
      catalog,
      range: rangeOf(dockOf({ design, catalog }), design),
      canUndo: false,
      canRedo: false,
      edit(change, options = {}) {
        const before = get().design
        const wanted = change(before)
        if (wanted === before) return []
        const parsed = parseDesign(wanted)
        if (!parsed.ok) return parsed.issues
        if (sameDesign(parsed.value, before)) return []
        show(parsed.value, remember(history, before, options.gesture ?? null))
        return []
      },
      endGesture() {
        if (history.gesture !== null) show(get().design, closeGesture(history, get().design, sameDesign))
      },
      undo() {
        const step = stepBack(history, get().design)
        if (step) show(step.design, step.history)
      },
      redo() {
        const step = stepForward(history, get().design)
        if (step) show(step.design, step.history)
      },
      replace(wanted) {
        const before = get().design
        if (!sameDesign(wanted, before))
          show(wanted, remember(history, before, null), { selection: null, hover: null })
      },
      begin(wanted) {
        show(wanted, emptyHistory, { selection: null, hover: null })
      },
      setCatalog(wanted) {
        const { design: now } = get()
        set({ catalog: wanted, range: rangeOf(dockOf({ design: now, catalog: wanted }), now) })
      },
      set(view) {
        set(view)
      },
      judged(of, judged, whole) {
        Object.assign(knownOf(of), { judged, whole })
        set({ judgements: get().judgements + 1 })
      },
    }
  })
}

/** Designs are small plain data in one order of keys: their text tells whether they differ. */
export const sameDesign = (a: Design, b: Design): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b)

interface Known {
  readonly catalog: Catalog
  readonly placed: Dock
  judged: Dock
  whole: boolean
}
const docks = new WeakMap<Design, Known>()

function knownOf({ design, catalog }: Designed): Known {
  const known = docks.get(design)
  if (known?.catalog === catalog) return known
  const placed = assessKit(deriveKit(design, catalog))
  const made: Known = { catalog, placed, judged: placed, whole: false }
  docks.set(design, made)
  return made
}

/** The Dock of this state, as far as it is judged: derived once for each pair of objects, never stored in the state. */
export const dockOf = (state: Designed): Dock => knownOf(state).judged

/** The same as it was placed, fitted and counted: for views that show nothing of what is found later, it stays one object. */
export const placedOf = (state: Designed): Dock => knownOf(state).placed

/** What is picked and pointed at is looked up in this one: the same object whatever is found later, unless a finding is meant. */
export const pointedOf = (state: LeadlineState): Dock =>
  [state.selection, state.hover].some((id) => id?.startsWith('finding:')) ? dockOf(state) : placedOf(state)

/** Nothing more is going to be found about it. */
export const isJudged = (state: Designed): boolean => knownOf(state).whole

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
