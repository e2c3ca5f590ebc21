/** Limits are drawn where they are: how far out, how deep, lot lines and what is kept clear of them; a boat's way that is not free. */
import { describe, expect, it } from 'vitest'
import { elevationView } from '../../../geometry/drawing/elevation.ts'
import { planView } from '../../../geometry/drawing/plan.ts'
import { drawnOf } from '../../../geometry/drawn.ts'
import { demoCatalog, english, projectOf } from '../../../rules/index.ts'
import { limits as cases } from '../../rules/findings/limits.ts'
import { type Change, designOf } from '../../rules/findings/support.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const drawnWith = (change: Change) => {
  const design = designOf(change)
  return drawnOf(projectOf(design, demoCatalog, deriveAtOnce(design, demoCatalog)), english('metric'))
}
const limits = {
  reach: 10.5,
  area: 13,
  depth: 1,
  share: 0.1,
  // Along the dock at 2 m to its left, and slanting at its right.
  sides: [
    { from: [0, 2], to: [10, 2], distance: 0.5 },
    { from: [0, -1], to: [10, -2] },
  ],
}

describe('limits', () => {
  const drawn = drawnWith({ site: { limits, waterWidth: 200, levels: { low: -0.2, high: 0.25 } } })
  const dashed = (view: ReturnType<typeof planView>) =>
    view.paths.filter(({ layer, hidden }) => layer === 'DIM' && hidden).map(({ points }) => points)

  it('are seen from above', () => {
    const plan = planView(drawn)
    const lines = dashed(plan)
    // A tenth of 200 m is farther than 10.5 m. To the left 2 m is off the picture, 1.5 m on it: 0.6096 + 1 m.
    expect(lines).toHaveLength(3)
    expect(lines[0]!.map(([x]) => x)).toEqual([10.5, 10.5])
    for (const [, y] of lines[1]!) expect(y).toBeCloseTo(1.5, 9)
    for (const [x, y] of lines[2]!) expect(y).toBeCloseTo(-1 - x / 10, 9)
    const told = plan.notes.map(({ text }) => text).filter((text) => text.includes('ask your authority'))
    expect(told).toEqual(['limit of reach 10.50 m, ask your authority', 'lot line 2, ask your authority'])
    // 4 x 2.4384 x 1.2192 and 1.05 of the ramp.
    expect(plan.captions).toContain(
      'Deck over the water: 13.2 m²; the limit given for here is 13.0 m², ask your authority',
    )
  })

  it('are seen from the side', () => {
    const side = elevationView(drawn)
    const [out, deep] = dashed(side)
    expect(out!.map(([x]) => x)).toEqual([10.5, 10.5])
    for (const [, z] of deep!) expect(z).toBeCloseTo(-1.2, 9)
  })

  it('are not there where none is given', () => {
    const plain = drawnWith({})
    for (const view of [planView(plain), elevationView(plain)]) {
      expect(dashed(view)).toEqual([])
      expect(view.captions!.join(' ')).not.toContain('limit')
    }
  })
})

it('the way that a boat lacks is dashed, and none of a boat that has one', () => {
  const { raise, neighbor } = cases['boat-no-fairway']!
  const ways = (change: Change) =>
    planView(drawnWith(change)).paths.filter(({ layer, hidden }) => layer === 'BOAT' && hidden)
  expect(ways(raise)).toHaveLength(1)
  // From the bow: 5.9776 + 1.2192 + 2.5.
  expect(Math.min(...ways(raise)[0]!.points.map(([x]) => x))).toBeCloseTo(9.6968, 4)
  expect(ways(neighbor)).toEqual([])
})
