/**
 * What the database has not got yet, written at once: a page that goes away waits for no database, but what was written here stands. Each
 * entry is an item of its own, named by what it says, so that two tabs never write over each other.
 */
import { messageOf } from '../platform/error-message.ts'
import { storageOf } from '../platform/storage-of.ts'
import type { WhyNot } from './kept.ts'

export interface Journal {
  /** null where it stands; else why not. */
  write(path: readonly string[], value: unknown): WhyNot | null
  /** All items under a path, with what they are named by after it. Items that are no JSON are left out, and stay. */
  read(path: readonly string[]): readonly { readonly name: readonly string[]; readonly value: unknown }[]
  forget(path: readonly string[]): void
}

/** Why something could not be kept. */
export function whyNot(error: unknown): WhyNot {
  const name = error instanceof Error ? error.name : ''
  if (name === 'QuotaExceededError' || /quota|full/i.test(messageOf(error))) return 'full'
  return name === 'SecurityError' || name === 'NotAllowedError' ? 'denied' : 'failed'
}

export function openJournal(key: string, storage: () => Storage = () => localStorage): Journal {
  const nameOf = (path: readonly string[]): string =>
    ['leadline-records', key, ...path].map(encodeURIComponent).join('/')
  const attempt = storageOf(storage)
  return {
    write(path, value) {
      try {
        storage().setItem(nameOf(path), JSON.stringify(value))
        return null
      } catch (error) {
        return whyNot(error)
      }
    },
    read: (path) =>
      attempt((kept) => {
        const prefix = `${nameOf(path)}/`
        return Object.keys(kept)
          .filter((name) => name.startsWith(prefix))
          .flatMap((name) =>
            attempt(() => {
              const value: unknown = JSON.parse(kept.getItem(name) ?? '')
              return [{ name: name.slice(prefix.length).split('/').map(decodeURIComponent), value }]
            }, []),
          )
      }, []),
    forget: (path) => attempt((from) => from.removeItem(nameOf(path)), undefined),
  }
}

/** What this browser is called in entries: the same over visits where anything can be kept. */
export function deviceId(journal: Journal, made: () => string): string {
  const [known] = journal.read(['device'])
  if (typeof known?.value === 'string' && known.value !== '') return known.value
  const device = made()
  journal.write(['device', 'id'], device)
  return device
}
