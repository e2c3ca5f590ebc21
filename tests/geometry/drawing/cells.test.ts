/** What is asked of the cells is what asking every thing would say. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type Box, makeCells, overlap } from '../../../geometry/drawing/cells.ts'

const place = fc.double({ min: -60, max: 60, noNaN: true })
const side = fc.double({ min: 0, max: 30, noNaN: true })
const box = fc
  .tuple(place, place, side, side)
  .map(([x0, y0, width, height]): Box => ({ x0, y0, x1: x0 + width, y1: y0 + height }))

it('Cells tell and count whatever overlaps a box, each once', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 40 }), box, (boxes, asked) => {
      const cells = makeCells<Box>()
      for (const one of boxes) cells.add(one, one)
      const hit = (one: Box): boolean => overlap(one, asked)
      expect(cells.count(asked, hit)).toBe(boxes.filter(hit).length)
      expect(cells.some(asked, hit)).toBe(boxes.some(hit))
    }),
  )
})
