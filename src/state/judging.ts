/** Has docks judged once the first picture is there (`judge.ts`): until then, and while it is under way, `dockOf` gives the dock as placed. */
import { whenIdle } from './idle.ts'
import { isJudged, type LeadlineStore, placedOf } from './store.ts'

/** Goes on until the function that it gives back is called. */
export function judge(store: LeadlineStore): () => void {
  let over = false
  let stop = (): void => {}
  const begin = async (): Promise<void> => {
    const chunk = await import('./judge.ts').catch(() => null)
    if (over) return
    if (chunk) {
      stop = chunk.keepJudging(store)
      return
    }
    // It did not come: nothing more is found of this dock, and the next change asks for it again.
    const { design, catalog, judged } = store.getState()
    if (!isJudged({ design, catalog })) judged({ design, catalog }, placedOf({ design, catalog }), true)
    stop = store.subscribe((now, before) => {
      if (now.design === before.design && now.catalog === before.catalog) return
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
