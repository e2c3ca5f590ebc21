import { describe, expect, it } from 'vitest'
import { solidOf } from '../../geometry/index.ts'
import { demoCatalog, demoDesign, type Vec3 } from '../../rules/index.ts'
import type { Item } from '../../src/scene/parts/parts.ts'
import { pick } from '../../src/scene/parts/pick.ts'
import { shapeOf } from '../../src/scene/parts/shape.ts'
import { deriveAtOnce } from '../support/at-once.ts'

const dock = deriveAtOnce(demoDesign, demoCatalog)
const items: Item[] = dock.placements.map((placement) => ({
  placement,
  shape: shapeOf(solidOf(placement.kind, placement.code, demoCatalog)),
}))

const toward = (from: Vec3, to: Vec3) => {
  const d: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const long = Math.hypot(...d)
  return { from, along: [d[0] / long, d[1] / long, d[2] / long] as Vec3 }
}

describe('a ray', () => {
  it('from above meets the deck of the section that is there, at its surface', () => {
    const s3 = dock.sections.find((s) => s.id === 's3')!
    const hit = pick(toward([s3.x + 0.7, 0.1, 5], [s3.x + 0.7, 0.1, 0]), items)!
    expect(hit.placement.of).toBe('s3')
    expect(hit.placement.kind).toBe('deck-panel')
    expect(5 - hit.distance).toBeCloseTo(demoDesign.dock.deckHeight, 5)
  })

  it('from the side meets each leg under water, the near one of a pair', () => {
    for (const leg of dock.legs.filter((l) => l.corner.endsWith('right'))) {
      const z = leg.bed + 0.16
      const hit = pick(toward([leg.x, -9, z], [leg.x, 0, z]), items)!
      expect(hit.placement.of).toBe(leg.id)
      expect(-9 + hit.distance).toBeGreaterThan(leg.y - 0.06)
      expect(-9 + hit.distance).toBeLessThan(leg.y)
    }
  })

  it('through the open middle of a frame from below meets planks, not the box around the frame', () => {
    const s4 = dock.sections.find((s) => s.id === 's4')!
    expect(pick(toward([s4.x + 0.35, 0.2, -3], [s4.x + 0.35, 0.2, 1]), items)!.placement.kind).toBe(
      'deck-panel',
    )
  })

  it('beside the dock meets nothing', () => {
    expect(pick(toward([5, 6, 3], [5, 6, -3]), items)).toBe(null)
    expect(pick(toward([5, 0, 3], [5, 0, 9]), items)).toBe(null)
  })
})
