/**
 * Asks what is found of a dock, beside the page: in a worker, two of them. One gives the quick answer to every change; what takes longer has
 * one of its own, which is ended where another design comes meanwhile: nobody waits for an answer that nobody needs. Where a page allows
 * no workers (another origin, its policy) the same is done on the page's own thread when it is idle.
 *
 * Latest wins: of several questions of one kind that wait only the last is asked, and answers to others are dropped.
 */
import { whenIdle } from './idle.ts'
import type { Judgement } from './judgement.ts'
import type { Answer, Question } from './stand-worker.ts'
import type { Designed } from './store.ts'

export interface Wish {
  readonly of: Designed
  readonly deep: boolean
  /** A deep question is answered twice, the second time `whole`. */
  readonly got: (judgement: Judgement) => void
  /** It cannot be worked out here: its code did not come, say. */
  readonly failed: () => void
}

export interface Asker {
  ask(wish: Wish): void
  /** Nothing that was asked is wanted any more. */
  drop(): void
  close(): void
}

interface Line {
  ask(wish: Wish): void
  drop(): void
  close(): void
}

export type Spawn = () => Worker

const spawnWorker: Spawn = () =>
  new Worker(new URL('./stand-worker.ts', import.meta.url), { type: 'module', name: 'leadline' })

export function makeAsker(spawn: Spawn = spawnWorker): Asker {
  let workers = typeof Worker !== 'undefined'
  const onPage = pageLine()
  /** A worker that does not start is asked for no more: its questions are answered on the page. */
  const none = (unanswered: Wish | null): void => {
    workers = false
    if (unanswered) onPage.ask(unanswered)
  }
  const quick = workerLine(spawn, none)
  const deep = workerLine(spawn, none)
  return {
    ask(wish) {
      if (!workers) onPage.ask(wish)
      else if (wish.deep) deep.ask(wish)
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

/** One worker and its questions, one at a time. */
function workerLine(spawn: Spawn, none: (unanswered: Wish | null) => void): Line {
  let worker: Worker | null = null
  let catalog: { readonly of: Designed['catalog']; readonly number: number } | null = null
  let number = 0
  /** In the worker, `wish` null where its answer is no longer wanted. */
  let asked: { readonly number: number; readonly deep: boolean; wish: Wish | null } | null = null
  let waiting: Wish | null = null

  const end = (): void => {
    const old = worker
    // To end one takes longer than it may in the task of a pointer.
    if (old) setTimeout(() => old.terminate())
    worker = null
    catalog = null
    asked = null
  }
  const answered = ({ data }: MessageEvent<Answer>): void => {
    // One that is being ended may still answer: numbers go on from worker to worker.
    if (data.number !== asked?.number) return
    const { wish, deep } = asked
    if (deep && 'judgement' in data && !data.judgement.whole) {
      wish?.got(data.judgement)
      return
    }
    asked = null
    const next = waiting
    waiting = null
    // The next one is under way before the page draws what this one found.
    if (next) send(next)
    if (!wish) return
    if ('judgement' in data) wish.got(data.judgement)
    else wish.failed()
  }
  const broken = (event: Event): void => {
    event.preventDefault()
    const unanswered = waiting ?? asked?.wish ?? null
    waiting = null
    end()
    none(unanswered)
  }
  const send = (wish: Wish): void => {
    if (!worker) {
      try {
        worker = spawn()
      } catch {
        none(wish)
        return
      }
      worker.addEventListener('message', answered)
      worker.addEventListener('error', broken)
    }
    const fresh = catalog?.of !== wish.of.catalog
    if (fresh) catalog = { of: wish.of.catalog, number: (catalog?.number ?? 0) + 1 }
    number++
    asked = { number, deep: wish.deep, wish }
    const question: Question = {
      number,
      design: wish.of.design,
      catalog: fresh ? wish.of.catalog : null,
      catalogNumber: catalog!.number,
      deep: wish.deep,
    }
    worker.postMessage(question)
  }
  return {
    ask(wish) {
      if (asked) waiting = wish
      else send(wish)
    },
    drop() {
      waiting = null
      if (asked?.deep) end()
      else if (asked) asked.wish = null
    },
    close() {
      waiting = null
      end()
    },
  }
}

/** The page's own thread, between what it has to do. A quick answer goes first; the chunk of what finds it comes with the first one. */
function pageLine(): Line {
  let turn = 0
  let wishes: Wish[] = []
  const go = async (mine: number): Promise<void> => {
    const chunk = await import('./judgement.ts').catch(() => null)
    const next = (): void => {
      const wish = mine === turn ? wishes.shift() : undefined
      if (!wish) return
      if (!chunk) {
        wish.failed()
        return
      }
      chunk.judgementsOf(wish.of.design, wish.of.catalog, wish.deep, wish.got)
      if (mine === turn && wishes.length > 0) whenIdle(next)
    }
    whenIdle(next)
  }
  return {
    ask(wish) {
      wishes = [...wishes.filter(({ deep }) => deep !== wish.deep), wish].sort((a, b) => +a.deep - +b.deep)
      void go(++turn)
    },
    drop() {
      turn++
      wishes = []
    },
    close() {
      turn++
      wishes = []
    },
  }
}
