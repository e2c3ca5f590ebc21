/** Feet or meters, as they were chosen on this device: the next time too, whichever page opens. */
import type { Units } from '../../rules/index.ts'

const KEY = 'leadline-units'

/** Null: nobody chose, or the browser keeps nothing. */
export function keptUnits(storage: () => Storage = () => localStorage): Units | null {
  try {
    const kept = storage().getItem(KEY)
    return kept === 'metric' || kept === 'imperial' ? kept : null
  } catch {
    return null
  }
}

export function keepUnits(units: Units, storage: () => Storage = () => localStorage): void {
  try {
    storage().setItem(KEY, units)
  } catch {
    // Then they are chosen anew.
  }
}
