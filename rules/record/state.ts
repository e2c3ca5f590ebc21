/** What holds now: of each leg, of the water, of the work; and what two phones said otherwise. */
import type { Entry, EntryOf, Keep, LegNamed, SeasonRecord } from './schema.ts'

/** Entries about one thing by phones that did not know of each other, and that do not agree. */
export interface Conflict {
  /** `level`, `set`, `sounding`, `step`, `out` */
  readonly kind: Entry['kind']
  /** Leg, step or section that it is about. */
  readonly of: string | null
  /** In their order; the last is taken until one of them is said to hold. */
  readonly entries: readonly Entry[]
}

/** How a leg stands, or stood last. */
export interface LegState {
  readonly leg: LegNamed
  readonly set: EntryOf<'set'> | null
  /** Elevation of the sole when it was set, m: deck of that day less set height. */
  readonly foot: number | null
  /** Of the deck when it was set, m. */
  readonly deck: number | null
  /** Latest sounding that somebody measured. */
  readonly sounding: EntryOf<'sounding'> | null
  /** Elevation of the bottom by it, m; null without one, or where the level was not known. */
  readonly bed: number | null
  /** Depth taken as planned, and not measured. */
  readonly asPlanned: boolean
  readonly out: EntryOf<'out'> | null
  readonly conflicts: readonly Conflict[]
}

export interface SeasonState {
  readonly season: string
  readonly level: EntryOf<'level'> | null
  /** The lake's surface and the deck over the survey water, m; null while no level is told. */
  readonly today: { readonly level: number; readonly keep: Keep; readonly deck: number } | null
  /** In the order of their numbers; legs that only entries name come last. */
  readonly legs: readonly LegState[]
  /** Steps that are done. */
  readonly done: readonly string[]
  readonly checks: readonly EntryOf<'check'>[]
  readonly wear: readonly EntryOf<'wear'>[]
  readonly notes: readonly EntryOf<'note'>[]
  readonly out: readonly EntryOf<'out'>[]
  readonly conflicts: readonly Conflict[]
}

export interface StateOptions {
  /** The record's latest where absent. */
  readonly season?: string
}

export declare function seasonState(record: SeasonRecord, options?: StateOptions): SeasonState
