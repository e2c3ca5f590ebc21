/**
 * The day at the lake as plain data. Units: m, kg, rad where nothing else is said.
 *
 * `depth` is always that under today's water (negative ashore), of what the foot pad stands on. Elevations (z) are over the survey day's
 * water, as everywhere. A set height goes from the sole of the foot pad to the deck surface.
 */
import type { LegPlace } from '../leg-places.ts'
import type { Step } from '../papers/steps/step.ts'

/** `planned`: the deck where it was planned; `over-water`: as high over today's water as it was planned over the survey day's. */
export type Keep = 'planned' | 'over-water'

/** What today's level was found from; `survey`: nobody knows, it is taken to be that of the survey day. */
export type LevelFrom = 'mark' | 'stake' | 'leg' | 'said' | 'survey'

/** `as-planned`: nobody measured there; it is kept as the plan has it, and tells nothing about the bed. */
export type HowMeasured = 'measured' | 'to-frame' | 'as-planned'

export interface Measured {
  /** Id of the leg. */
  readonly leg: string
  readonly depth: number
  readonly how: HowMeasured
  /** One standard deviation; absent: 10 mm. */
  readonly error?: number
  /** Measured a second time, and found the same. */
  readonly again?: boolean
}

export interface LegsAtHand {
  /** Code of the catalog. */
  readonly code: string
  readonly count: number
}

/** A leg that is set: its length by code, sole to deck. */
export interface LegSet {
  readonly leg: string
  readonly stock: string | null
  readonly height: number
}

/** What is known on the day: made from a season's record. */
export interface DayState {
  /** Elevation of the lake's surface today. */
  readonly level: number
  /** One standard deviation of it; absent: by `from`. Not asked where it was found from a leg: that leg is among those measured. */
  readonly levelError?: number
  readonly from?: LevelFrom
  readonly keep: Keep
  /** Elevation of the deck, where `keep` does not tell it: as it stood last year. */
  readonly deck?: number
  readonly measured: readonly Measured[]
  /** All legs there are, those set and laid ready among them; absent: as the plan has them. More are set of a code: so many are there. */
  readonly legsAtHand?: readonly LegsAtHand[]
  readonly set: readonly LegSet[]
}

/** Where a set height is found. Null: without a leg. */
export interface Heights {
  /** Sole to deck surface, and to frame top (read while the panels are off). */
  readonly deck: number
  readonly frame: number
  /** Sole of the foot pad to the mark on the leg that stands at the frame's top: the same as `frame`. */
  readonly fromSole: number
  /** That mark from the tube's top. */
  readonly fromTop: number | null
  /** Of the tube, over the deck surface; negative where it ends below it. */
  readonly aboveDeck: number | null
  /** Thickness of the foot pad under the tube: the sole is so much below the tube's end. */
  readonly sole: number
}

/** `yes`: with all that must stay in reserve; `reserve`: it reaches, and stands on that reserve; `no`: too short. */
export type Enough = 'yes' | 'reserve' | 'no'

export interface StockAt {
  readonly code: string
  readonly length: number
}

/** Where a clamp's hole is on the leg. */
export interface Mark {
  readonly leg: string
  readonly end: 'low' | 'high'
  readonly fromSole: number
  /** From the tube's top; null without a leg. */
  readonly fromTop: number | null
}

/**
 * `fits`: the brace of the plan, with its clamps at `marks`; `other`: that one does not, another of the shop would (`code`); `none`: none of
 * the shop does; `not-needed`: legs so short stand without.
 */
export type BraceFits = 'fits' | 'other' | 'none' | 'not-needed'

export interface BraceAt {
  readonly pair: string
  readonly fits: BraceFits
  /** Brace that `marks` are of: the plan's, or the other one. */
  readonly code: string | null
  /** In the plan; null: it has none. */
  readonly planned: string | null
  readonly marks: readonly Mark[]
  /** Planned marks moved by more than a thumb's breadth, or ends changed over. */
  readonly moved: boolean
  /** The brace is to be turned round: the leg that its low end was planned on. Null: it stays as it was planned. */
  readonly turnedFrom: string | null
}

/**
 * `differs`: measured far from what was to be expected. `no-leg`: no leg at hand is long enough. `on-reserve`: it reaches, and what must
 * stay is not left. `other-leg`: another leg at hand goes there. `brace-none`, `brace-other`: the plan's brace does not fit. `brace-missing`: a
 * leg so long is to be braced, and the plan has none. `frame-in-bed`: the frame comes too near the ground. `tall`: it stands over the deck by more
 * than the shop likes.
 */
export type LimitReason =
  | 'differs'
  | 'no-leg'
  | 'on-reserve'
  | 'other-leg'
  | 'brace-none'
  | 'brace-other'
  | 'brace-missing'
  | 'frame-in-bed'
  | 'tall'

/** `measure-again` comes before a call: what is measured twice is believed. */
export interface Limit {
  readonly say: 'go' | 'other-leg' | 'measure-again' | 'stop-and-call'
  readonly reasons: readonly LimitReason[]
}

export interface LegAt {
  readonly leg: string
  readonly number: number
  readonly section: string
  readonly place: LegPlace
  /** Lakeward from the stake, or from the survey day's water's edge where there is none. */
  readonly out: number
  /** Before anything was measured on the day. */
  readonly prior: { readonly depth: number; readonly sd: number }
  /** With all that was measured, here too: then `depth` is that. */
  readonly expected: { readonly depth: number; readonly sd: number }
  /** What was to be expected from all but this leg's own measurement. */
  readonly others: { readonly depth: number; readonly sd: number }
  readonly measured: Measured | null
  /** What the heights go by: as measured, kept as planned, or else as expected. */
  readonly depth: number
  /** The leg is set. */
  readonly set: LegSet | null
  readonly heights: Heights
  /** By how much the set height is more than in the plan. */
  readonly more: number
  /** What is to stand here by the assignment of all legs at hand; null: none. */
  readonly stock: StockAt | null
  /** In the plan. */
  readonly planned: StockAt | null
  /** With `stock`. */
  readonly enough: Enough
  /** That what must stay is left, with the error of the depth. */
  readonly chance: number
  /** The shop's shortest that does; null: none. */
  readonly needs: StockAt | null
  readonly brace: BraceAt | null
  /** The lengthwise one, where the plan has one. */
  readonly along: BraceAt | null
  readonly limit: Limit
}

export interface Station {
  readonly section: string
  /** As in `Dock`. */
  readonly role: 'ramp' | 'standing' | 'following'
  /** Its start edge's middle, lakeward from the stake. */
  readonly out: number
  readonly legs: readonly LegAt[]
  /** Every leg of it is set. */
  readonly done: boolean
}

/** What is tightened, with what, how far. */
export interface Tighten {
  readonly kind: string
  readonly code: string
  /** As stamped on it. */
  readonly wrench: string
  /** How many. */
  readonly count: number
  /** Turns past finger-tight, by where: the catalog's. */
  readonly turns: readonly { readonly at: string; readonly from: number; readonly to: number }[]
}

export interface DayStep {
  readonly step: Step
  /** Of each line with bolts, by its id. */
  readonly tighten: Readonly<Record<string, readonly Tighten[]>>
  /** Ids of the legs that are set in this step. */
  readonly legs: readonly string[]
}

/** `level-beyond`: the lake is beyond the levels the dock was made for. `forbidden`: the plan itself must not be built. `deck-low`: too little over today's water. */
export type DayReason = 'level-beyond' | 'forbidden' | 'deck-low'

export interface Day {
  /** Elevation of today's water and of the deck, and how much the deck is over that water. */
  readonly level: number
  readonly levelError: number
  readonly deck: number
  readonly overWater: number
  readonly keep: Keep
  /** What the depths measured so far say of the level, with what was known of it before. */
  readonly levelFound: { readonly level: number; readonly error: number }
  readonly order: readonly DayStep[]
  /** What is tightened at each leg once it is at its height. */
  readonly setBolts: readonly Tighten[]
  /** In the order of work. */
  readonly stations: readonly Station[]
  readonly assignment: AssignResult
  readonly limit: { readonly say: 'go' | 'stop-and-call'; readonly reasons: readonly DayReason[] }
}

// Assignment of legs

export interface AssignPlace {
  readonly leg: string
  /** Shortest that does with all that must stay; shortest that reaches. */
  readonly least: number
  readonly reaches: number
  /** Longest that it bears; one that is laid ready or set is borne in any case. */
  readonly most: number
  /** Code of what is laid ready, or set, there. */
  readonly ready: string | null
  readonly set?: boolean
}

export interface AssignPiece {
  readonly code: string
  readonly length: number
  readonly count: number
}

/** One leg carried: from another place or from those lying on the shore. */
export interface LegMove {
  readonly code: string
  readonly from: string | null
  readonly to: string
}

export interface AssignResult {
  readonly given: readonly { readonly leg: string; readonly code: string | null; readonly enough: Enough }[]
  /** Legs that get another length than lies ready; none where all stays. */
  readonly moves: readonly LegMove[]
  /** Places for which no leg at hand reaches. */
  readonly unserved: readonly string[]
  /** Left over, by code. */
  readonly left: readonly LegsAtHand[]
  /** Of all legs, over what their places ask, m. */
  readonly over: number
}

// Level

export interface LevelToday {
  readonly level: number
  /** One standard deviation. */
  readonly error: number
  readonly from: LevelFrom
}

// Level check

/** Highest and lowest reading of ten seconds: to a crest and to a trough, or from the deck down to them. */
export interface TenSeconds {
  readonly high: number
  readonly low: number
}

/** What was measured down to the water: once, or to a crest and a trough. */
export type Down = number | TenSeconds

export interface LevelReading {
  /** Id of the leg beside which it is read. */
  readonly leg: string
  /** Deck surface down to the water. */
  readonly down: Down
}

/** A level laid on the deck: so much lower at its far end (lakeward along the section, or to its left) over so much length. */
export interface BubbleReading {
  readonly section: string
  readonly along: 'length' | 'width'
  readonly fall: number
  readonly over: number
}

export interface LevelReadings {
  readonly readings: readonly LevelReading[]
  readonly bubbles?: readonly BubbleReading[]
  /** Legs whose foot swings free. */
  readonly hanging?: readonly string[]
  /** Legs set to a height over a depth that was measured: one that stands too high for that hangs. */
  readonly set?: readonly { readonly leg: string; readonly height: number; readonly depth: number }[]
  /** Sections that stand in the water; absent: all. */
  readonly inWater?: readonly string[]
  /** Deck over the water that it is to come to; absent: any, the same all over. */
  readonly over?: number
  /** Absent: 3 mm. */
  readonly tolerance?: number
}

export interface LevelMove {
  readonly leg: string
  /** Deck up at the leg positive: so much less of it stands over the deck. Null: let down until it stands. */
  readonly by: number | null
  /** Of a leveling screw, where the catalog has one; up positive. */
  readonly turns: number | null
}

export interface LevelCheck {
  /**
   * `level`: nothing to do. `moves`. `measure-again`: readings (`doubted`) that no frame can have. `more-readings`: those do not tell how
   * the legs of `unsure` stand.
   */
  readonly verdict: 'level' | 'moves' | 'measure-again' | 'more-readings'
  readonly moves: readonly LevelMove[]
  /** Deck over the water that it comes to; as it is read where nothing but a bubble was. */
  readonly over: number
  /** Worst corner off that, before and after, and one standard deviation of what the readings say of the worst. */
  readonly off: number
  readonly after: number
  readonly error: number
  /** Legs whose foot carries nothing. */
  readonly hanging: readonly string[]
  readonly doubted: readonly string[]
  readonly unsure: readonly string[]
  /** It is sure that no fewer moves do. */
  readonly fewest: boolean
}
