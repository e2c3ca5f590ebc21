/** The way to one worker, which is taken when it is first asked something. Questions are numbered; a catalog goes with the first about it. */
import type { Designed } from '../state/store.ts'
import type { Answer, Question } from './assessment-worker.ts'
import type { Wish } from './question.ts'
import type { WorkerPool } from './worker-pool.ts'

export interface WorkerPort {
  /** The number of the question; null where no worker is to be had. */
  send(wish: Wish): number | null
  /** Ends the worker; the next question is asked of a new one. */
  end(): void
  /** Gives back a worker that has answered all that it was asked. */
  giveBack(): void
}

export function makeWorkerPort(
  pool: WorkerPool,
  answered: (answer: Answer) => void,
  broken: () => void,
): WorkerPort {
  let worker: Worker | null = null
  let catalog: { readonly of: Designed['catalog']; readonly number: number } | null = null
  /** One that is being ended may still answer: numbers go on from worker to worker. */
  let number = 0
  const letGo = (): Worker | null => {
    const old = worker
    if (old) old.onmessage = old.onerror = null
    worker = null
    catalog = null
    return old
  }
  return {
    send({ of, step, way = 'across' }) {
      if (!worker) {
        try {
          worker = pool.take()
        } catch {
          return null
        }
        worker.onmessage = ({ data }: MessageEvent<Answer>) => answered(data)
        worker.onerror = (event) => {
          event.preventDefault()
          broken()
        }
      }
      const fresh = catalog?.of !== of.catalog
      if (fresh) catalog = { of: of.catalog, number: (catalog?.number ?? 0) + 1 }
      number++
      const question: Question = {
        number,
        design: of.design,
        catalog: fresh ? of.catalog : null,
        catalogNumber: catalog!.number,
        step,
        way,
      }
      worker.postMessage(question)
      return number
    },
    end() {
      const old = letGo()
      // To end one takes longer than it may in the task of a pointer.
      if (old) setTimeout(() => old.terminate())
    },
    giveBack() {
      const old = letGo()
      if (old) pool.giveBack(old)
    },
  }
}
