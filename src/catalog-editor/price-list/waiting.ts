/**
 * A price list that is neither taken in nor put away yet, kept on the device with what was said of its columns and rows: there again after a
 * reload. Each window keeps its own, so that no two write over each other; a window that has none goes on with the newest.
 */

import { newId } from '../../platform/new-id.ts'
import { storageOf } from '../../platform/storage-of.ts'
import { LENGTH_UNITS, type Reading } from './read-row.ts'
import { ROW_KINDS } from './row-kinds.ts'
import { ROLES } from './table.ts'
import { TAKEN_LISTS, type TakenList } from './take.ts'

export interface WaitingList {
  /** As it stands in the field. */
  readonly typed: string
  /** That was read last: of the field, or of a file. */
  readonly text: string
  /** `text` is shown as it was read, to be taken in. */
  readonly isRead: boolean
  /** What was said of the columns and rows of `text`; null: nothing yet. */
  readonly reading: Reading | null
  /** What `text` is to take the place of; null: nothing said yet. */
  readonly replace: readonly TakenList[] | null
}

export const NO_LIST: WaitingList = { typed: '', text: '', isRead: false, reading: null, replace: null }

export const isWaiting = ({ typed, isRead }: WaitingList): boolean => isRead || typed.trim() !== ''

export interface Waiting {
  load(): WaitingList
  /** False where nothing can be kept: no permission, or no room. */
  save(list: WaitingList): boolean
}

/** @param name what the items' names begin with; null: nothing is kept */
export function openWaiting(
  name: string | null,
  storage?: () => Storage,
  session: () => Storage = () => sessionStorage,
  now: () => number = Date.now,
): Waiting {
  const stored = storageOf(storage)
  const inTab = storageOf(session)
  const prefix = `${name}/price-list/`
  /** The item that this window goes on with, and its text as this window knows it: another text is another window's. */
  let own = inTab((from) => from.getItem(prefix), null)
  let known: string | null = null
  const goOn = (item: string): void => {
    own = item
    inTab((to) => to.setItem(prefix, item), undefined)
  }
  return {
    load() {
      if (name === null) return NO_LIST
      const found = stored(
        (from) =>
          Object.keys(from)
            .filter((item) => item.startsWith(prefix))
            .flatMap((item) => {
              const text = from.getItem(item) ?? ''
              const read = parsed(text)
              return read ? [{ item, text, ...read }] : []
            })
            .sort((a, b) => Number(b.item === own) - Number(a.item === own) || b.at - a.at)[0],
        undefined,
      )
      if (!found) return NO_LIST
      goOn(found.item)
      known = found.text
      return found.list
    },
    save(list) {
      if (name === null) return true
      return stored((to) => {
        const mine = own !== null && to.getItem(own) === known
        if (!isWaiting(list)) {
          if (mine && own !== null) to.removeItem(own)
          known = null
          return true
        }
        // Another window writes there too: it went on with the same list, or came of this one.
        if (!mine) goOn(prefix + newId())
        const text = JSON.stringify({ at: now(), list })
        to.setItem(own!, text)
        known = text
        return true
      }, false)
    },
  }
}

/** As any version of the page may have left it; null where it is no such thing. */
function parsed(text: string): { readonly at: number; readonly list: WaitingList } | null {
  try {
    const { at, list } = JSON.parse(text) as {
      readonly at?: unknown
      readonly list?: Record<string, unknown>
    }
    if (typeof at !== 'number' || typeof list?.typed !== 'string' || typeof list.text !== 'string')
      return null
    const reading = isReading(list.reading) ? list.reading : null
    const replace = isListOf(TAKEN_LISTS, list.replace) ? list.replace : null
    return {
      at,
      list: { typed: list.typed, text: list.text, isRead: list.isRead === true, reading, replace },
    }
  } catch {
    return null
  }
}

const isOf = <T extends string>(all: readonly T[], value: unknown): value is T =>
  all.some((one) => one === value)
const isListOf = <T extends string>(all: readonly T[], value: unknown): value is readonly T[] =>
  Array.isArray(value) && value.every((one) => isOf(all, one))

function isReading(value: unknown): value is Reading {
  const { roles, length, mass, currency, kinds } = Object(value) as {
    readonly [K in keyof Reading]?: unknown
  }
  return (
    isListOf(ROLES, roles) &&
    isOf(LENGTH_UNITS, length) &&
    (mass === 'lb' || mass === 'kg') &&
    typeof currency === 'string' &&
    isListOf(ROW_KINDS, Object.values(Object(kinds)))
  )
}
