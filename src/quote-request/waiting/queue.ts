/**
 * Requests that were sent where there was no connection: kept on this device, by the address that they are for, until that has taken them or
 * whoever asked takes them back. What is kept is of one site: the browser gives it to no other.
 */
import { storageOf } from '../../platform/storage-of.ts'
import type { RequestBody } from '../../state/request-body.ts'

export interface Waiting {
  readonly body: RequestBody
  /** What the address answered last, where that was no receipt and no "not now": it is not asked again by itself. */
  readonly answer?: number
}

/** More than anybody asks for; each may have a picture, and a browser keeps some 5 MB in all. */
const MOST = 10
/** Older ones wait for a hand: who asked may have forgotten, and the dock may be another by now. Days. */
const DAYS = 14
const PREFIX = 'leadline-request/'
/** Tells the page that something waits now, or does not any more. */
export const CHANGED = 'leadline-waiting'

/** The detail of that event where a request was taken. */
export interface Told {
  readonly id: string
  readonly reference: string | null
}

export interface Queue {
  /** False where the device keeps nothing, or no more. */
  keep(one: Waiting): boolean
  /** The oldest first. */
  list(): readonly Waiting[]
  /** Takes it out. */
  drop(id: string): void
}

const isRequest = (value: unknown): value is RequestBody =>
  typeof value === 'object' &&
  value !== null &&
  Reflect.get(value, 'format') === 'leadline/request' &&
  typeof Reflect.get(value, 'id') === 'string' &&
  !Number.isNaN(Date.parse(String(Reflect.get(value, 'at'))))

function read(text: string | null, id: string): Waiting[] {
  try {
    const { body, answer } = JSON.parse(text ?? '') as { readonly body?: unknown; readonly answer?: unknown }
    if (!isRequest(body) || body.id !== id) return []
    return [{ body, ...(typeof answer === 'number' && { answer }) }]
  } catch {
    return []
  }
}

/** Of the requests for one address. A browser may refuse to keep anything, at any time. */
export function waitingFor(address: string): Queue {
  const prefix = `${PREFIX}${encodeURIComponent(new URL(address, document.baseURI).href)}/`
  const attempt = storageOf()
  const list = (): Waiting[] =>
    attempt(
      (storage) =>
        Object.keys(storage)
          .filter((name) => name.startsWith(prefix))
          .flatMap((name) => read(storage.getItem(name), name.slice(prefix.length)))
          .sort((a, b) => Date.parse(a.body.at) - Date.parse(b.body.at)),
      [],
    )
  return {
    list,
    keep(one) {
      const { id } = one.body
      const kept = list()
      if (kept.length >= MOST && !kept.some(({ body }) => body.id === id)) return false
      return attempt((storage) => {
        storage.setItem(prefix + id, JSON.stringify(one))
        return storage.getItem(prefix + id) !== null
      }, false)
    },
    drop: (id) => attempt((storage) => storage.removeItem(prefix + id), undefined),
  }
}

/** Whether it is sent again by itself. `now`: ms since 1970 */
export const goesByItself = ({ body, answer }: Waiting, now: number): boolean =>
  answer === undefined && now - Date.parse(body.at) < DAYS * 86_400_000

/** `told`: it was taken. */
export function tellWaiting(told: Told | null): void {
  dispatchEvent(new CustomEvent<Told | null>(CHANGED, { detail: told }))
}
