/**
 * Workers that one element has left, for the next: a host that shows another page, an element that begins again with another catalog. What
 * a worker has compiled by then takes longer to get again than most docks take to judge.
 */

export type Spawn = () => Worker

export interface WorkerPool {
  /** @throws whatever making one throws where a page allows none. */
  take(): Worker
  /** One that has nothing to do and is listened to by nobody. */
  giveBack(worker: Worker): void
}

/** As many as one element has. */
const KEPT = 2
/** ms */
const KEPT_FOR = 30_000

export function makeWorkerPool(spawn: Spawn): WorkerPool {
  const left: { readonly worker: Worker; readonly end: ReturnType<typeof setTimeout> }[] = []
  return {
    take() {
      // The first one given back answers quickly, the second deeply: each goes on with what it knows.
      const kept = left.shift()
      if (!kept) return spawn()
      clearTimeout(kept.end)
      return kept.worker
    },
    giveBack(worker) {
      if (left.length === KEPT) {
        worker.terminate()
        return
      }
      const end = setTimeout(() => {
        left.splice(
          left.findIndex((one) => one.worker === worker),
          1,
        )
        worker.terminate()
      }, KEPT_FOR)
      left.push({ worker, end })
    },
  }
}
