/** The worker that works out what is found of docks after the frame of an edit: one question at a time, answered with its number. */
import type { Catalog, Design } from '../../rules/index.ts'
import { type Judgement, judgementsOf } from './judgement.ts'

/** A catalog comes with the first question about it and is known by its number from then on. */
export interface Question {
  readonly number: number
  readonly design: Design
  readonly catalog: Catalog | null
  readonly catalogNumber: number
  readonly deep: boolean
}

/** A deep question has two answers, the second of them whole. */
export type Answer =
  | { readonly number: number; readonly judgement: Judgement }
  | { readonly number: number; readonly failed: string }

let known: { readonly number: number; readonly catalog: Catalog } | null = null

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  const { number, design, catalog, catalogNumber, deep } = data
  if (catalog) known = { number: catalogNumber, catalog }
  const answer = (given: Answer): void => postMessage(given)
  try {
    if (known?.number !== catalogNumber) throw new Error('stand-worker: a catalog that was never sent')
    judgementsOf(design, known.catalog, deep, (judgement) => answer({ number, judgement }))
  } catch (error) {
    answer({ number, failed: error instanceof Error ? error.message : String(error) })
  }
})
