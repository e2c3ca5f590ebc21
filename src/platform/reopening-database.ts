/** A connection to one of the browser's databases that is opened again where the browser or a newer version has closed it. */
import type { IDBPDatabase } from 'idb'

export interface Reopening<Schema> {
  /** Runs `on`; once more on a new connection where this one was closed. */
  act<T>(on: (db: IDBPDatabase<Schema>) => Promise<T>): Promise<T>
  close(): void
}

export async function reopening<Schema>(
  connect: () => Promise<IDBPDatabase<Schema>>,
): Promise<Reopening<Schema>> {
  let db = await connect()
  let closed = false
  return {
    async act(on) {
      try {
        return await on(db)
      } catch (error) {
        if (closed || !(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error
        db = await connect()
        return on(db)
      }
    },
    close() {
      closed = true
      db.close()
    },
  }
}
