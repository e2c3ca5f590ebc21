/** Searches beside the page. One question in its life; it is stopped by being ended. */
import type { Catalog, Design } from '../../../rules/index.ts'
import { type DepthWish, type Progress, type Searched, searchDepth } from './search.ts'

export interface SearchQuestion {
  readonly design: Design
  readonly catalog: Catalog
  readonly wish: DepthWish
  readonly decks: readonly number[]
}

export type SearchAnswer = { readonly progress: Progress } | { readonly found: Searched | null }

/** A page shows no more steps a second, ms. */
const OFTEN = 120

addEventListener('message', ({ data: { design, catalog, wish, decks } }: MessageEvent<SearchQuestion>) => {
  const tell = (answer: SearchAnswer): void => postMessage(answer)
  const steps = searchDepth(design, catalog, wish, decks)
  let told = 0
  for (;;) {
    const step = steps.next()
    if (step.done) {
      tell({ found: step.value })
      close()
      return
    }
    if (performance.now() - told > OFTEN) {
      told = performance.now()
      tell({ progress: step.value })
    }
  }
})
