/**
 * Judges the dock when the hand rests: what takes longer than a frame may take is worked out a little at a time between the browser's own
 * work, and dropped at the next edit. Nothing of an earlier dock is ever shown: until it is there `dockOf` gives the dock without it.
 */
import { dockOf, isJudged, type LeadlineStore } from './store.ts'

/** An edit is followed by others; after this long it is the last one, ms. */
const REST = 160
/** The longest that it goes on at a time, ms: a third of a frame. */
const SLICE = 5
/** A page that is never idle gets it all the same, ms. */
const PATIENCE = 400

/** Goes on until the function that it gives back is called. */
export function judgeAtRest(store: LeadlineStore): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  /** Another number: what was begun is dropped. */
  let turn = 0
  let over = false

  const begin = async (): Promise<void> => {
    const mine = ++turn
    if (over || isJudged(store.getState())) return
    const { design, catalog } = store.getState()
    // Where the chunk does not come there is nothing to say; the next edit asks for it again.
    const chunk = await import('./judge.ts').catch(() => null)
    if (!chunk || mine !== turn) return
    const steps = chunk.judge(design, catalog, dockOf({ design, catalog }))
    const go = (): void => {
      if (mine !== turn) return
      const until = performance.now() + SLICE
      for (let step = steps.next(); ; step = steps.next()) {
        if (step.done) {
          store.getState().judged({ design, catalog }, step.value)
          return
        }
        if (performance.now() > until) break
      }
      whenIdle(go)
    }
    whenIdle(go)
  }
  const wait = (): void => {
    turn++
    clearTimeout(timer)
    if (!isJudged(store.getState())) timer = setTimeout(() => whenIdle(begin), REST)
  }
  wait()
  const stop = store.subscribe((now, before) => {
    if (now.design !== before.design || now.catalog !== before.catalog) wait()
  })
  return () => {
    over = true
    turn++
    clearTimeout(timer)
    stop()
  }
}

function whenIdle(go: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(go, { timeout: PATIENCE })
  else setTimeout(go, 16)
}
