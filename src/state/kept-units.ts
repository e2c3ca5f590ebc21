/** Feet or meters, as they were chosen on this device: the next time too, whichever page opens. */
import type { Units } from '../../rules/index.ts'
import { storageOf } from '../platform/storage-of.ts'

const KEY = 'leadline-units'

/** Null: nobody chose, or the browser keeps nothing. */
export function keptUnits(storage?: () => Storage): Units | null {
  const kept = storageOf(storage)((from) => from.getItem(KEY), null)
  return kept === 'metric' || kept === 'imperial' ? kept : null
}

/** Where it cannot be kept it is chosen anew. */
export const keepUnits = (units: Units, storage?: () => Storage): void =>
  storageOf(storage)((to) => to.setItem(KEY, units), undefined)
