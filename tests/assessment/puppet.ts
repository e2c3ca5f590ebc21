import type { Assessment } from '../../src/assessment/assess.ts'
import type { Answer, Question } from '../../src/assessment/assessment-worker.ts'
import { makeWorkerPool } from '../../src/assessment/worker-pool.ts'

/** A worker that answers when it is told to. */
export function puppet() {
  const made: {
    questions: Question[]
    ended: boolean
    answer(question: Question, whole?: boolean): void
    say(answer: Answer): void
    fail(): void
  }[] = []
  class Puppet {
    onmessage: ((event: unknown) => void) | null = null
    onerror: ((event: unknown) => void) | null = null
    readonly #own = {
      questions: [] as Question[],
      ended: false,
      answer: ({ number, design, step }: Question, whole = step === 'deep'): void => {
        const deep = step === 'deep'
        const structure = { live: design.dock.load, deep } as unknown as Assessment['structure']
        const judgement = { structure, findings: [], fit: null, whole }
        this.onmessage?.({ data: { number, judgement } satisfies Answer })
      },
      say: (answer: Answer): void => this.onmessage?.({ data: answer }),
      fail: (): void => this.onerror?.({ preventDefault() {} }),
    }
    constructor() {
      made.push(this.#own)
    }
    postMessage(question: Question): void {
      this.#own.questions.push(structuredClone(question))
    }
    terminate(): void {
      this.#own.ended = true
      this.onmessage = this.onerror = null
    }
  }
  return { made, pool: makeWorkerPool(() => new Puppet() as unknown as Worker) }
}
