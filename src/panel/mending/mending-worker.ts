/** Works out beside the page what the remedies do: their prices first, then whether they do it together. One question in its life. */
import type { Catalog, Design, Finding } from '../../../rules/index.ts'
import { costsOf, type Mending, mendAll } from './mending.ts'

export interface MendingQuestion {
  readonly design: Design
  readonly catalog: Catalog
  readonly findings: readonly Finding[]
}

addEventListener('message', ({ data: { design, catalog, findings } }: MessageEvent<MendingQuestion>) => {
  const tell = (mending: Mending): void => postMessage(mending)
  const costs = costsOf(design, catalog, findings)
  tell({ costs, all: null })
  const all = mendAll(design, catalog, findings)
  if (all) tell({ costs, all })
  close()
})
