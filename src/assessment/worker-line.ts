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
  let slices = gather()
  let closed = false

  const takeWaiting = (): Wish | null => {
    const next = waiting
    waiting = null
    return next
  }
  const answered = (answer: Answer): void => {
    if (answer.number !== asked?.number) return
    const { wish, question } = asked
    if (isFollowed(answer, question)) {
      watch.listen(question)
      if ('slice' in answer) slices.add(answer.slice)
      else if (wish) tell(wish, answer)
      return
    }
    watch.rest()
    asked = null
    const next = takeWaiting()
    const whole = slices.dock()
    // The next one is under way before the page draws what this one found.
    if (next) send(next)
    else if (closed) port.giveBack()
    if (wish) tell(wish, answer, whole)
  }
  /** What it was asked, where that is still wanted, or what waits is asked of a new one. */
  const silent = (): void => {
    const { wish = null, again = false } = asked ?? {}
    const late = takeWaiting()
    const next = late ?? wish
    end()
    if (!next) return
    if (late === null && again) next.failed()
    else send(next, next === wish)
  }
  const broken = (): void => {
    const unanswered = takeWaiting() ?? asked?.wish ?? null
    end()
    none(unanswered)
  }
  const watch = watchOver(silent)
  const port = makeWorkerPort(pool, answered, broken)
  const end = (): void => {
    watch.rest()
    port.end()
    asked = null
  }
  const send = (wish: Wish, again = false): void => {
    const number = port.send(wish)
    if (number !== null) {
      asked = { number, question: wish, again, wish }
      slices = gather()
      watch.listen(wish)
    } else none(wish)
  }
  /** What is in the worker is no longer wanted. */
  const letGo = (soon: boolean): void => {
    waiting = null
    if (!asked) return
    asked.wish = null
    if (soon) watch.hurry()
  }
  return {
    ask(wish) {
      if (asked) waiting = wish
      else send(wish)
    },
    drop: () => letGo(asked !== null && LONG.has(asked.question.step)),
    close() {
      closed = true
      letGo(true)
      if (!asked) port.giveBack()
    },
  }
}

interface Watch {
  /** For the next word of an answer; it is silent where none comes. */
  listen(question: Wish): void
  /** Nobody waits for the answer any more: it takes too long where it is not there in a moment. */
  hurry(): void
  rest(): void
}

function watchOver(silent: () => void): Watch {
  const silence = alarm()
  const grace = alarm()
  return {
    listen: (question) => silence.set(silent, patienceFor(question)),
    hurry() {
      if (!grace.isSet()) grace.set(silent, GRACE)
    },
    rest() {
      silence.stop()
      grace.stop()
    },
  }
}

interface Alarm {
  /** In the place of an earlier one. */
  set(act: () => void, ms: number): void
  stop(): void
  isSet(): boolean
}

function alarm(): Alarm {
  let at: ReturnType<typeof setTimeout> | null = null
  const stop = (): void => {
    if (at !== null) clearTimeout(at)
    at = null
  }
  return {
    set(act, ms) {
      stop()
      at = setTimeout(act, ms)
    },
    stop,
    isSet: () => at !== null,
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
