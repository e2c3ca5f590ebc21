/**
 * Where what is made is put, the surest that can be had: at once in the journal, soon in the database, and in this tab's memory for as long
 * as neither takes it. What could not be stored is tried again with the next write.
 */
import type { Database } from './database.ts'
import { type Journal, whyNot } from './journal.ts'
import type { Kept, WhyNot } from './kept.ts'

/** By what each says: `nameOf`. */
type Named = ReadonlyMap<string, unknown>

/** One record's. */
export interface Store {
  /** Entries, and how the record was begun: all stand when this returns, unless `kept` says otherwise. */
  write(entries: Named, heads: Named): void
  /** Kept apart: only the database has room for them. */
  writePhoto(hash: string, bytes: ArrayBuffer): Promise<void>
  photo(hash: string): Promise<ArrayBuffer | null>
  readonly kept: Kept
  /** Resolves when all that is not in the database has been tried. */
  flush(): Promise<void>
}

interface Options {
  readonly record: string
  readonly journal: Journal
  /** null: there is none. */
  readonly database: Database | null
  /** Why there is none. */
  readonly why: WhyNot | null
  /** How what is stored of the beginnings and these go together, as stored. */
  join(stored: unknown, heads: readonly unknown[]): unknown
  /** `kept` is another. */
  changed(): void
}

/** What the database has not got: it is in the journal, but for what that did not take either. */
class Waiting {
  readonly all = new Map<string, unknown>()
  readonly unsure = new Set<string>()
  constructor(
    readonly journal: Journal,
    readonly path: readonly string[],
  ) {}

  /** Why the journal did not take it. */
  note(name: string, value: unknown): WhyNot | null {
    this.all.set(name, value)
    const failed = this.journal.write([...this.path, name], value)
    if (failed) this.unsure.add(name)
    else this.unsure.delete(name)
    return failed
  }

  noteAgain(): WhyNot | null {
    return [...this.unsure].reduce<WhyNot | null>(
      (why, name) => this.note(name, this.all.get(name)) ?? why,
      null,
    )
  }

  stored(names: Iterable<string>): void {
    for (const name of names) {
      this.all.delete(name)
      this.unsure.delete(name)
      this.journal.forget([...this.path, name])
    }
  }
}

export function openStore({ record, journal, database, why: none, join, changed }: Options): Store {
  const entries = new Waiting(journal, ['entry', record])
  const heads = new Waiting(journal, ['head', record])
  const photos = new Map<string, ArrayBuffer>()
  let why: WhyNot | null = none
  let working: Promise<void> = Promise.resolve()
  let told = ''

  const keptNow = (): Kept => {
    const [ofEntries, ofPhotos] = [entries.unsure.size, photos.size]
    return ofEntries + heads.unsure.size + ofPhotos > 0
      ? { state: 'this-tab-only', why: why ?? 'failed', entries: ofEntries, photos: ofPhotos }
      : { state: 'kept', why: null, entries: 0, photos: 0 }
  }

  async function flushOnce(): Promise<void> {
    why = heads.noteAgain() ?? entries.noteAgain() ?? why
    if (!database) return
    const [written, begun] = [new Map(entries.all), new Map(heads.all)]
    try {
      if (written.size + begun.size > 0)
        await database.put(
          record,
          begun.size > 0 ? (stored) => join(stored, [...begun.values()]) : null,
          written,
        )
      entries.stored(written.keys())
      heads.stored(begun.keys())
      for (const [hash, bytes] of [...photos]) {
        await database.putPhoto(record, hash, bytes)
        photos.delete(hash)
      }
      why = null
    } catch (error) {
      why = whyNot(error)
    }
  }

  const flush = (): Promise<void> => {
    working = working.then(flushOnce).then(() => {
      const now = JSON.stringify(keptNow())
      if (now !== told) changed()
      told = now
    })
    return working
  }
  return {
    write(more, beginnings) {
      for (const [name, value] of beginnings) why = heads.note(name, value) ?? why
      for (const [name, value] of more) why = entries.note(name, value) ?? why
      void flush()
    },
    writePhoto(hash, bytes) {
      photos.set(hash, bytes)
      return flush()
    },
    photo: async (hash) =>
      photos.get(hash) ?? (await database?.photo(record, hash).catch(() => null)) ?? null,
    get kept() {
      return keptNow()
    },
    flush,
  }
}
