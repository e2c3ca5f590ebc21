/** Where the words about crests stand: in the water between legs, clear of the bed, of the handles, and of each other. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { heightAt, type Room, wordPlaces } from '../../src/section-strip/crest-places.ts'

const flat = (uprights: readonly number[], more: Partial<Room> = {}): Room => ({
  uprights,
  from: 0,
  to: 700,
  width: 90,
  floor: 150,
  bedAt: () => 200,
  ...more,
})

describe('places for words in the water', () => {
  it('are in the middle of the gaps, the lakeward first', () => {
    expect(wordPlaces(flat([100, 200, 320, 440]), 3)).toEqual([380, 260, 150])
  })

  it('are none where the bed comes up to the words', () => {
    // Deep enough from 300 px on.
    const bedAt = (x: number): number => 100 + x / 6
    expect(wordPlaces(flat([100, 200, 320, 440], { bedAt }), 3)).toEqual([380])
    expect(wordPlaces(flat([100, 200, 320, 440], { bedAt: () => 149 }), 3)).toEqual([])
  })

  it('leave the handles at the edge alone', () => {
    // A little aside of the middle, between the same two.
    expect(wordPlaces(flat([100, 200, 320, 440], { to: 424 }), 2)).toEqual([379, 260])
    expect(wordPlaces(flat([100, 200, 320, 440], { to: 370 }), 2)).toEqual([260, 150])
  })

  it('of any dock lie in the water, under the dock, within the strip, and off each other', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 800 }), { minLength: 2, maxLength: 30 }),
        fc.integer({ min: 40, max: 120 }),
        fc.integer({ min: 0, max: 300 }),
        (uprights, width, shore) => {
          const room = flat(uprights, { width, to: 740, bedAt: (x) => (x < shore ? 100 : 200) })
          const places = wordPlaces(room, 4)
          places.forEach((x, i) => {
            expect(x - width / 2).toBeGreaterThanOrEqual(Math.max(0, shore))
            expect(x + width / 2).toBeLessThanOrEqual(740)
            for (const line of uprights) expect(Math.abs(line - x), 'crosses none').toBeGreaterThan(width / 2)
            expect(x).toBeGreaterThanOrEqual(Math.min(...uprights))
            expect(x).toBeLessThanOrEqual(Math.max(...uprights))
            for (const other of places.slice(0, i)) expect(Math.abs(other - x)).toBeGreaterThanOrEqual(width)
          })
        },
      ),
      { seed: 20_251, numRuns: 500 },
    )
  })
})

describe('the height of a line of points', () => {
  it('is straight between them and stays beyond them', () => {
    const line = [
      [0, 1],
      [2, 0],
      [2, -1],
      [4, -3],
    ] as const
    expect(heightAt(line, -5)).toBe(1)
    expect(heightAt(line, 1)).toBeCloseTo(0.5, 12)
    expect(heightAt(line, 3)).toBeCloseTo(-2, 12)
    expect(heightAt(line, 9)).toBe(-3)
  })
})
