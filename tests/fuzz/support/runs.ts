/**
 * How many cases each kind gets: a thousand in all at every run of the tests, `npm run test:deep` twenty thousand. `LEADLINE_RUNS` and
 * `LEADLINE_SEED` set others; fast-check prints the seed, the path and the case that fails.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 70_771)
const RUNS = runs(1000)

/** Of a thousand. Docks that are worked out whole take the time; what is only read takes next to none. */
const SHARES = {
  'designs at the edges of the schema': 90,
  'catalogs at the edges of the schema': 130,
  'both at once': 80,
  'objects of a host': 170,
  'files that were damaged': 160,
  'quotes asked for': 80,
  'links that were damaged': 90,
  patches: 80,
  'pasted tables': 60,
  'typed figures': 60,
} as const
export type Kind = keyof typeof SHARES

const casesOf = (kind: Kind): number => Math.max(1, Math.round((RUNS * SHARES[kind]) / 1000))
export const SUM = Object.values(SHARES).reduce((sum, share) => sum + share, 0)

/** What a kind came across: a fuzz of which nearly everything is refused, or nothing, shows little. */
export interface Tally {
  taken: number
  refused: number
}

/** A test of one kind: `laws` gives the sentences that a case breaks. */
export function fuzz<T>(
  kind: Kind,
  cases: fc.Arbitrary<T>,
  laws: (one: T, tally: Tally) => readonly string[],
  least: { readonly taken?: number; readonly refused?: number } = {},
): void {
  const numRuns = casesOf(kind)
  const seed = SEED + Object.keys(SHARES).indexOf(kind)
  it(`${kind} (seed ${seed}, ${numRuns} cases)`, () => {
    const tally: Tally = { taken: 0, refused: 0 }
    fc.assert(
      fc.property(cases, (one) => {
        expect(laws(one, tally)).toEqual([])
      }),
      // Cases are small changes to sound ones, told as such: to look for smaller ones would take minutes.
      { seed, numRuns, endOnFailure: true },
    )
    // A handful of cases tells nothing of shares.
    if (numRuns < 40) return
    const of = (n: number): number => n / (tally.taken + tally.refused)
    expect(of(tally.taken), JSON.stringify(tally)).toBeGreaterThanOrEqual(least.taken ?? 0)
    expect(of(tally.refused), JSON.stringify(tally)).toBeGreaterThanOrEqual(least.refused ?? 0)
  })
}
