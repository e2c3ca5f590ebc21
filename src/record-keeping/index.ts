/**
 * How season records are kept: each entry at once, whatever happens to the page, the disk or the clock. Loaded where there is a record.
 * See `kept.ts` for what is told.
 */
import type { Parsed } from '../../rules/index.ts'
import {
  addEntry,
  type Entry,
  type RecordHeader,
  type SeasonRecord,
  sameDock,
} from '../../rules/record/index.ts'
import { newId } from '../platform/new-id.ts'
import { within } from '../platform/time-limit.ts'
import { latest } from './clock.ts'
import type { Database, Stored } from './database.ts'
import { openDrafts } from './drafts.ts'
import { deviceId, type Journal, openJournal, whyNot } from './journal.ts'
import { joinHeads, keepRecord, nameOf, type OwnKeeper, recordOf } from './keeper.ts'
import type { Listed, RecordKeeper, Records, WhyNot } from './kept.ts'
import { photosOf } from './photos.ts'
import { openStore } from './store.ts'
import { openTabs } from './tabs.ts'

export type { Listed, RecordKeeper, Records } from './kept.ts'

/** Some browsers never answer an open request: records are kept in the journal after this long, ms. */
const OPENING = 3000

export interface RecordsOptions {
  /** Time, ms since 1970: the device's clock. */
  readonly now?: () => number
}

/** Records under a key, shared by all tabs of the site. Never rejects: where nothing can be stored, `kept` tells. */
export async function openRecords(key: string, { now = Date.now }: RecordsOptions = {}): Promise<Records> {
  const journal = openJournal(key)
  const { database, why } = await openBase(key)
  return new KeptRecords(key, journal, database, why, now)
}

async function openBase(key: string): Promise<{ database: Database | null; why: WhyNot | null }> {
  const opening = import('./database.ts').then(({ openDatabase }) => openDatabase(key))
  try {
    return { database: await within(OPENING, opening), why: null }
  } catch (error) {
    // Should it come after all, nobody waits for it any more.
    opening.then(
      (late) => late.close(),
      () => {},
    )
    return { database: null, why: whyNot(error) }
  }
}

/** The tab's own name, which a reload keeps. */
function tabId(key: string): string {
  const own = openJournal(key, () => sessionStorage)
  return deviceId(own, newId)
}

class KeptRecords implements Records {
  readonly device: string
  readonly #journal: Journal
  readonly #database: Database | null
  readonly #why: WhyNot | null
  readonly #now: () => number
  readonly #tab: string
  readonly #tabs: ReturnType<typeof openTabs>
  readonly #keepers = new Map<string, OwnKeeper>()
  readonly #seen = (): void => void (document.visibilityState === 'visible' && this.#readAgain())

  constructor(
    key: string,
    journal: Journal,
    database: Database | null,
    why: WhyNot | null,
    now: () => number,
  ) {
    this.#journal = journal
    this.#database = database
    this.#why = why
    this.#now = now
    this.device = deviceId(journal, newId)
    this.#tab = tabId(key)
    this.#tabs = openTabs(key, (record, what) => {
      const { heads, entries } = Object(what) as { heads?: unknown; entries?: unknown }
      if (Array.isArray(heads) && Array.isArray(entries)) this.#keepers.get(record)?.hear(heads, entries)
    })
    document.addEventListener('visibilitychange', this.#seen)
  }

  async list(): Promise<readonly Listed[]> {
    const ids = await this.#ids()
    const listed = await Promise.all(
      ids.map(async (id): Promise<Listed[]> => {
        const keeper = await this.open(id)
        if (!keeper) return []
        const { name, dock, entries, made } = keeper.record
        const photos = photosOf(keeper.record).length
        const at = latest(
          made.at,
          entries.map((one) => one.at),
        )
        return [{ id, name, dock, entries: entries.length, photos, at }]
      }),
    )
    return listed.flat().sort((a, b) => Date.parse(b.at) - Date.parse(a.at))
  }

  async open(id: string): Promise<RecordKeeper | null> {
    const open = this.#keepers.get(id)
    if (open) return open
    const { head, entries } = await this.#stored(id)
    const read = readStored(
      head,
      entries.map(({ value }) => value),
    )
    // Opened meanwhile by somebody else.
    const other = this.#keepers.get(id)
    if (other || !read) return other ?? null
    const keeper = this.#keep(id, read.record, read.unreadable)
    // What only the journal had goes into the database.
    const noted = this.#noted(id)
    if (noted.entries.length > 0 || noted.heads.length > 0)
      keeper.writeDown(new Set(noted.entries.map(({ name }) => name)))
    return keeper
  }

  async take(record: SeasonRecord, how: 'merge' | 'apart' = 'merge'): Promise<Parsed<RecordKeeper>> {
    const ids = await this.#ids()
    if (how === 'merge')
      for (const id of ids) {
        const keeper = await this.open(id)
        if (!keeper || !sameDock(keeper.record, record)) continue
        const merged = keeper.merge(record)
        return merged.ok ? { ok: true, value: keeper, notices: merged.notices } : merged
      }
    const id = ids.includes(record.id) ? newId() : record.id
    const keeper = this.#keep(id, record, 0)
    keeper.writeDown()
    void askToStay()
    return { ok: true, value: keeper, notices: [] }
  }

  async raw(id: string): Promise<string> {
    const { head, entries } = await this.#stored(id)
    return `${JSON.stringify({ heads: head, entries: entries.map(({ value }) => value) }, null, 1)}\n`
  }

  async remove(id: string): Promise<void> {
    this.#keepers.delete(id)
    for (const kind of ['head', 'entry', 'draft'])
      for (const { name } of this.#journal.read([kind, id])) this.#journal.forget([kind, id, ...name])
    await this.#database?.remove(id)
  }

  async close(): Promise<void> {
    document.removeEventListener('visibilitychange', this.#seen)
    await Promise.all([...this.#keepers.values()].map((keeper) => keeper.save()))
    this.#tabs.close()
    this.#database?.close()
  }

  #keep(id: string, record: SeasonRecord, unreadable: number): OwnKeeper {
    const [journal, database, why] = [this.#journal, this.#database, this.#why]
    const keeper: OwnKeeper = keepRecord({
      id,
      device: this.device,
      record,
      unreadable,
      store: openStore({
        ...{ record: id, journal, database, why, join: joinHeads },
        changed: () => keeper.changed(),
      }),
      drafts: openDrafts(journal, id, this.#tab),
      now: this.#now,
      newId,
      tell: (heads: readonly RecordHeader[], entries: readonly Entry[]) =>
        this.#tabs.tell(id, { heads, entries }),
    })
    this.#keepers.set(id, keeper)
    return keeper
  }

  async #ids(): Promise<readonly string[]> {
    const stored = (await this.#database?.ids().catch(() => [])) ?? []
    const noted = this.#journal.read(['head']).map(({ name }) => name[0] ?? '')
    return [...new Set([...this.#keepers.keys(), ...noted, ...stored])]
  }

  #noted(id: string): { heads: readonly unknown[]; entries: Stored['entries'] } {
    return {
      heads: this.#journal.read(['head', id]).map(({ value }) => value),
      entries: this.#journal.read(['entry', id]).map(({ name, value }) => ({ name: name.join('/'), value })),
    }
  }

  async #stored(id: string): Promise<{ head: readonly unknown[]; entries: Stored['entries'] }> {
    const stored = (await this.#database?.load(id).catch(() => null)) ?? null
    const noted = this.#noted(id)
    return {
      head: [...(Array.isArray(stored?.head) ? stored.head : []), ...noted.heads],
      entries: [...(stored?.entries ?? []), ...noted.entries],
    }
  }

  /** A tab that slept has missed what others wrote. */
  async #readAgain(): Promise<void> {
    for (const [id, keeper] of this.#keepers) {
      const { head, entries } = await this.#stored(id)
      const known = new Set(keeper.record.entries.map(nameOf))
      const missed = entries.filter(({ name }) => !known.has(name)).map(({ value }) => value)
      if (missed.length > 0) keeper.hear(head, missed)
      if (keeper.kept.state !== 'kept') void keeper.save()
    }
  }
}

/** What can be read of a record: whole, or where something in it cannot, all but that. null: not even how it was begun. */
function readStored(
  heads: readonly unknown[],
  entries: readonly unknown[],
): { readonly record: SeasonRecord; readonly unreadable: number } | null {
  const joined = joinHeads(heads, [])
  const whole = recordOf(joined, entries)
  if (whole.ok) return { record: whole.value, unreadable: 0 }
  const bare = recordOf(joined, [])
  const begun = bare.ok ? bare : recordOf(joined.slice(0, 1), [])
  if (!begun.ok) return null
  let record = begun.value
  let unreadable = 0
  for (const entry of entries) {
    const alone = recordOf(joined.slice(0, 1), [entry])
    const [own] = alone.ok ? alone.value.entries : []
    const added = own && addEntry(record, own)
    if (added?.ok) record = added.value
    else unreadable++
  }
  return { record, unreadable }
}

/** A browser that is short of room throws away what sites keep, but not of those that asked. */
async function askToStay(): Promise<void> {
  try {
    await navigator.storage?.persist?.()
  } catch {
    // It is kept as anything else is.
  }
}
