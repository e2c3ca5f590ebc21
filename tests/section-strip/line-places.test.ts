/** Where the words of level lines stand: between what stands up, off each other, at their line. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { linePlaces } from '../../src/section-strip/line-places.ts'

const ROOM = { from: 4, foot: 180 } as const
const TO = 700

describe('the words of level lines', () => {
  it('stand over their line at the lakeward end, the next one on that line under it, the third nearer the shore', () => {
    const words = { y: 100, width: 80, uprights: [500], to: TO }
    expect(linePlaces([words, words, words], ROOM)).toMatchObject([
      { x: 616, y: 96 },
      { x: 616, y: 111 },
      { x: 416, y: 96 },
    ])
  })

  it('are left out where nothing is wide enough', () => {
    expect(linePlaces([{ y: 100, width: 80, uprights: [80, 160, 240, 320], to: 400 }], ROOM)).toEqual([null])
    expect(linePlaces([{ y: 190, width: 80, uprights: [], to: TO }], ROOM)).toEqual([null])
  })

  it('cross nothing that stands up and no other words, whatever there is', () => {
    let placed = 0
    const line = fc.record({
      y: fc.integer({ min: 0, max: 200 }),
      width: fc.integer({ min: 30, max: 260 }),
      uprights: fc.array(fc.integer({ min: -20, max: 760 }), { maxLength: 12 }),
      to: fc.constant(TO),
    })
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), (lines) => {
        const places = linePlaces(lines, ROOM)
        places.forEach((one, i) => {
          if (!one) return
          placed++
          const { width, y, uprights } = lines[i]!
          expect(one.x).toBeGreaterThanOrEqual(ROOM.from)
          expect(one.x + width).toBeLessThanOrEqual(TO)
          expect(Math.abs(one.y - y)).toBeLessThanOrEqual(12)
          for (const x of uprights) expect(x <= one.x || x >= one.x + width).toBe(true)
          places.slice(0, i).forEach((other, k) => {
            if (!other || Math.abs(other.y - one.y) >= 13) return
            expect(other.x + lines[k]!.width < one.x || one.x + width < other.x).toBe(true)
          })
        })
      }),
      { seed: 20_290, numRuns: 500 },
    )
    expect(placed).toBeGreaterThan(500)
  })
})
