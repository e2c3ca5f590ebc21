/** The legs' numbers in the picture, the same as on paper. */
import { useThree } from '@react-three/fiber'
import { useEffect, useLayoutEffect } from 'react'
import { useStore } from 'zustand'
import type { Dock } from '../../../rules/index.ts'
import { dockOf, type LeadlineStore } from '../../state/store.ts'
import { warnedParts } from '../parts/marks.ts'
import type { Note, Tone } from './dimensions.ts'
import type { Joined } from './label-sources.ts'

/** With more legs than this no number could be read: only that of the picked one is shown. */
const MOST = 120
/** Over the leg's top, and up its foot where the deck hides that, m. */
const OVER = 0.12
const LOW = 0.3

function numbersOf(dock: Dock, deck: number, selection: string | null): Note[] {
  const { legs } = dock
  // A leg that is warned of says it by its number: two signs have no room on one leg.
  const warned = warnedParts(dock)
  const toneOf = (id: string): Tone => {
    const grade = warned.get(id)
    return id === selection ? 'picked' : grade === undefined ? 'plain' : grade === 1 ? 'stop' : 'warn'
  }
  const notes = legs.flatMap(({ id, x, y, bed, aboveDeck }, i): Note[] =>
    legs.length > MOST && id !== selection
      ? []
      : [
          {
            id: `number ${id}`,
            of: id,
            at: [
              [x, y, deck + (aboveDeck ?? 0) + OVER],
              [x, y, Math.min(deck - OVER, bed + LOW)],
            ],
            text: String(i + 1),
            tone: toneOf(id),
            sign: true,
          },
        ],
  )
  // Where there is no room for all, the picked one has it.
  return notes.sort((a, b) => Number(b.of === selection) - Number(a.of === selection))
}

export function Numbers({ store, overlay }: { readonly store: LeadlineStore; readonly overlay: Joined }) {
  const invalidate = useThree((s) => s.invalidate)
  const dock = useStore(store, dockOf)
  const deck = useStore(store, (s) => s.design.dock.deckHeight)
  const selection = useStore(store, (s) => s.selection)
  useLayoutEffect(() => {
    overlay.add('numbers', numbersOf(dock, deck, selection))
    invalidate()
  }, [overlay, dock, deck, selection, invalidate])
  useEffect(
    () => () => {
      overlay.add('numbers', [])
      invalidate()
    },
    [overlay, invalidate],
  )
  return null
}
