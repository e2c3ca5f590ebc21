/** The worker that places docks too large for the page, and works out what is found of docks after the frame of an edit: one question at a time, answered with its number. */
import type { Catalog, Design } from '../../rules/index.ts'
import type { SwayShape, Way } from '../../rules/structure/dock/sway-shape.ts'
import { type Assessment, assess, placedHere, type Step, swayShapes } from './assess.ts'
import { type Slice, slicesOf } from './slices.ts'

/** A catalog comes with the first question about it and is known by its number from then on. */
export interface Question {
  readonly number: number
  readonly design: Design
  readonly catalog: Catalog | null
  readonly catalogNumber: number
  readonly step: Step
  /** Which way it is pushed, where it is asked how it sways. */
  readonly way: Way
}

/** A 'deep' question gets two replies: a partial assessment, then the whole one. A 'place' question gets the dock in slices, then the time it took, ms. */
export type Answer =
  | { readonly number: number; readonly judgement: Assessment }
  | { readonly number: number; readonly slice: Slice }
  | { readonly number: number; readonly took: number }
  | { readonly number: number; readonly sway: readonly SwayShape[] }
  | { readonly number: number; readonly failed: string }

addEventListener('message', listener())

function listener(): (event: MessageEvent<Question>) => void {
  let known: { readonly number: number; readonly catalog: Catalog } | null = null
  const answer = (given: Answer): void => postMessage(given)
  return ({ data: { number, design, catalog, catalogNumber, step, way } }) => {
    if (catalog) known = { number: catalogNumber, catalog }
    try {
      if (known?.number !== catalogNumber) throw new Error('assessment-worker: a catalog that was never sent')
      if (step === 'place') {
        const { dock, took } = placedHere(design, known.catalog)
        for (const slice of slicesOf(dock)) answer({ number, slice })
        answer({ number, took })
      } else if (step === 'sway') answer({ number, sway: swayShapes(design, known.catalog, way) })
      else assess(design, known.catalog, step, (judgement) => answer({ number, judgement }))
    } catch (error) {
      answer({ number, failed: error instanceof Error ? error.message : String(error) })
    }
  }
}
