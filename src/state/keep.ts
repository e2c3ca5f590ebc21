/**
 * Autosave: one record for each `storage-key` in the browser's own database. Beside the design in hand a record keeps the few
 * designs that it took the place of (a file opened, a link followed, another tab), so that none is lost.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { type Design, parseDesign } from '../../rules/index.ts'

/** Earlier designs kept beside the one in hand. */
const MOST_EARLIER = 8

export interface Earlier {
  readonly design: Design
  /** When it was put aside, ms since 1970. */
  readonly at: number
}

export interface Kept {
  readonly design: Design
  readonly earlier: readonly Earlier[]
}

interface Entry {
  /** As stored: parsed again when read, since another version may have written it. */
  readonly design: unknown
  readonly earlier: readonly { readonly design: unknown; readonly at: number }[]
  /** Which element wrote it last. */
  readonly by: string
}

interface Schema extends DBSchema {
  designs: { key: string; value: Entry }
}

export interface Keeper {
  load(): Promise<Kept | null>
  /** Saves; `putAside` is a design that this one takes the place of. Later calls win; resolves when written. */
  save(design: Design, putAside?: Design): Promise<void>
  earlier(): Promise<readonly Earlier[]>
  close(): void
}

/** @throws (rejects) where the browser gives no storage, as in some private windows. */
export async function openKeeper(key: string): Promise<Keeper> {
  const db: IDBPDatabase<Schema> = await openDB<Schema>('leadline', 1, {
    upgrade: (base) => {
      base.createObjectStore('designs')
    },
    blocking: () => db.close(),
  })
  const me = `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`
  /** What this element last read or wrote: a record that differs was written by another. */
  let known: unknown = null

  const read = (entry: Entry | undefined): Kept | null => {
    if (!entry) return null
    const parsed = parseDesign(entry.design)
    return parsed.ok ? { design: parsed.value, earlier: earlierOf(entry) } : null
  }
  return {
    async load() {
      const entry = await db.get('designs', key)
      const kept = read(entry)
      // One that cannot be read here counts as another's: it is put aside, not written over.
      known = kept && entry ? entry.design : null
      return kept
    },
    async save(design, putAside) {
      const tx = db.transaction('designs', 'readwrite')
      const entry = await tx.store.get(key)
      const aside: unknown[] = []
      if (entry && entry.by !== me && JSON.stringify(entry.design) !== JSON.stringify(known))
        aside.push(entry.design)
      if (putAside) aside.push(putAside)
      const at = Date.now()
      const earlier = [...aside.map((old) => ({ design: old, at })), ...(entry?.earlier ?? [])]
      const texts = new Set([JSON.stringify(design)])
      const distinct = earlier.filter(({ design: old }) => {
        const text = JSON.stringify(old)
        return !texts.has(text) && texts.add(text)
      })
      await tx.store.put({ design, earlier: distinct.slice(0, MOST_EARLIER), by: me }, key)
      await tx.done
      known = design
    },
    async earlier() {
      const entry = await db.get('designs', key)
      return entry ? earlierOf(entry) : []
    },
    close: () => db.close(),
  }
}

const earlierOf = (entry: Entry): Earlier[] =>
  entry.earlier.flatMap(({ design, at }) => {
    const parsed = parseDesign(design)
    return parsed.ok ? [{ design: parsed.value, at }] : []
  })
