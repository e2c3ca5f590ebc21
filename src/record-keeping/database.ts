/**
 * Season records in the browser's own database: how each was begun, its entries one by one, its photos apart. An entry is written once and
 * never again, under what it says: tabs that write at once only add to each other.
 */
import { type DBSchema, openDB } from 'idb'
import { reopening } from '../platform/reopening-database.ts'

/** As stored: parsed again when read, since another version may have written it. */
interface Schema extends DBSchema {
  heads: { key: string; value: unknown }
  entries: { key: [record: string, name: string]; value: unknown }
  photos: { key: [record: string, hash: string]; value: ArrayBuffer }
}

export interface Stored {
  readonly head: unknown
  readonly entries: readonly { readonly name: string; readonly value: unknown }[]
}

export interface Database {
  ids(): Promise<readonly string[]>
  load(record: string): Promise<Stored>
  /** `head`: how the stored beginning and this one go together; null: nothing new of it. */
  put(
    record: string,
    head: ((stored: unknown) => unknown) | null,
    entries: ReadonlyMap<string, unknown>,
  ): Promise<void>
  putPhoto(record: string, hash: string, bytes: ArrayBuffer): Promise<void>
  photo(record: string, hash: string): Promise<ArrayBuffer | null>
  photos(record: string): Promise<number>
  remove(record: string): Promise<void>
  close(): void
}

/** All keys that begin with a record: an array is greater than any text. */
const of = (record: string): IDBKeyRange => IDBKeyRange.bound([record], [record, []])

/** @throws (rejects) where the browser gives no storage, as in some private windows. */
export async function openDatabase(key: string): Promise<Database> {
  const base = await reopening(() =>
    openDB<Schema>(`leadline-records/${key}`, 1, {
      upgrade(db) {
        for (const store of ['heads', 'entries', 'photos'] as const) db.createObjectStore(store)
      },
      blocking: (_, __, event) => {
        if (event.target instanceof IDBDatabase) event.target.close()
      },
    }),
  )
  return {
    ids: () => base.act((db) => db.getAllKeys('heads')),
    load: (record) =>
      base.act(async (db) => {
        const tx = db.transaction(['heads', 'entries'])
        const [head, names, values] = await Promise.all([
          tx.objectStore('heads').get(record),
          tx.objectStore('entries').getAllKeys(of(record)),
          tx.objectStore('entries').getAll(of(record)),
        ])
        return { head, entries: names.map(([, name], i) => ({ name, value: values[i] })) }
      }),
    put: (record, head, entries) =>
      base.act(async (db) => {
        const tx = db.transaction(['heads', 'entries'], 'readwrite')
        // Whatever aborts the transaction rejects `done` too; without a handler that would be an unhandled rejection.
        tx.done.catch(() => {})
        const heads = tx.objectStore('heads')
        if (head) await heads.put(head(await heads.get(record)), record)
        for (const [name, value] of entries) await tx.objectStore('entries').put(value, [record, name])
        await tx.done
      }),
    putPhoto: (record, hash, bytes) =>
      base.act(async (db) => void (await db.put('photos', bytes, [record, hash]))),
    photo: (record, hash) => base.act(async (db) => (await db.get('photos', [record, hash])) ?? null),
    photos: (record) => base.act((db) => db.count('photos', of(record))),
    remove: (record) =>
      base.act(async (db) => {
        const tx = db.transaction(['heads', 'entries', 'photos'], 'readwrite')
        tx.done.catch(() => {})
        await tx.objectStore('heads').delete(record)
        await tx.objectStore('entries').delete(of(record))
        await tx.objectStore('photos').delete(of(record))
        await tx.done
      }),
    close: base.close,
  }
}
