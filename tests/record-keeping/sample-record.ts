/** Records to keep and to share. */
import { demoCatalog, demoDesign, derive, projectOf } from '../../rules/index.ts'
import {
  addEntry,
  beginOldDock,
  beginRecord,
  entryFor,
  type Said,
  type SeasonRecord,
} from '../../rules/record/index.ts'

const AT = '2026-06-06T14:00:00.000Z'

export const oldDock = (): SeasonRecord =>
  beginOldDock(
    { pairs: 5, deckHeight: 0.4 },
    { id: 'old-dock', device: 'phone-a', at: AT, name: 'Quillet Cove' },
  )

export const demoRecord = (): SeasonRecord =>
  beginRecord(projectOf(demoDesign, demoCatalog, derive(demoDesign, demoCatalog)), {
    id: 'demo',
    device: 'phone-a',
    at: AT,
  })

/** With one entry more. Throws where it is none. */
export function withEntry(
  record: SeasonRecord,
  said: Said,
  id: string,
  device = 'phone-a',
  at = AT,
): SeasonRecord {
  const added = addEntry(record, entryFor(record, said, { id, device, at }))
  if (!added.ok) throw new Error(JSON.stringify(added.issues))
  return added.value
}

/** With notes, of the leg's and the season's usual length. */
export function withNotes(record: SeasonRecord, count: number): SeasonRecord {
  let more = record
  for (let i = 0; i < count; i++)
    more = withEntry(
      more,
      { kind: 'set', leg: 'pair-1.left', stock: null, height: 1 + i / 1000, level: 0.1, how: 'measured' },
      `entry-${i}-${(i * 2654435761) >>> 0}`,
    )
  return more
}
