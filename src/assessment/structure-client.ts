/**
 * Asks for what is not done on the page, beside it, in two workers. One places docks that are too large for the page, gives the quick
 * answer to every change and says how a dock sways; what takes longer has one of its own, which is ended where another design comes
 * meanwhile and it goes on too long with the last one: nobody waits for an answer that nobody needs. Where a page allows no workers (another origin, its policy) the same is done on
 * the page's own thread when it is idle.
 */
import { pageLine } from './page-line.ts'
import type { Line, Wish } from './question.ts'
import { workerLine } from './worker-line.ts'
import { makeWorkerPool, type Spawn, type WorkerPool } from './worker-pool.ts'

export type StructureClient = Line

const spawnWorker: Spawn = () =>
  new Worker(new URL('./assessment-worker.ts', import.meta.url), { type: 'module', name: 'leadline' })

/** Of the whole page. */
const POOL = makeWorkerPool(spawnWorker)

export function makeStructureClient(pool: WorkerPool = POOL): StructureClient {
  let workers = typeof Worker !== 'undefined'
  const onPage = pageLine()
  /** A worker that does not start is asked for no more: its questions are answered on the page. */
  const none = (unanswered: Wish | null): void => {
    workers = false
    if (unanswered) onPage.ask(unanswered)
  }
  const quick = workerLine(pool, none)
  const deep = workerLine(pool, none)
  return {
    ask(wish) {
      if (!workers) onPage.ask(wish)
      else if (wish.step === 'deep' || wish.step === 'found') deep.ask(wish)
      else quick.ask(wish)
    },
    drop() {
      quick.drop()
      deep.drop()
      onPage.drop()
    },
    close() {
      quick.close()
      deep.close()
      onPage.drop()
    },
  }
}
