/**
 * Autosave: one record for each `storage-key` in the browser's own database. Beside the design in hand a record keeps the few
 * designs that it took the place of (a file opened, a link followed, another tab), so that none is lost. Elements that keep under one
 * key hear of each other, in other tabs too.
 */

import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { type Design, parseDesign } from '../../rules/index.ts'
import { reopening } from '../platform/reopening-database.ts'
import type { Earlier } from '../state/host.ts'
import type { Entry as Leaf } from './journal.ts'

/** Earlier designs kept beside the one in hand. */
const MOST_EARLIER = 8

type Stored = Leaf['aside'][number]

interface Entry {
  /** As stored: parsed again when read, since another version may have written it. */
  readonly design: unknown
  /** Newest first. The first version knew no lines. */
  readonly earlier: readonly (Omit<Stored, 'line'> & { readonly line?: string })[]
  /** Which element wrote it last, in which line of edits, and when; the first version knew but the first. */
  readonly by: string
  readonly line?: string
  readonly at?: number
  readonly fragments?: readonly string[]
}

interface Schema extends DBSchema {
  designs: { key: string; value: Entry }
}

/** What is kept: see `Entry` of the journal. */
export interface Loaded extends Pick<Leaf, 'at' | 'fragments'> {
  readonly design: Design
  readonly line: string | undefined
}

/** What another element with this key announces: that it is there, or that it has saved. */
export type Heard = 'there' | 'saved'

export interface Keeper {
  /** What is kept, and when it was; null where there is nothing that can be read. From then on it counts as known. */
  load(): Promise<Loaded | null>
  /** Registers a design that came from elsewhere (the journal), so that a record with the same design does not count as another element's. */
  know(design: unknown): void
  /** Saves; what another wrote meanwhile is put aside. Later calls win; resolves when written. */
  save(leaf: Leaf): Promise<void>
  /** Whether another has written since this one last read or wrote. */
  changed(): Promise<boolean>
  earlier(): Promise<readonly Earlier[]>
  close(): void
}

/**
 * `me` tells elements apart.
 * @throws (rejects) where the browser gives no storage, as in some private windows.
 */
export async function openKeeper(
  key: string,
  me: string,
  hear: (what: Heard) => void = () => {},
): Promise<Keeper> {
  const base = await reopening(connect)
  const others = listen(key, me, hear)
  /** Texts of designs that this element has read or written: a record with another one was written by another element. */
  const known = new Set<string>()
  const isForeign = (entry: Entry | undefined): entry is Entry =>
    entry !== undefined && entry.by !== me && !known.has(JSON.stringify(entry.design))
  const read = (): Promise<Entry | undefined> => base.act((db) => db.get('designs', key))
  /** The write in progress: the channel stays open until it has been announced. */
  let writing: Promise<unknown> = Promise.resolve()
  return {
    async load() {
      const entry = await read()
      if (!entry) return null
      const parsed = parseDesign(entry.design)
      // One that cannot be read here counts as another's: it is put aside, not written over.
      if (!parsed.ok) return null
      known.add(JSON.stringify(entry.design))
      const { line, at = 0, fragments } = entry
      return { design: parsed.value, line, at, ...(fragments ? { fragments } : {}) }
    },
    know: (design) => void known.add(JSON.stringify(design)),
    save(leaf) {
      const { design, line, at, fragments } = leaf
      const text = JSON.stringify(design)
      const written = base.act(async (db) => {
        const tx = db.transaction('designs', 'readwrite')
        // Whatever aborts the transaction rejects `done` too; without a handler that would be an unhandled rejection.
        tx.done.catch(() => {})
        const entry = await tx.store.get(key)
        const foreign = isForeign(entry) ? [{ ...entry, at: entry.at ?? at }] : []
        const earlier = newestOfEachLine(text, line, [...foreign, ...leaf.aside, ...(entry?.earlier ?? [])])
        await tx.store.put({ design, earlier, by: me, line, at, ...(fragments ? { fragments } : {}) }, key)
        await tx.done
        known.clear()
        known.add(text)
        others.tell('saved')
      })
      writing = written.catch(() => {})
      return written
    },
    changed: async () => isForeign(await read()),
    async earlier() {
      const entry = await read()
      return (entry?.earlier ?? []).flatMap(({ design, at }) => {
        const parsed = parseDesign(design)
        return parsed.ok ? [{ design: parsed.value, at }] : []
      })
    },
    close() {
      base.close()
      void writing.then(others.close)
    },
  }
}

const connect = (): Promise<IDBPDatabase<Schema>> =>
  openDB<Schema>('leadline', 1, {
    upgrade: (base) => {
      base.createObjectStore('designs')
    },
    blocking: (_, __, event) => {
      if (event.target instanceof IDBDatabase) event.target.close()
    },
  })

interface Others {
  tell(what: Heard): void
  close(): void
}

type Message = { readonly what: Heard | 'who'; readonly by: string }

/** Talks to other elements with this key, in other tabs too: asks who is there, and answers. */
function listen(key: string, me: string, hear: (what: Heard) => void): Others {
  const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(`leadline/${key}`)
  const tell = (what: Message['what']): void => channel?.postMessage({ what, by: me })
  channel?.addEventListener('message', ({ data }: MessageEvent<Message>) => {
    if (data?.by === me) return
    if (data?.what === 'who') {
      tell('there')
      hear('there')
    } else if (data?.what === 'there' || data?.what === 'saved') hear(data.what)
  })
  tell('who')
  return { tell, close: () => channel?.close() }
}

/** Of the designs set aside, the newest of each line of edits, without the current line: eight docks, not eight steps of one. */
function newestOfEachLine(text: string, line: string, aside: Entry['earlier']): Entry['earlier'] {
  const texts = new Set([text])
  const lines = new Set([line])
  return aside
    .filter((old) => {
      const oldText = JSON.stringify(old.design)
      if (texts.has(oldText) || (old.line !== undefined && lines.has(old.line))) return false
      texts.add(oldText)
      if (old.line !== undefined) lines.add(old.line)
      return true
    })
    .slice(0, MOST_EARLIER)
    .map((old) => ({ design: old.design, at: old.at, ...(old.line ? { line: old.line } : {}) }))
}
