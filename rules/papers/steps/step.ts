/** What a step of the set-up or autumn sheet is. */
import type { PartKind } from '../../dock.ts'
import type { PaperWord } from '../../words/papers.ts'
import type { Saying } from '../saying.ts'

/**
 * `ready`: before anything is moved. `dry`: on shore. `first`: the standing section and the ramp, from the water. `outward`: each further
 * section, from the deck. `last`: what goes on when all stands. The autumn sheet has the same, the other way round.
 */
export type Phase = 'ready' | 'dry' | 'first' | 'outward' | 'last'
export type Place = 'shore' | 'water' | 'deck'

/** What one line of a step puts in its place (autumn: takes away). */
export type Work =
  | 'ready'
  | 'frame'
  | 'set-bolts'
  | 'legs'
  | 'clamps'
  | 'pads'
  | 'brace-low'
  | 'hooks'
  | 'hinge-bar'
  | 'first-pin'
  | 'carry'
  | 'sound'
  /** Its brace clamps to their places: they go on the leg on shore, and are tightened when its depth is known. */
  | 'clamp-place'
  | 'set-leg'
  | 'lay-ramp'
  | 'pins'
  | 'level'
  | 'brace-high'
  | 'drop-in'
  | 'lock'
  | 'tie'
  | 'panels'
  | 'extra'
  | 'clips'
  | 'leg-caps'
  | 'sleeve-caps'

export interface StepPart {
  readonly kind: PartKind
  readonly code: string
  readonly name: string
  readonly count: number
}

export interface StepLine {
  /** Of its own within the sheet, and the same in set-up and autumn: `dry.s3/legs`, `in.s3/set-leg/s3.end.left`. */
  readonly id: string
  readonly work: Work
  readonly say: Saying
  /** Ids of the sections, legs, pairs, joints and extras that are worked on. */
  readonly about: readonly string[]
  /** What is taken to hand. Over all lines of a sheet this is the parts list, without spares. */
  readonly parts: readonly StepPart[]
}

export interface Crew {
  readonly place: Place
  readonly people: number
}

/** A screen for dry, level, firm ground only (NIOSH 94-110): say so beside it. */
export interface LiftScreen {
  /** Recommended for one person, kg. */
  readonly limit: number
  /** What each has in hand over it; over 1 is more than is recommended. */
  readonly index: number
}

export interface StepLift {
  readonly section: string
  /** As it is lifted in this step, kg. */
  readonly mass: number
  /** By the catalog's limit for one person; two at least. */
  readonly people: number
  /** For each of them, kg. */
  readonly each: number
  readonly screen: LiftScreen | null
  readonly say: Saying
}

export interface Tool {
  readonly key: PaperWord
  /** Size of a wrench; null of other tools. */
  readonly size: string | null
  readonly say: Saying
}

export interface Step {
  /** `ready`, `dry.s3`, `in.s3`, `level`, `extras`, `clips`, `caps` */
  readonly id: string
  /** From 1, in the order of the sheet. */
  readonly number: number
  readonly phase: Phase
  /** The section that it is about; null for those about the whole dock. */
  readonly section: string | null
  readonly title: Saying
  readonly lines: readonly StepLine[]
  readonly crew: readonly Crew[]
  readonly lift: StepLift | null
  /** What is still loose when it is done. */
  readonly loose: readonly Saying[]
  readonly tools: readonly Tool[]
  readonly cautions: readonly PaperWord[]
  /** Sections that stand in the water when it is done: what a picture shows. */
  readonly standing: readonly string[]
}

export interface Steps {
  readonly season: 'set-up' | 'autumn'
  readonly title: Saying
  readonly steps: readonly Step[]
  /** All that is needed, each once. */
  readonly tools: readonly Tool[]
  /** Most people at once. */
  readonly people: number
  /** Said before the first step. */
  readonly cautions: readonly PaperWord[]
  /** Findings that forbid building: with any, nothing is to be set up. */
  readonly stops: number
}
