/** Labels from several sources in one overlay, so that none overlap; those of an added source go before the dimensions. */
import type { Note } from './dimensions.ts'
import type { Overlay } from './label-overlay.ts'

export interface Joined extends Overlay {
  /** Sets the labels of a source besides the dimensions; an empty list removes them. */
  add(from: string, notes: readonly Note[]): void
}

export function joined(overlay: Overlay): Joined {
  let measures: readonly Note[] = []
  const added = new Map<string, readonly Note[]>()
  const show = (): void => overlay.show([...[...added.values()].flat(), ...measures])
  return {
    ...overlay,
    show(notes) {
      measures = notes
      show()
    },
    add(from, notes) {
      if (notes.length > 0) added.set(from, notes)
      else added.delete(from)
      show()
    },
  }
}
