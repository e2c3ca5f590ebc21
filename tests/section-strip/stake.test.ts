/** What stays on shore, as the fields change it. */
import { describe, expect, it } from 'vitest'
import { demoDesign, parseDesign } from '../../rules/index.ts'
import { nameMark, nameStake, placeMark, placeStake } from '../../src/section-strip/stake-edits.ts'

describe('a stake', () => {
  it('is there with a name, at the water’s edge until it is said where, and gone without one', () => {
    const named = nameStake(demoDesign, ' the oak stake ')
    expect(named.site.stake).toEqual({ name: 'the oak stake', x: 0 })
    const placed = placeStake(named, 2)
    // Behind the edge is against the way that distances run.
    expect(placed.site.stake).toEqual({ name: 'the oak stake', x: -2 })
    expect(nameStake(placed, 'the birch').site.stake).toEqual({ name: 'the birch', x: -2 })
    expect(nameStake(placed, '  ')).toEqual(demoDesign)
    expect(parseDesign(placed).ok).toBe(true)
  })
  it('that has no name is nowhere', () => {
    expect(placeStake(demoDesign, 2)).toBe(demoDesign)
  })
})

it('a mark is on the water until it is said how high, and keeps what a file says besides', () => {
  const marked = placeMark(nameMark(demoDesign, 'bolt'), 0.8)
  expect(marked.site.benchmark).toEqual({ name: 'bolt', above: 0.8 })
  expect(placeMark(marked, -0.1).site.benchmark?.above).toBe(-0.1)
  expect(nameMark(marked, '')).toEqual(demoDesign)
  const other = {
    ...marked,
    site: { ...marked.site, benchmark: { ...marked.site.benchmark!, datum: 'own' } },
  }
  expect(nameMark(other, 'nail').site.benchmark).toEqual({ name: 'nail', above: 0.8, datum: 'own' })
  expect(parseDesign(marked).ok).toBe(true)
})
