import fc from 'fast-check'
import { expect, it } from 'vitest'
import { gathered } from '../../src/scene/measures/gather.ts'

it('marks that crowd are one that counts them, at the place of the gravest; eight at the most', () => {
  const row = Array.from({ length: 60 }, (_, i) => ({ id: `m${i}`, x: 10 * i, y: 50 }))
  const kept = gathered(row)
  expect(kept[0]).toEqual({ id: 'm0', x: 0, y: 50, count: 4 })
  expect(kept.length).toBe(8)
  expect(gathered(row.slice(0, 1))).toEqual([{ id: 'm0', x: 0, y: 50, count: 1 }])
  expect(gathered([])).toEqual([])
})

it('no two that are left are nearer than a mark is wide, and none is counted twice', () => {
  const place = fc.record({ x: fc.integer({ min: 0, max: 400 }), y: fc.integer({ min: 0, max: 300 }) })
  fc.assert(
    fc.property(fc.array(place, { maxLength: 60 }), (places) => {
      const kept = gathered(places.map((at, i) => ({ id: String(i), ...at })))
      expect(kept.length).toBeLessThanOrEqual(8)
      expect(kept.reduce((sum, { count }) => sum + count, 0)).toBeLessThanOrEqual(places.length)
      for (const [i, a] of kept.entries())
        for (const b of kept.slice(i + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(40)
    }),
    { seed: 1208 },
  )
})
