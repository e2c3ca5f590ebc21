import type { Assessment } from '../../src/assessment/assess.ts'
import type { Answer, Question } from '../../src/assessment/assessment-worker.ts'

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
    readonly #listeners = new Map<string, (event: unknown) => void>()
    readonly #own = {
      questions: [] as Question[],
      ended: false,
      answer: ({ number, design, step }: Question, whole = step === 'deep'): void => {
        const deep = step === 'deep'
        const structure = { live: design.dock.load, deep } as unknown as Assessment['structure']
        const judgement = { structure, findings: [], fit: null, whole }
        this.#listeners.get('message')?.({ data: { number, judgement } satisfies Answer })
      },
      say: (answer: Answer): void => this.#listeners.get('message')?.({ data: answer }),
      fail: (): void => this.#listeners.get('error')?.({ preventDefault() {} }),
    }
    constructor() {
      made.push(this.#own)
    }
    addEventListener(type: string, listener: (event: unknown) => void): void {
      this.#listeners.set(type, listener)
    }
    postMessage(question: Question): void {
      this.#own.questions.push(structuredClone(question))
    }
    terminate(): void {
      this.#own.ended = true
      this.#listeners.clear()
    }
  }
  return { made, spawn: () => new Puppet() as unknown as Worker }
}
