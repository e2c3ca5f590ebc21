/** What a hand can do to a plan: every step comes back by its inverse, nothing is put right unasked, nothing wrong goes unsaid. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  shopOf,
} from '../../../rules/index.ts'
import { asPlan, withPlan } from '../../../rules/plan/as-plan.ts'
import { type Operation, perform } from '../../../rules/plan/operations.ts'
import type { PlanItem } from '../../../rules/plan/schema.ts'
import { attempt, lie, spokenOf, type Trouble } from '../../../rules/plan/troubles.ts'
import { anyCase, parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { catalogs } from '../../support/catalogs.ts'
import { cornerAt } from '../../support/laws/plan.ts'
import { beginning, choices, operationOf } from '../../support/plan-walk.ts'
import { runs } from '../../support/runs.ts'
import { validate } from '../../support/validate.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 20_270)
/** Walks, and steps of each. */
const WALKS = runs(60)
const STEPS = 40

const designWith = (plan: readonly PlanItem[], frame: string): Design =>
  parsedDesign({ ...withPlan(demoDesign, plan, frame) })

/** What the engine stops at that has to do with how sections lie. */
const stopsOf = (dock: Dock): string[] =>
  dock.findings
    .filter(({ code }) => /^(sections-overlap|section-unreachable|joint-short|hinge-short)$/.test(code))
    .map(({ code, parts }) => `${code} ${[...parts].sort().join(' ')}`)
    .sort()
const CODES = { overlap: 'sections-overlap', unreachable: 'section-unreachable' } as Record<string, string>
const saidOf = (troubles: readonly Trouble[]): string[] =>
  troubles
    .filter(({ kind }) => kind !== 'hooks-pull' && kind !== 'unknown-frame')
    .map(({ kind, sections }) => `${CODES[kind] ?? kind} ${[...sections].sort().join(' ')}`)
    .sort()

/** Of what a section covers, by the triangles from its first corner. */
function middleOf(section: Dock['sections'][number]): readonly [x: number, y: number] {
  const [a, ...rest] = ['start.left', 'end.left', 'end.right', 'start.right'].map((corner) =>
    cornerAt(section, corner),
  )
  let [area, mx, my] = [0, 0, 0]
  for (let i = 1; i < rest.length; i++) {
    const [p, q] = [rest[i - 1]!, rest[i]!]
    const own = (p[0] - a![0]) * (q[1] - a![1]) - (p[1] - a![1]) * (q[0] - a![0])
    area += own
    mx += (own * (a![0] + p[0] + q[0])) / 3
    my += (own * (a![1] + p[1] + q[1])) / 3
  }
  return [mx / area, my / area]
}

/** What each section weighs lies within what bears it: legs and hook brackets, by a hull of its own. */
function unborne(dock: Dock): string[] {
  return dock.sections
    .filter(({ role }) => role !== 'ramp')
    .filter((section) => {
      const [cx, cy] = middleOf(section)
      const held = [
        ...dock.legs.filter((leg) => leg.section === section.id).map(({ x, y }) => [x - cx, y - cy]),
        ...dock.placements
          .filter(({ kind, of }) => kind === 'hook-bracket' && of === `${section.on}~${section.id}`)
          .map(({ at }) => [at[0] - cx, at[1] - cy]),
      ] as [number, number][]
      // Some line through the middle has all of them on one side.
      return Array.from({ length: 360 }, (_, i) => (i * Math.PI) / 180).some((a) =>
        held.every(([x, y]) => x * Math.cos(a) + y * Math.sin(a) > 1e-6),
      )
    })
    .map(({ id }) => id)
}

interface Walked {
  steps: number
  refused: number
  brought: number
  most: number
  kinds: Map<string, number>
}

/** Walks, and keeps a step where it brings no trouble, or always. */
function walk(
  keepAll: boolean,
  each: (plan: readonly PlanItem[], frame: string, catalog: Catalog) => void,
): Walked {
  const walked: Walked = { steps: 0, refused: 0, brought: 0, most: 0, kinds: new Map() }
  fc.assert(
    fc.property(choices(STEPS), fc.constantFrom(...catalogs), (list, catalog) => {
      const frame = catalog.frames[0]!.code
      const shop = shopOf(catalog)
      let lying = beginning(catalog, frame)
      for (const choice of list) {
        const operation = operationOf(lying, choice, catalog)
        if (!operation) continue
        const before = JSON.stringify(lying.plan)
        const tried = attempt(lying, operation, frame, shop)
        expect(JSON.stringify(lying.plan), 'what it was done to').toBe(before)
        walked.kinds.set(operation.kind, (walked.kinds.get(operation.kind) ?? 0) + 1)
        walked.steps++
        if (!tried.ok) {
          walked.refused++
          continue
        }
        const back = perform(tried.after.plan, tried.inverse)
        if (!back.ok) throw new Error(`no way back from ${JSON.stringify(operation)}: ${back.why}`)
        expect(back.plan).toEqual(lying.plan)
        expect(perform(back.plan, back.inverse)).toMatchObject({ ok: true, plan: tried.after.plan })
        if (tried.brought.length > 0) walked.brought++
        if (tried.brought.length > 0 && !keepAll) continue
        lying = tried.after
        walked.most = Math.max(walked.most, lying.plan.length)
      }
      each(lying.plan, frame, catalog)
    }),
    { seed: SEED, numRuns: WALKS },
  )
  return walked
}

describe(`plans by hand (seed ${SEED}, ${WALKS} walks of ${STEPS})`, () => {
  it('that keep what brings no trouble have none: all reached, none overlapping, all borne, every law kept', () => {
    const walked = walk(false, (plan, frame, catalog) => {
      const design = designWith(plan, frame)
      const dock = deriveAtOnce(design, catalog)
      expect(dock.sections.map(({ id }) => id)).toEqual(plan.map(({ id }) => id))
      expect(stopsOf(dock)).toEqual([])
      expect(unborne(dock)).toEqual([])
      expect(validate(dock, design, catalog)).toEqual([])
    })
    expect(walked.steps).toBeGreaterThan(0.6 * WALKS * STEPS)
    expect(walked.brought).toBeGreaterThan(WALKS)
    expect(walked.most).toBeGreaterThan(12)
    expect([...walked.kinds.keys()].sort()).toEqual(['add', 'frame', 'hang', 'ramp', 'remove'])
  })

  it('that keep everything say all that the engine stops at, and nothing else', () => {
    const walked = walk(true, (plan, frame, catalog) => {
      const design = designWith(plan, frame)
      const dock = deriveAtOnce(design, catalog)
      expect(saidOf(lie(design.dock.plan!, frame, shopOf(catalog)).troubles)).toEqual(stopsOf(dock))
      expect(validate(dock, design, catalog)).toEqual([])
    })
    expect(walked.refused).toBeGreaterThan(0)
    expect(walked.brought).toBeGreaterThan(WALKS)
  })
})

describe('a dock of a few numbers, written out', () => {
  it('is the same dock, part by part and id by id', () => {
    let written = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        if (design.dock.plan) return
        const plan = asPlan(design, shopOf(catalog))
        if (!plan) return
        const own = parsedDesign(JSON.parse(JSON.stringify(withPlan(design, plan))))
        expect(own.dock.plan!.map(({ id }) => id)).toEqual(
          deriveAtOnce(design, catalog).sections.map(({ id }) => id),
        )
        const bare = ({ fingerprint: _, ...dock }: Dock) => dock
        expect(bare(deriveAtOnce(own, catalog))).toEqual(bare(deriveAtOnce(design, catalog)))
        if (plan.some(({ id }) => id.startsWith('h'))) written++
      }),
      { seed: SEED, numRuns: runs(120) },
    )
    expect(written).toBeGreaterThan(runs(20))
  })

  it('with a frame that no shop has is not: nobody knows where its end is', () => {
    const dock = { ...demoDesign.dock, frame: 'no-such-frame' }
    expect(asPlan({ ...demoDesign, dock }, shopOf(demoCatalog))).toBeNull()
  })
})

describe('what cannot be done is refused with why', () => {
  const plan: PlanItem[] = [
    { id: 's1', on: null, role: 'ramp', along: 0 },
    { id: 's2', on: 's1', edge: 'end', with: 'start', along: 0 },
    { id: 's3', on: 's2', edge: 'end', with: 'start', along: 0 },
    { id: 's4', on: 's3', edge: 'end', with: 'start', along: 0 },
  ]
  const to = { edge: 'left', with: 'start', along: 0 } as const
  const added = (id: string, on: string): Operation => ({
    kind: 'add',
    arm: [{ at: 4, item: { id, on, ...to } }],
  })
  it.each<[string, Operation, string]>([
    ['a section on the ramp', added('h1', 's1'), 'ramp-hosts-nothing'],
    ['a section on none', added('h1', 's9'), 'no-such-section'],
    ['a second section of a name', added('s3', 's4'), 'id-taken'],
    ['the first section hung elsewhere', { kind: 'hang', id: 's2', on: 's4', ...to }, 'begins-here'],
    ['the ramp hung elsewhere', { kind: 'hang', id: 's1', on: 's4', ...to }, 'begins-here'],
    ['an arm on itself', { kind: 'hang', id: 's3', on: 's4', ...to }, 'hangs-on-itself'],
    ['an arm on the ramp', { kind: 'hang', id: 's3', on: 's1', ...to }, 'ramp-hosts-nothing'],
    ['the first section taken away', { kind: 'remove', id: 's2' }, 'begins-here'],
    ['a frame for none', { kind: 'frame', id: 's9', frame: '4x8' }, 'no-such-section'],
  ])('%s', (_, operation, why) => {
    expect(perform(plan, operation)).toMatchObject({ ok: false, why })
  })

  it('taking away tells what goes with it', () => {
    const done = perform(plan, { kind: 'remove', id: 's3' })
    expect(done).toMatchObject({ ok: true, touched: ['s3', 's4'] })
  })
})

describe('trouble is told and left as it was asked for', () => {
  const shop = shopOf(demoCatalog)
  const L: PlanItem[] = [
    { id: 's1', on: null, along: 0 },
    { id: 's2', on: 's1', edge: 'end', with: 'start', along: 0 },
    { id: 'h1', on: 's2', edge: 'left', with: 'start', along: 1.2192 },
  ]
  const before = lie(L, '4x8', shop)
  it('hooks that find too little edge: 2 x 10 in and 4 in of brackets are 24 in', () => {
    expect(before.troubles).toEqual([])
    // 8 ft less 7 ft is 1 ft.
    const tried = attempt(
      before,
      { kind: 'hang', id: 'h1', on: 's2', edge: 'left', with: 'start', along: 2.1336 },
      '4x8',
      shop,
    )
    expect(tried).toMatchObject({
      ok: true,
      brought: [{ kind: 'joint-short', sections: ['s2', 'h1'], least: 0.6096 }],
    })
    if (tried.ok) {
      expect(tried.brought[0]!.shared).toBeCloseTo(0.3048, 9)
      expect(tried.after.plan[2]!.along).toBe(2.1336)
    }
  })

  it('sections that lie on each other', () => {
    const tried = attempt(
      before,
      {
        kind: 'add',
        arm: [{ at: 3, item: { id: 'h2', on: 's1', edge: 'left', with: 'right', along: 1.5 } }],
      },
      '4x8',
      shop,
    )
    expect(tried).toMatchObject({ ok: true, brought: [{ kind: 'overlap', sections: ['h1', 'h2'] }] })
  })

  it('hooks that would have to pull, where a shop lets corners hang over farther than a section is wide', () => {
    // Side to side its far corners are 4 ft 1 in from the hooks' line; within 5 ft of them they have no legs: all of it hangs on two hooks.
    const rules = { ...demoCatalog.rules, overhang: { ...demoCatalog.rules.overhang, value: 1.524 } }
    const far = shopOf({ ...demoCatalog, rules })
    const add: Operation = {
      kind: 'add',
      arm: [{ at: 3, item: { id: 'h2', on: 's1', edge: 'right', with: 'left', along: 0 } }],
    }
    const lying = lie(L, '4x8', far)
    const tried = attempt(lying, add, '4x8', far)
    expect(tried).toMatchObject({ ok: true, brought: [{ kind: 'hooks-pull', sections: ['h2'] }] })
    expect(attempt(before, add, '4x8', shop)).toMatchObject({ ok: true, brought: [] })
  })
})

it('a new section is never called what something else is said of', () => {
  const design = parsedDesign({
    ...demoDesign,
    dock: {
      ...demoDesign.dock,
      placed: [{ code: 'cleat', section: 'h1', edge: 'left', along: 1 }],
      overrides: { 'h2.end.left': { stock: 1.524 } },
      bracing: { none: ['s4.end', 'h3.end.left~h4.end.right'] },
    },
  })
  expect(new Set(spokenOf(design))).toEqual(new Set(['h1', 'h2', 's4', 'h3', 'h4']))
})

it('a joint names the section that carries first, though it stands later in the plan', () => {
  const plan: PlanItem[] = [
    { id: 's1', on: null, along: 0 },
    { id: 'h1', on: 's2', edge: 'left', with: 'start', along: 1.2192 },
    { id: 's2', on: 's1', edge: 'end', with: 'start', along: 0 },
  ]
  const design = designWith(plan, '4x8')
  const dock = deriveAtOnce(design, demoCatalog)
  expect(dock.joints.map(({ id, between }) => [id, between])).toEqual([
    ['s2~h1', ['s2', 'h1']],
    ['s1~s2', ['s1', 's2']],
  ])
  expect(validate(dock, design, demoCatalog)).toEqual([])
})
