/** Where decks and results of an earlier run lie, and what is in them. */
import { fileURLToPath } from 'node:url'
import type { Step } from './write-inp.ts'

export interface StoredResult {
  /** For each joint x, y, z, m. */
  readonly displacements: readonly (readonly number[])[]
  readonly factors: { readonly [S in Exclude<Step, 'static'>]?: number }
}

export interface StoredResults {
  readonly program: string
  readonly frames: { readonly [name: string]: StoredResult }
}

export const DECKS = fileURLToPath(new URL('decks', import.meta.url))
export const RESULTS = fileURLToPath(new URL('results.json', import.meta.url))
