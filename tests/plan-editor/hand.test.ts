/** What a hand's move on the plan means: which edge, where along it. 4 x 8 ft, pitch 2.4638; the first section starts at 0. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, shopOf } from '../../rules/index.ts'
import type { PlanItem } from '../../rules/plan/schema.ts'
import { hangingOf } from '../../rules/plan/spots.ts'
import { lie } from '../../rules/plan/troubles.ts'
import { dragged, stepped } from '../../src/plan-editor/hand.ts'
import { HEADS, reachOf, shapeOf, WRITTEN, withReach, withShape } from '../../src/plan-editor/shape-edits.ts'

const shop = shopOf(demoCatalog)
const FT = 0.3048
/** A run of three with an arm of two to the left of its last, flush with its end. */
const plan: PlanItem[] = [
  { id: 's1', on: null, along: 0 },
  { id: 's2', on: 's1', edge: 'end', with: 'start', along: 0 },
  { id: 's3', on: 's2', edge: 'end', with: 'start', along: 0 },
  { id: 'h1', on: 's3', edge: 'left', with: 'start', along: 4 * FT },
  { id: 'h2', on: 'h1', edge: 'end', with: 'start', along: 0 },
]
const lying = lie(plan, '4x8', shop)
const h1 = hangingOf(lying, 'h1')!
const UP = { x: 1, y: 0 }
const DOWN = { x: -1, y: 0 }
const LEFT = { x: 0, y: 1 }

describe('a drag', () => {
  it.each<[string, number, number, object]>([
    ['nowhere leaves it where it is', 0, 0, { on: 's3', edge: 'left', along: 4 * FT }],
    ['a little along its edge is so much', -0.4, 0, { on: 's3', along: 1.2192 - 0.4 }],
    ['near the middle of its edge snaps to it', -2 * FT + 0.1, 0, { on: 's3', along: 2 * FT }],
    ['near its start corner snaps to flush', -4 * FT + 0.1, 0.2, { on: 's3', along: 0 }],
    ['along by a section is the next one', -2.4638, 0.05, { on: 's2', edge: 'left', along: 4 * FT }],
    ['across the run is its other side', 0, -1.27, { on: 's3', edge: 'right', along: 4 * FT }],
  ])('%s', (_, dx, dy, to) => {
    const meant = dragged(lying, 'h1', dx, dy, shop)
    expect(meant).toMatchObject({ kind: 'hang', id: 'h1', with: 'start', ...to, along: expect.any(Number) })
    if ('along' in to && meant?.kind === 'hang') expect(meant.along).toBeCloseTo(to.along as number, 6)
  })

  it('never comes to what hangs on it, and the first section is not dragged', () => {
    expect(dragged(lying, 'h1', 0, 2.4638, shop)).toMatchObject({ on: 's3' })
    expect(dragged(lying, 's1', 1, 0, shop)).toBeNull()
  })

  it('off the end of its edge is left there: it is for others to say that it cannot be', () => {
    // Lakeward of the lake end there is no other edge along there.
    const meant = dragged(lying, 'h1', 0.9, 0.3, shop)
    expect(meant).toMatchObject({ on: 's3', edge: 'left' })
    expect(meant?.kind === 'hang' && meant.along).toBeCloseTo(1.2192 + 0.9, 6)
  })
})

describe('an arrow', () => {
  const along = (operation: ReturnType<typeof stepped>) =>
    operation?.kind === 'hang' ? operation.along / FT : null
  it('goes to the next place that way: flush, middle, flush', () => {
    expect(along(stepped(lying, 'h1', h1, DOWN, shop, null))).toBeCloseTo(2, 6)
    expect(along(stepped(lying, 'h1', { ...h1, along: 2 * FT }, DOWN, shop, null))).toBeCloseTo(0, 6)
    expect(along(stepped(lying, 'h1', { ...h1, along: 0.1 }, UP, shop, null))).toBeCloseTo(2, 6)
  })
  it('goes nowhere past the last place, nor across the edge', () => {
    expect(stepped(lying, 'h1', h1, UP, shop, null)).toBeNull()
    expect(stepped(lying, 'h1', h1, LEFT, shop, null)).toBeNull()
  })
  it('with a step goes so far', () => {
    expect(along(stepped(lying, 'h1', h1, DOWN, shop, 0.0254))).toBeCloseTo(4 - 1 / 12, 6)
  })
})

describe('a shape by picture', () => {
  it('is what it is called, keeps reach and ramp, and goes back to any other', () => {
    for (const first of [...HEADS, ...WRITTEN]) {
      const one = withShape(demoDesign, first, shop)
      expect([shapeOf(one, shop), reachOf(one)]).toEqual([first, 4])
      for (const second of [...HEADS, ...WRITTEN]) {
        const other = withShape(one, second, shop)
        expect([first, second, shapeOf(other, shop), reachOf(other)]).toEqual([first, second, second, 4])
        expect(
          (other.dock.plan ?? []).length === 0 ? other.dock.ramp : other.dock.plan![0]!.role === 'ramp',
        ).toBe(true)
      }
    }
  })
  it('grows from the shore out', () => {
    const longer = withReach(withShape(demoDesign, 'F', shop), 'F', 9, shop)
    expect([shapeOf(longer, shop), reachOf(longer)]).toEqual(['F', 9])
  })
  it('of one’s own is the dock in hand, section by section', () => {
    const own = withShape(demoDesign, 'own', shop)
    expect(own.dock.plan!.map(({ id }) => id)).toEqual(['s1', 's2', 's3', 's4', 's5'])
    expect(shapeOf(own, shop)).toBe('own')
  })
})
