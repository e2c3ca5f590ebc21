/** The season record: loaded at the lake and with its papers, and by nothing that a page loads first. */

export { type Begun, beginOldDock, beginRecord, type OldDock } from './begin.ts'
export { entryFor, type Said, seasonFor, type Written } from './entry.ts'
export { LEARN_LEAST, type Learned, learn, type Settling } from './learn.ts'
export type { SoundingFit } from './learn-soundings.ts'
export { addEntry, headerOf, mergeRecords, sameDock } from './merge.ts'
export type { NextBrace } from './next-braces.ts'
export {
  type BedBasis,
  type KeepNext,
  type NextAsked,
  type NextLeg,
  type NextYear,
  nextYear,
  type Trend,
} from './next-year.ts'
export { liveEntries, subjectOf } from './order.ts'
export { parseRecord, parseRecordText } from './parse.ts'
export { putLevelRight, putRight, type Righted, saidOf } from './put-right.ts'
export { isWork, orderedKey, type Reorder, type ReorderRow, reorder } from './reorder.ts'
export {
  type Entry,
  type EntryKind,
  type EntryOf,
  type Keep,
  type LegNamed,
  type LegPlanned,
  type Photo,
  RECORD_LIMITS,
  type RecordHeader,
  type SeasonRecord,
  type SectionNamed,
} from './schema.ts'
export {
  type Conflict,
  deckAt,
  deckOf,
  type LegState,
  latestSeason,
  type SeasonState,
  seasonState,
  seasonsOf,
} from './state.ts'
export { type TakeOut, type TakeOutSection, takeOut } from './take-out.ts'
