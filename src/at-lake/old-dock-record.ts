/** The record of a dock that stands already, with the water of the day on which it is begun: all later levels are over that. */
import {
  addEntry,
  type Begun,
  beginOldDock,
  entryFor,
  type Said,
  type SeasonRecord,
} from '../../rules/record/index.ts'

export interface OldDockSaid {
  readonly name: string
  readonly pairs: number
  /** Empty: none. */
  readonly mark: string
  /** From it down to the water, m. */
  readonly down: number | null
}

/** @param entry id of its first entry, new */
export function oldDockRecord(
  { name, pairs, mark, down }: OldDockSaid,
  begun: Begun,
  entry: string,
): SeasonRecord {
  const above = mark === '' ? null : down
  const record = beginOldDock(
    { pairs, ...(above === null ? {} : { mark: { name: mark, above } }) },
    { ...begun, name },
  )
  const level: Said<'level'> =
    above === null
      ? { kind: 'level', level: 0, from: 'survey', keep: 'planned' }
      : { kind: 'level', level: 0, from: 'mark', mark, down: above, keep: 'planned' }
  const added = addEntry(record, entryFor(record, level, { id: entry, device: begun.device, at: begun.at }))
  return added.ok ? added.value : record
}
