/** Labels from several sides in one overlay: none lies on another, and what was asked for goes first. */
import type { Note } from './dimensions.ts'
import type { Overlay } from './label-overlay.ts'

export interface Joined extends Overlay {
  /** Labels of one who asks for some besides the measures; none takes them away. */
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
