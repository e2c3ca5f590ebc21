/**
 * One worker and its questions, one at a time. Latest wins: of several that wait only the last is asked. A worker that does not answer is
 * ended and the question asked of a new one, once; where that is silent too, the wish has failed.
 */
import type { Dock } from '../../rules/index.ts'
import { placingTime } from '../state/placing-time.ts'
import type { Step } from './assess.ts'
import type { Answer } from './assessment-worker.ts'
import type { Line, Wish } from './question.ts'
import { gather } from './slices.ts'
import type { WorkerPool } from './worker-pool.ts'
import { makeWorkerPort } from './worker-port.ts'

/**
 * How long a worker may be silent, ms, by what is asked: ten times and more of what the slowest docks of ordinary size took here (the first
 * question waits for the worker's code too), and fifty times what placing takes for large ones.
 */
const PATIENCE: Readonly<Record<Step, number>> = {
  place: 10_000,
  quick: 15_000,
  deep: 60_000,
  found: 60_000,
  sway: 15_000,
}
const TIMES = 50
/** Nobody waits for the end of these once they are dropped, ... */
const LONG: ReadonlySet<Step> = new Set(['deep', 'found'])
/** but for so long, ms: a dock of ordinary size is through by then, and a worker that has judged one judges the next in half the time of a new one. */
const GRACE = 300
export const patienceFor = ({ of, step }: Pick<Wish, 'of' | 'step'>): number =>
  PATIENCE[step] + TIMES * placingTime(of.design)

/** In the worker, `wish` null where its answer is no longer wanted. */
interface Asked {
  readonly number: number
  readonly question: Wish
  readonly again: boolean
  wish: Wish | null
}

/** @param none told when there is no worker to be had, with what was not answered */
export function workerLine(pool: WorkerPool, none: (unanswered: Wish | null) => void): Line {
  let asked: Asked | null = null
  let waiting: Wish | null = null
  let silence: ReturnType<typeof setTimeout> | undefined
  let slices = gather()
  let grace: ReturnType<typeof setTimeout> | undefined
  let closed = false

  const answered = (answer: Answer): void => {
    if (answer.number !== asked?.number) return
    const { wish, question } = asked
    if (isFollowed(answer, question)) {
      listen(question)
      if ('slice' in answer) slices.add(answer.slice)
      else if (wish) tell(wish, answer)
      return
    }
    rest()
    asked = null
    if (closed) {
      port.giveBack()
      return
    }
    const next = waiting
    waiting = null
    const whole = slices.dock()
    // The next one is under way before the page draws what this one found.
    if (next) send(next)
    if (wish) tell(wish, answer, whole)
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
  const broken = (): void => {
    const unanswered = waiting ?? asked?.wish ?? null
    waiting = null
    end()
    none(unanswered)
  }
  const port = makeWorkerPort(pool, answered, broken)
  const rest = (): void => {
    clearTimeout(silence)
    clearTimeout(grace)
    grace = undefined
  }
  const end = (): void => {
    rest()
    port.end()
    asked = null
  }
  /** What is in the worker is no longer wanted; it is ended where it goes on too long. */
  const letFinish = (): void => {
    asked!.wish = null
    grace ??= setTimeout(() => {
      end()
      const next = waiting
      waiting = null
      if (next) send(next)
    }, GRACE)
  }
  const send = (wish: Wish, again = false): void => {
    const number = port.send(wish)
    if (number === null) {
      none(wish)
      return
    }
    asked = { number, question: wish, again, wish }
    slices = gather()
    listen(wish)
  }
  return {
    ask(wish) {
      if (asked) waiting = wish
      else send(wish)
    },
    drop() {
      waiting = null
      if (asked && LONG.has(asked.question.step)) letFinish()
      else if (asked) asked.wish = null
    },
    close() {
      waiting = null
      closed = true
      if (asked) letFinish()
      else port.giveBack()
    },
  }
}

/** Whether more is to come of the same question. */
const isFollowed = (answer: Answer, { step }: Wish): boolean =>
  'slice' in answer || (step === 'deep' && 'judgement' in answer && !answer.judgement.whole)

function tell(wish: Wish, answer: Answer, placed?: Dock): void {
  if ('judgement' in answer) wish.got?.(answer.judgement)
  else if ('sway' in answer) wish.swayed?.(answer.sway)
  else if ('took' in answer && placed) wish.placed?.(placed, answer.took)
  else wish.failed()
}
