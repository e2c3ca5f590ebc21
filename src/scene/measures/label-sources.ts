/** Labels from several sources in one overlay, so that none overlap. What was asked for has the best place, then the numbers of parts, then what is told of itself. */
import type { Note } from './dimensions.ts'
import type { Look, Overlay } from './label-overlay.ts'

export interface Joined extends Overlay {
  /** Sets the labels of a source besides the dimensions; an empty list removes them. */
  add(from: string, notes: readonly Note[]): void
  /** Calls at every frame with how the picture is looked at; returns what ends it. */
  watch(draw: (look: Look) => void): () => void
}

const rankOf = ({ sign, tone, of }: Note): number =>
  of !== undefined ? 1 : sign ? 3 : tone === 'plain' || tone === 'water' ? 2 : 0

export function joined(overlay: Overlay): Joined {
  let measures: readonly Note[] = []
  const added = new Map<string, readonly Note[]>()
  const watching = new Set<(look: Look) => void>()
  const show = (): void => {
    const all = [...[...added.values()].flat(), ...measures]
    overlay.show(all.sort((a, b) => rankOf(a) - rankOf(b)))
  }
  return {
    ...overlay,
    draw(look) {
      overlay.draw(look)
      for (const draw of watching) draw(look)
    },
    watch(draw) {
      watching.add(draw)
      return () => watching.delete(draw)
    },
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
