/** That a dock is being set up here, so that the page that plans docks can say so and lead back: as it was left, on this device. */
import { storageOf } from '../platform/storage-of.ts'

/** `app.tsx` asks whether there is any. */
const KEY = 'leadline-lake-on'
const SHOWN = 'leadline-lake'
const GOES_ON = 'leadline-lake-go'

export interface UnderWay {
  /** Under which its record is kept. */
  readonly id: string
  readonly name: string
  readonly set: number
  readonly all: number
}

/** Of another dock that is under way it is not taken away. */
export function keepUnderWay(id: string, now: UnderWay | null, storage?: () => Storage): void {
  if (now === null && keptUnderWay(storage)?.id !== id) return
  storageOf(storage)((to) => {
    if (now) to.setItem(KEY, JSON.stringify(now))
    else to.removeItem(KEY)
  }, undefined)
}

/** Null: none, or none that can be read. */
export function keptUnderWay(storage?: () => Storage): UnderWay | null {
  return storageOf(storage)((from) => {
    const { id, name, set, all } = Object(JSON.parse(from.getItem(KEY) ?? 'null')) as {
      readonly [K in keyof UnderWay]?: unknown
    }
    return typeof id === 'string' &&
      typeof name === 'string' &&
      typeof set === 'number' &&
      typeof all === 'number'
      ? { id, name, set, all }
      : null
  }, null)
}

/** Of this tab, so that it is there again when the page is loaded anew; where it keeps nothing the dock in hand says which it is. */
const inTab = storageOf(() => sessionStorage)

export const rememberShown = (id: string | null): void =>
  inTab((to) => (id === null ? to.removeItem(SHOWN) : to.setItem(SHOWN, id)), undefined)

export const lastShown = (): string | null => inTab((from) => from.getItem(SHOWN), null)

/** Asked for on the page that plans: that dock is opened, at what comes next. */
export function goOnWith(id: string): void {
  rememberShown(id)
  inTab((to) => to.setItem(GOES_ON, id), undefined)
}

/** Whether that was asked for; once. */
export const takeGoOn = (id: string): boolean =>
  inTab((from) => {
    const asked = from.getItem(GOES_ON) === id
    from.removeItem(GOES_ON)
    return asked
  }, false)
