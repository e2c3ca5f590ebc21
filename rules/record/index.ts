/** The season record: loaded at the lake and with its papers, and by nothing that a page loads first. */

export { type Begun, beginOldDock, beginRecord, type OldDock } from './begin.ts'
export { entryFor, type Said, seasonFor, type Written } from './entry.ts'
export { addEntry, headerOf, mergeRecords, sameDock } from './merge.ts'
export { liveEntries, subjectOf } from './order.ts'
export { parseRecord, parseRecordText } from './parse.ts'
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
export type { Conflict, LegState, SeasonState, StateOptions } from './state.ts'
