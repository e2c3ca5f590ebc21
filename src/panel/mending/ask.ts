/** Asks a worker of its own what the remedies do. Where a page allows none the prices are worked out when it is idle, and *Fix all* is not offered. */
import { whenIdle } from '../../platform/idle.ts'
import type { Mending } from './mending.ts'
import type { MendingQuestion } from './mending-worker.ts'

/** @returns ends it; nothing is told after that */
export function askMending(question: MendingQuestion, tell: (mending: Mending) => void): () => void {
  let over = false
  let told = false
  let worker: Worker | null = null
  const onPage = (): void => {
    worker?.terminate()
    if (told || over) return
    whenIdle(async () => {
      const { costsOf } = await import('./mending.ts')
      if (over) return
      const { design, catalog, findings } = question
      tell({ costs: costsOf(design, catalog, findings), all: null })
    })
  }
  try {
    worker = new Worker(new URL('./mending-worker.ts', import.meta.url), {
      type: 'module',
      name: 'leadline-mending',
    })
    worker.addEventListener('message', ({ data }: MessageEvent<Mending>) => {
      told = true
      if (!over) tell(data)
    })
    worker.addEventListener('error', onPage)
    worker.postMessage(question)
  } catch {
    onPage()
  }
  return () => {
    over = true
    worker?.terminate()
  }
}
