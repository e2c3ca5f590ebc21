/** One record in hand: what this tab makes of it, what other tabs and phones bring, and where it stands. */
import { digestOf } from '../../rules/fingerprint.ts'
import type { Parsed } from '../../rules/index.ts'
import {
  addEntry,
  type Entry,
  entryFor,
  headerOf,
  mergeRecords,
  parseRecord,
  type RecordHeader,
  type Said,
  type SeasonRecord,
} from '../../rules/record/index.ts'
import { clockDoubt } from './clock.ts'
import type { Drafts } from './drafts.ts'
import type { Merged, RecordKeeper } from './kept.ts'
import { hashOf, shrinkPhoto } from './photos.ts'
import type { Store } from './store.ts'

/** An entry's name in every storage: what it says, so that the same is there once and nothing else is written over. */
export const nameOf = (entry: unknown): string => digestOf(entry).slice(0, 32)

/** Its beginning, and those that it was merged with. */
const headsOf = (record: SeasonRecord): readonly RecordHeader[] => [headerOf(record), ...record.others]

const named = (values: readonly unknown[]): ReadonlyMap<string, unknown> =>
  new Map(values.map((value) => [nameOf(value), value]))

/** A record with these beginnings and entries, checked. */
export function recordOf(heads: readonly unknown[], entries: readonly unknown[]): Parsed<SeasonRecord> {
  const [own, ...others] = heads
  return parseRecord({ ...Object(own), format: 'leadline/record', version: 1, others, entries })
}

/** What two storages have of the beginnings, each once; as stored. What cannot be read stays as it is. */
export function joinHeads(stored: unknown, heads: readonly unknown[]): readonly unknown[] {
  const all = [...(Array.isArray(stored) ? stored : []), ...heads]
  const read = all.map((head) => recordOf([head], []))
  const fine = read.flatMap((one) => (one.ok ? [one.value] : []))
  const odd = all.filter((_, i) => !read[i]?.ok)
  const [first, ...rest] = fine
  if (!first) return all
  const joined = rest.reduce((a, b) => {
    const both = mergeRecords(a, b)
    return both.ok ? both.value : a
  }, first)
  return [...headsOf(joined), ...odd]
}

export interface KeeperOptions {
  readonly id: string
  readonly device: string
  readonly record: SeasonRecord
  readonly unreadable: number
  readonly store: Store
  readonly drafts: Drafts
  readonly now: () => number
  readonly newId: () => string
  /** To other tabs. */
  tell(heads: readonly RecordHeader[], entries: readonly Entry[]): void
}

export interface OwnKeeper extends RecordKeeper {
  /** From another tab, or from what is stored: unchecked. */
  hear(heads: readonly unknown[], entries: readonly unknown[]): void
  /** Where it is kept has changed. */
  changed(): void
  /** Writes down how it was begun, and entries of it: all, or those of these names. */
  writeDown(names?: ReadonlySet<string>): void
}

/** Photos of one record. */
const photosIn = (store: Store): Pick<RecordKeeper, 'addPhoto' | 'takePhoto' | 'photo'> => ({
  async addPhoto(picture) {
    const shrunk = await shrinkPhoto(picture)
    if (!shrunk) return null
    const { bytes, width, height } = shrunk
    const hash = hashOf(bytes)
    await store.writePhoto(hash, bytes)
    return { hash, width, height, bytes: bytes.byteLength }
  },
  takePhoto: (bytes) => store.writePhoto(hashOf(bytes), bytes.slice().buffer),
  async photo(hash) {
    const bytes = await store.photo(hash)
    return bytes && new Blob([bytes], { type: 'image/jpeg' })
  },
})

export function keepRecord(options: KeeperOptions): OwnKeeper {
  const { id, device, store, drafts, now, newId, tell, unreadable } = options
  let record = options.record
  const listeners = new Set<() => void>()
  const changed = (): void => {
    for (const each of [...listeners]) each()
  }
  /** Takes in a record that was read; what was not here goes on from here. */
  const take = (from: SeasonRecord, onward: boolean): Parsed<Merged> => {
    const both = mergeRecords(record, from)
    if (!both.ok) return both
    const mine = new Set(record.entries.map(nameOf))
    const theirs = new Set(from.entries.map(nameOf))
    const added = both.value.entries.filter((entry) => !mine.has(nameOf(entry)))
    const heads = headsOf(both.value)
    const known = named(headsOf(record))
    const begun = heads.some((head) => !known.has(nameOf(head)))
    record = both.value
    if (added.length > 0 || begun) {
      store.write(named(added), named(begun ? heads : []))
      if (onward) tell(begun ? heads : [], added)
      changed()
    }
    const lacking = [...mine].filter((name) => !theirs.has(name)).length
    return { ok: true, value: { added: added.length, lacking }, notices: [] }
  }
  return {
    id,
    unreadable,
    get record() {
      return record
    },
    get kept() {
      return store.kept
    },
    get clockDoubt() {
      return clockDoubt(record, now())
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    add(said: Said, season) {
      const at = new Date(now()).toISOString()
      const made = { id: newId(), device, at, ...(season === undefined ? {} : { season }) }
      const entry = entryFor(record, said, made)
      const added = addEntry(record, entry)
      if (!added.ok) return added
      record = added.value
      const kept = record.entries.find((one) => one.id === entry.id) ?? entry
      store.write(named([kept]), named([]))
      tell([], [kept])
      changed()
      return { ok: true, value: kept, notices: added.notices }
    },
    merge: (from) => take(from, true),
    draft: drafts.read,
    keepDraft: drafts.keep,
    ...photosIn(store),
    save: store.flush,
    hear(heads, entries) {
      const read = recordOf(heads.length > 0 ? heads : headsOf(record), entries)
      if (read.ok) take(read.value, false)
    },
    changed,
    writeDown(names) {
      const all = named(record.entries)
      store.write(new Map([...all].filter(([name]) => !names || names.has(name))), named(headsOf(record)))
    },
  }
}
