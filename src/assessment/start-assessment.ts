/** Has docks judged once the first picture is there (`assessment.ts`): until then, and while it is under way, the store has the dock as placed. */
import { whenIdle } from '../platform/idle.ts'
import { type LeadlineStore, placedNow } from '../state/store.ts'

/** The hand rests when nothing has changed for so long, ms. */
const REST = 160

/** Goes on until the function that it gives back is called. */
export function judge(store: LeadlineStore): () => void {
  let over = false
  let stop = (): void => {}
  const begin = async (): Promise<void> => {
    const chunk = await import('./assessment.ts').catch(() => null)
    if (over) return
    if (chunk) {
      stop = chunk.keepAssessing(store)
      return
    }
    // It did not come: nothing more is found of this dock, and the next change, or who tries again, asks for it again.
    // A dock that is still to be placed is placed here, once the hand rests: what does that is there.
    while (store.getState().stale) {
      const hand = store.getState()
      await new Promise((done) => setTimeout(done, REST))
      if (over) return
      if (store.getState().design !== hand.design) continue
      const begun = performance.now()
      hand.takePlaced(hand, placedNow(hand), performance.now() - begun)
    }
    const { design, catalog, project, judged } = store.getState()
    judged({ design, catalog }, project.dock, true)
    stop = store.subscribe((now, before) => {
      const same = now.design === before.design && now.catalog === before.catalog
      if (same && now.tries === before.tries) return
      stop()
      void begin()
    })
  }
  whenIdle(begin)
  return () => {
    over = true
    stop()
  }
}
