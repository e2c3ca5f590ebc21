/**
 * Whether sections rest without a hook pulling, held against the solved frame: with locks that hold next to nothing a dock that rests stands
 * by its own weight, hooks and feet only bearing; one that does not, does not.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog, demoDesign, deriveKit, shopOf } from '../../../rules/index.ts'
import { withPlan } from '../../../rules/plan/as-plan.ts'
import type { PlanItem } from '../../../rules/plan/schema.ts'
import { attempt, lie } from '../../../rules/plan/troubles.ts'
import { caseId } from '../../../rules/structure/dock/load-cases.ts'
import { structureOf } from '../../../rules/structure/dock/structure.ts'
import { UnstableFrameError } from '../../../rules/structure/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { beginning, choices, operationOf } from '../../support/plan-walk.ts'
import { runs } from '../../support/runs.ts'

/** N. */
const NEXT_TO_NOTHING = 1
/** What the contacts' scheme counts as none, N (`lift-off.ts`). */
const NO_PULL = 0.5
const unlocked = (catalog: Catalog): Catalog => ({
  ...catalog,
  hooks: { ...catalog.hooks, lock: NEXT_TO_NOTHING },
})

/** Over a level bed, so that how it lies alone decides. */
function solved(plan: readonly PlanItem[], frame: string, catalog: Catalog) {
  const design = parsedDesign({
    ...withPlan(demoDesign, plan, frame),
    site: {
      ...demoDesign.site,
      soundings: [
        { distance: 0, depth: 0 },
        { distance: 3, depth: 0.9 },
        { distance: 90, depth: 0.9 },
      ],
    },
  })
  const dock = { ...design.dock, start: 30 }
  return structureOf(deriveKit({ ...design, dock }, unlocked(catalog)), null, { deep: false })
}

describe('a dock without trouble', () => {
  it('stands by its own weight with hooks that only bear', () => {
    const frame = demoCatalog.frames[0]!.code
    const shop = shopOf(demoCatalog)
    let sections = 0
    fc.assert(
      fc.property(choices(24), (list) => {
        let lying = beginning(demoCatalog, frame)
        for (const choice of list) {
          const operation = operationOf(lying, choice, demoCatalog)
          const tried = operation && attempt(lying, operation, frame, shop)
          if (tried?.ok && tried.brought.length === 0) lying = tried.after
        }
        const { falls, hooks } = solved(lying.plan, frame, demoCatalog)
        expect(falls).not.toContain(caseId('dead'))
        for (const { up } of hooks) expect(up).toBeLessThanOrEqual(NEXT_TO_NOTHING + NO_PULL + 1e-6)
        sections += lying.plan.length
      }),
      { seed: 6, numRuns: runs(10) },
    )
    expect(sections).toBeGreaterThan(runs(50))
  })
})

describe('a section on hooks alone', () => {
  const side: PlanItem[] = [
    { id: 's1', on: null, along: 0 },
    { id: 's2', on: 's1', edge: 'end', with: 'start', along: 0 },
    { id: 'h1', on: 's1', edge: 'right', with: 'left', along: 0 },
  ]
  // Corners within 5 ft of a hook have no leg: side to side that is all four of a 4 ft section.
  const far: Catalog = {
    ...demoCatalog,
    rules: { ...demoCatalog.rules, overhang: { ...demoCatalog.rules.overhang, value: 1.524 } },
  }
  it('is told to pull on them, and the frame has nothing that holds it', () => {
    expect(lie(side, '4x8', shopOf(far)).troubles).toEqual([{ kind: 'hooks-pull', sections: ['h1'] }])
    expect(() => solved(side, '4x8', far)).toThrow(UnstableFrameError)
  })
  it('has legs where the shop is stricter: then neither', () => {
    expect(lie(side, '4x8', shopOf(demoCatalog)).troubles).toEqual([])
    expect(solved(side, '4x8', demoCatalog).falls).not.toContain(caseId('dead'))
  })
})
