/** Random docks whose structure can be judged, for what holds for all of them. */
import type fc from 'fast-check'
import { type Design, deriveKit } from '../../../rules/index.ts'
import type { Kit } from '../../../rules/kit.ts'
import { whyNotJudged } from '../../../rules/structure/dock/not-judged.ts'
import { UnstableFrameError } from '../../../rules/structure/index.ts'
import { anyCase, type Case, straightCase } from '../../support/arbitraries.ts'

export interface JudgedCase extends Case {
  readonly kit: Kit
}

const judged = (cases: fc.Arbitrary<Case>): fc.Arbitrary<JudgedCase> =>
  cases
    .map((one) =>
      Object.assign(Object.create(one) as Case, { ...one, kit: deriveKit(one.design, one.catalog) }),
    )
    .filter(({ kit }) => whyNotJudged(kit) === null)

/** Any shape, and only straight runs. */
export const judgedCase = judged(anyCase)
export const judgedStraight = judged(straightCase)

/** The same with at most so many legs. */
export const smallCase = (legs: number): fc.Arbitrary<JudgedCase> =>
  judgedCase.filter(({ kit }) => kit.legs.length <= legs)

/** A dock on a level bed without a ramp or posts: nothing but its own weight keeps it from tipping. */
export const onLevelBed = ({ design, catalog }: Case): Kit =>
  deriveKit(
    {
      ...design,
      site: {
        ...design.site,
        shore: { kind: 'bank', height: 0.3 },
        crossSlope: 0,
        soundings: [0, 60].map((distance) => ({ distance, offset: 0, depth: 0.8 })),
      },
      dock: { ...withDock(design, { deckHeight: 0.5, start: 3, ramp: false, extras: {} }).dock, placed: [] },
    },
    catalog,
  )

/** What `work` gives, or undefined where the dock can move without resistance: that is a finding, not a figure. */
export function unlessLoose<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof UnstableFrameError) return undefined
    throw error
  }
}

export const withDock = (design: Design, dock: Partial<Design['dock']>): Design => ({
  ...design,
  dock: { ...design.dock, ...dock },
})
