/**
 * Asks for what is not done on the page, beside it, in two workers. One places docks that are too large for the page and gives the quick
 * answer to every change; what takes longer has one of its own, which is ended where another design comes meanwhile: nobody waits for an
 * answer that nobody needs. Where a page allows no workers (another origin, its policy) the same is done on the page's own thread when it
 * is idle.
 *
 * Latest wins: of several questions of one kind that wait only the last is asked, and answers to others are dropped.
 *
 * A worker that does not answer is ended and the question asked of a new one, once; where that is silent too, the wish has failed.
 */
import type { Dock } from '../../rules/index.ts'
import { whenIdle } from '../platform/idle.ts'
import { placingTime } from '../state/placing-time.ts'
import type { Designed } from '../state/store.ts'
import type { Assessment, Step } from './assess.ts'
import { gather } from './slices.ts'
import type { Answer, Question } from './structure-worker.ts'

export interface Wish {
  readonly of: Designed
  readonly step: Step
  /** A deep question is answered twice, the second time `whole`. */
  readonly got: (judgement: Assessment) => void
  /** To be placed: how it is, and how long that took, ms. */
  readonly placed?: (dock: Dock, took: number) => void
  /** It cannot be worked out here: its code did not come, say, or it gives no answer. */
  readonly failed: () => void
}

export interface StructureClient {
  ask(wish: Wish): void
  /** Nothing that was asked is wanted any more. */
  drop(): void
  close(): void
}

/**
 * How long a worker may be silent, ms, by what is asked: ten times and more of what the slowest docks of ordinary size took here (the first
 * question waits for the worker's code too), and fifty times what placing takes for large ones.
 */
const PATIENCE: Readonly<Record<Step, number>> = { place: 10_000, quick: 15_000, deep: 60_000 }
const TIMES = 50
export const patienceFor = ({ of, step }: Pick<Wish, 'of' | 'step'>): number =>
  PATIENCE[step] + TIMES * placingTime(of.design)

/** The hand rests when it has not moved for so long, ms: only then a large dock is placed on the page's own thread. */
const REST = 160

interface WorkerLine {
  ask(wish: Wish): void
  drop(): void
  close(): void
}

export type Spawn = () => Worker

const spawnWorker: Spawn = () =>
  new Worker(new URL('./structure-worker.ts', import.meta.url), { type: 'module', name: 'leadline' })

export function makeStructureClient(spawn: Spawn = spawnWorker): StructureClient {
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
      else if (wish.step === 'deep') deep.ask(wish)
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
function workerLine(spawn: Spawn, none: (unanswered: Wish | null) => void): WorkerLine {
  let worker: Worker | null = null
  let catalog: { readonly of: Designed['catalog']; readonly number: number } | null = null
  let number = 0
  /** In the worker, `wish` null where its answer is no longer wanted. */
  let asked: {
    readonly number: number
    readonly question: Wish
    readonly again: boolean
    wish: Wish | null
  } | null = null
  let waiting: Wish | null = null
  let silence: ReturnType<typeof setTimeout> | undefined
  let slices = gather()

  const end = (): void => {
    clearTimeout(silence)
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
    const { wish, question } = asked
    if ('slice' in data || (question.step === 'deep' && 'judgement' in data && !data.judgement.whole)) {
      listen(question)
      if ('slice' in data) slices.add(data.slice)
      else wish?.got(data.judgement)
      return
    }
    clearTimeout(silence)
    asked = null
    const next = waiting
    waiting = null
    const whole = slices.dock()
    // The next one is under way before the page draws what this one found.
    if (next) send(next)
    if (!wish) return
    if ('judgement' in data) wish.got(data.judgement)
    else if ('took' in data) wish.placed?.(whole, data.took)
    else wish.failed()
  }
  const listen = (question: Wish): void => {
    clearTimeout(silence)
    silence = setTimeout(silent, patienceFor(question))
  }
  const silent = (): void => {
    const { wish = null, again = false } = asked ?? {}
    const next = waiting ?? wish
    const second = waiting === null && again
    waiting = null
    end()
    if (!next) return
    if (second) next.failed()
    else send(next, next === wish)
  }
  const broken = (event: Event): void => {
    event.preventDefault()
    const unanswered = waiting ?? asked?.wish ?? null
    waiting = null
    end()
    none(unanswered)
  }
  const send = (wish: Wish, again = false): void => {
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
    asked = { number, question: wish, again, wish }
    slices = gather()
    listen(wish)
    const question: Question = {
      number,
      design: wish.of.design,
      catalog: fresh ? wish.of.catalog : null,
      catalogNumber: catalog!.number,
      step: wish.step,
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
      if (asked?.question.step === 'deep') end()
      else if (asked) asked.wish = null
    },
    close() {
      waiting = null
      end()
    },
  }
}

/**
 * The page's own thread, between what it has to do. A quick answer goes first; the chunk of what finds it comes with the first one. What is
 * to be placed waits until the hand rests: that it is being placed is on the screen by then.
 */
function pageLine(): WorkerLine {
  let turn = 0
  let wishes: Wish[] = []
  const go = async (mine: number): Promise<void> => {
    const chunk = await import('./assess.ts').catch(() => null)
    if (wishes[0]?.step === 'place') await new Promise((done) => setTimeout(done, REST))
    const next = (): void => {
      const wish = mine === turn ? wishes.shift() : undefined
      if (!wish) return
      if (!chunk) {
        wish.failed()
        return
      }
      const { design, catalog } = wish.of
      if (wish.step === 'place') {
        const { dock, took } = chunk.placedHere(design, catalog)
        wish.placed?.(dock, took)
      } else chunk.assess(design, catalog, wish.step === 'deep', wish.got)
      if (mine === turn && wishes.length > 0) whenIdle(next)
    }
    whenIdle(next)
  }
  return {
    ask(wish) {
      wishes = [...wishes.filter(({ step }) => step !== wish.step), wish].sort(
        (a, b) => +(a.step === 'deep') - +(b.step === 'deep'),
      )
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
