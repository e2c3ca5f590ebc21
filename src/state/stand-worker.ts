/** The worker that works out whether docks stand: one question at a time, each answered with its number. */
import { type Catalog, type Design, deriveKit } from '../../rules/index.ts'
import { wavesOf } from '../../rules/site/waves/waves.ts'
import { type Standing, stand } from '../../rules/structure/stand.ts'

/** A catalog comes with the first question about it and is known by its number from then on. */
export interface Question {
  readonly number: number
  readonly design: Design
  readonly catalog: Catalog | null
  readonly catalogNumber: number
  readonly deep: boolean
}

export type Answer =
  | { readonly number: number; readonly standing: Standing }
  | { readonly number: number; readonly failed: string }

let known: { readonly number: number; readonly catalog: Catalog } | null = null

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  const { number, design, catalog, catalogNumber, deep } = data
  if (catalog) known = { number: catalogNumber, catalog }
  let answer: Answer
  try {
    if (known?.number !== catalogNumber) throw new Error('stand-worker: a catalog that was never sent')
    const kit = deriveKit(design, known.catalog)
    answer = { number, standing: stand(kit, wavesOf(kit), { deep }) }
  } catch (error) {
    answer = { number, failed: error instanceof Error ? error.message : String(error) }
  }
  postMessage(answer)
})
