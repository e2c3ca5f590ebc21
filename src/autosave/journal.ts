/**
 * What the database has not got yet, written at once: a page that goes away waits for no database, but what was written here stands. Read
 * back at the next start. Each writer (an element of a page) has an entry of its own, so that two tabs never write over each other.
 */
import type { Design } from '../../rules/index.ts'
import { storageOf } from '../platform/storage-of.ts'

/** A design with the line of edits that it is of: a later one of the same line takes its place. */
export interface Aside {
  readonly design: Design
  readonly line: string
  /** When it was put aside, ms since 1970. */
  readonly at: number
}

/** One writer's last word: its design, and what it put aside meanwhile. `design` is as stored, to be parsed by whoever reads it. */
export interface Entry {
  readonly design: unknown
  readonly line: string
  readonly at: number
  /** What stood behind the page's address then, or a moment before: a page loaded with it goes on, with another it follows a link. */
  readonly fragments?: readonly string[]
  readonly aside: readonly (Omit<Aside, 'design'> & { readonly design: unknown })[]
}

export interface Written {
  /** Key of the entry, for `forget`. */
  readonly name: string
  readonly text: string
  readonly entry: Entry
}

export interface Journal {
  /** False if nothing can be stored: no permission, or no room. */
  write(entry: Entry): boolean
  /** Whether anything can be kept at all. */
  works(): boolean
  /** What any writer left, the newest first. */
  read(): readonly Written[]
  /** Takes out what the database has got now; what was written anew since stays. */
  forget(written: readonly Pick<Written, 'name' | 'text'>[]): void
  /** What this writer has written and not forgotten. */
  mine(): Pick<Written, 'name' | 'text'> | null
}

const isEntry = (value: unknown): value is Entry =>
  typeof value === 'object' &&
  value !== null &&
  'design' in value &&
  'line' in value &&
  typeof value.line === 'string' &&
  'at' in value &&
  Number.isFinite(value.at) &&
  'aside' in value &&
  Array.isArray(value.aside)

/** `local` outlives the tab and is shared with others; `session` is this tab's own. `me` tells writers apart. */
export function openJournal(kind: 'local' | 'session', key: string, me: string): Journal {
  const prefix = `leadline/${encodeURIComponent(key)}/`
  const name = prefix + me
  let last: string | null = null
  const attempt = storageOf(() => (kind === 'local' ? localStorage : sessionStorage))
  return {
    write(entry) {
      const text = JSON.stringify(entry)
      return attempt((storage) => {
        storage.setItem(name, text)
        last = text
        return true
      }, false)
    },
    works: () =>
      attempt((storage) => {
        storage.setItem(`leadline?${me}`, '')
        storage.removeItem(`leadline?${me}`)
        return true
      }, false),
    read() {
      return attempt((storage) => {
        const names = Object.keys(storage).filter((each) => each.startsWith(prefix))
        return names
          .flatMap((each): Written[] => {
            const text = storage.getItem(each) ?? ''
            try {
              const entry: unknown = JSON.parse(text)
              return isEntry(entry) ? [{ name: each, text, entry }] : []
            } catch {
              return []
            }
          })
          .sort((a, b) => b.entry.at - a.entry.at)
      }, [])
    },
    forget(written) {
      attempt((storage) => {
        for (const each of written)
          if (storage.getItem(each.name) === each.text) storage.removeItem(each.name)
      }, undefined)
      if (written.some((each) => each.name === name && each.text === last)) last = null
    },
    mine: () => (last === null ? null : { name, text: last }),
  }
}
