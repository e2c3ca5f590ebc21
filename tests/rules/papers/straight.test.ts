/** Line, square and level as a crew checks them: the demo dock and a T worked by hand. */
import { describe, expect, it } from 'vitest'
import { type Design, demoCatalog, demoDesign, projectOf } from '../../../rules/index.ts'
import { straightOf } from '../../../rules/papers/straight.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { hung } from '../../support/hung.ts'

const straight = (dock: Partial<Design['dock']>, site: object = {}) => {
  const design = parsedDesign({
    ...demoDesign,
    site: { ...demoDesign.site, ...site },
    dock: { ...demoDesign.dock, ...dock },
  })
  return straightOf(projectOf(design, demoCatalog, deriveAtOnce(design, demoCatalog)))!
}

/** Frames of 8 ft by 4 ft, an inch between two of a run. */
const [LONG, WIDE, GAP] = [2.4384, 1.2192, 0.0254]

describe('a straight dock', () => {
  const { line, first, run, turns, overMark } = straight({})
  it('lies along a cord two feet left of the surveyed line, corner to corner of one and of all sections', () => {
    expect(line.aside).toBeCloseTo(WIDE / 2, 5)
    expect(first).toEqual({ section: 's2', diagonal: expect.closeTo(Math.hypot(LONG, WIDE), 5) })
    expect(run).toEqual({
      section: 's5',
      diagonal: expect.closeTo(Math.hypot(4 * LONG + 3 * GAP, WIDE), 5),
    })
    expect(turns).toEqual([])
    expect(overMark).toBeNull()
  })
  it('is measured from the stake, and its deck from the mark: under one that is higher', () => {
    const marked = straight({}, { stake: { name: 'oak', x: -2 }, benchmark: { name: 'ring', above: 0.9 } })
    expect(marked.line.to).toBeCloseTo(line.to + 2, 5)
    expect(marked.overMark).toBeCloseTo(demoDesign.dock.deckHeight - 0.9, 6)
  })
  it('of one section has no run to measure', () => {
    expect(straight({ sections: 1, ramp: false }).run).toBeNull()
  })
})

it('a T has both arms square to the section that carries them, measured alike from its corners', () => {
  const { turns } = straight({ sections: 5, head: { shape: 'tee', sections: 2 } })
  expect(turns).toHaveLength(1)
  const [turn] = turns
  expect(turn!.sections).toEqual(['h1', 'h2'])
  expect(turn!.on).toBe('s5')
  expect(turn!.to).toBe('lake')
  // From the corner of s5: along it to its end (the arms end with it), across the gap and the arm.
  expect(turn!.across).toBeCloseTo(Math.hypot(LONG, GAP + LONG), 5)
})

it('a run that turns over a corner piece is measured from the section before it, and called no square', () => {
  const turning = (way: 'left' | 'right') => {
    const { sections: _, ramp: _r, ...dock } = demoDesign.dock
    const plan = [
      { id: 's1', on: null, along: 0 },
      hung('c1', 's1', { frame: 'corner-45', with: way === 'left' ? 'start' : 'end' }),
      hung('s2', 'c1', { edge: way === 'left' ? 'end' : 'start' }),
    ]
    const design = parsedDesign({ ...demoDesign, dock: { ...dock, start: 1, plan, extras: {} } })
    return straightOf(projectOf(design, demoCatalog, deriveAtOnce(design, demoCatalog)))!
  }
  // s2 begins, from the start of s1: its length and a gap, a foot at 22.5 degrees, half a width back at 45 and a gap on; then its far right corner.
  const [h, c, s] = [Math.SQRT1_2, Math.cos(Math.PI / 8), Math.sin(Math.PI / 8)]
  const x = LONG + GAP + 0.3048 * c + (WIDE / 2) * h + GAP * h + LONG * h + (WIDE / 2) * h
  const y = WIDE / 2 + 0.3048 * s - (WIDE / 2) * h + GAP * h + LONG * h - (WIDE / 2) * h
  for (const way of ['left', 'right'] as const) {
    const { turns, run } = turning(way)
    expect(run).toBeNull()
    expect(turns).toHaveLength(1)
    expect(turns[0]).toMatchObject({ sections: ['s2'], on: 's1', square: false })
    expect(turns[0]!.across).toBeCloseTo(Math.hypot(x, y - WIDE / 2), 5)
  }
})
