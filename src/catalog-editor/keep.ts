/**
 * The catalog in hand, kept on the device at each edit, so that nothing is lost on a reload. Written at once: a page that goes away waits for
 * no database. What another window wrote meanwhile, and what another file took the place of, is put aside, never written over.
 */
import { storageOf } from '../platform/storage-of.ts'
import { isList, isObject, type JsonObject, type Path } from './draft.ts'
import { openWaiting, type Waiting } from './price-list/waiting.ts'
import type { Kept } from './store.ts'

export interface Aside {
  readonly draft: JsonObject
  /** ms since 1970 */
  readonly at: number
}

/** Catalogs put aside that are kept. */
const MOST_ASIDE = 5

export interface Keep {
  /** Under which it is kept; null: it is not. */
  readonly name: string | null
  load(): Kept | null
  /** False where nothing can be kept: no permission, or no room. */
  save(kept: Kept): boolean
  putAside(draft: JsonObject): void
  aside(): readonly Aside[]
  /** A price list that is not taken in yet. */
  readonly waiting: Waiting
}

/** @param key none: nothing is kept */
export function openKeep(key: string | null, storage?: () => Storage, now: () => number = Date.now): Keep {
  const name = `leadline-catalog/${key}`
  const others = `${name}/aside`
  /** What this window has read or written last: another text is another window's. */
  let known: string | null = null
  const stored = storageOf(storage)
  const attempt = <T>(act: (storage: Storage) => T, or: T): T => (key === null ? or : stored(act, or))
  const aside = (): readonly Aside[] =>
    attempt((from) => {
      const list: unknown = JSON.parse(from.getItem(others) ?? '[]')
      return Array.isArray(list) ? list.filter(isAside) : []
    }, [])
  const putAside = (draft: JsonObject): void => {
    const text = JSON.stringify(draft)
    const rest = aside().filter((one) => JSON.stringify(one.draft) !== text)
    for (let most = MOST_ASIDE; most > 0; most--) {
      const list = JSON.stringify([{ draft, at: now() }, ...rest].slice(0, most))
      // Where there is no room for all, the oldest go.
      const fits = attempt((to) => {
        to.setItem(others, list)
        return true
      }, false)
      if (fits) return
    }
  }
  const read = (): { readonly text: string; readonly kept: Kept } | null =>
    attempt((from) => {
      const text = from.getItem(name)
      const value: unknown = text === null ? null : JSON.parse(text)
      return text !== null && isKept(value) ? { text, kept: value } : null
    }, null)
  return {
    name: key === null ? null : name,
    load() {
      const found = read()
      known = found?.text ?? null
      return found?.kept ?? null
    },
    save({ draft, saved, guessed }) {
      const text = JSON.stringify({ draft, saved, guessed })
      const found = read()
      if (found && found.text !== known && found.text !== text) putAside(found.kept.draft)
      return attempt((to) => {
        to.setItem(name, text)
        known = text
        return true
      }, false)
    },
    putAside,
    aside,
    waiting: openWaiting(key === null ? null : name, storage),
  }
}

const isAside = (value: unknown): value is Aside =>
  isObject(value) && isObject(value.draft) && typeof value.at === 'number'

const isKept = (value: unknown): value is Kept =>
  isObject(value) &&
  isObject(value.draft) &&
  isObject(value.saved) &&
  isList(value.guessed) &&
  value.guessed.every(
    (path): path is Path & readonly (string | number)[] =>
      isList(path) && path.every((key) => typeof key === 'string' || typeof key === 'number'),
  )
