/** Has it worked out how the dock sways, while that is shown and the hand rests. */
import type { Way } from '../../rules/structure/dock/sway-shape.ts'
import type { LeadlineStore } from '../state/store.ts'
import type { StructureClient } from './structure-client.ts'

export interface SwayAsker {
  /** Asks where it is wanted and not known, once `ready`: of what waits in the line only the last is asked, and the quick answer goes first. */
  ask(ready: Promise<void>, gone: () => boolean): void
  /** What was asked is dropped: another dock is in hand. */
  forget(): void
}

export function makeSwayAsker(store: LeadlineStore, client: StructureClient): SwayAsker {
  let asked: Way | null = null
  return {
    ask(ready, gone) {
      void ready.then(() => {
        const { design, catalog, sway: way, dragging, swayed } = store.getState()
        if (gone() || way === 'none' || dragging || asked === way) return
        if (swayed?.way === way && swayed.of.design === design && swayed.of.catalog === catalog) return
        asked = way
        const of = { design, catalog }
        client.ask({
          of,
          step: 'sway',
          way,
          swayed(shapes) {
            if (!gone()) store.getState().set({ swayed: { of, way, shapes } })
          },
          // It is asked for once more when somebody wants to see it again.
          failed: () => this.forget(),
        })
      })
    },
    forget() {
      asked = null
    },
  }
}
