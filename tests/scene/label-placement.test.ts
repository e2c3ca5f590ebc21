import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Placed, place, type Wanted } from '../../src/scene/measures/label-placement.ts'

const SIZE = { width: 640, height: 400 }

const label = (id: string, x: number, y: number, more: Partial<Wanted> = {}): Wanted => ({
  id,
  anchors: [{ x, y }],
  width: 90,
  height: 20,
  centered: false,
  ...more,
})

/** Pairs of placed labels that lie over one another, and labels that stick out. */
function faults(wanted: readonly Wanted[], placed: readonly Placed[]): string[] {
  const box = placed.map((p) => ({ ...p, ...wanted.find((w) => w.id === p.id)! }))
  return box.flatMap((a, i) => [
    ...(a.x < 0 || a.y < 0 || a.x + a.width > SIZE.width || a.y + a.height > SIZE.height
      ? [`${a.id} out`]
      : []),
    ...box
      .slice(i + 1)
      .filter(
        (b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height,
      )
      .map((b) => `${a.id} over ${b.id}`),
  ])
}

describe('labels', () => {
  it('stand to the right of their place where there is room', () => {
    expect(place([label('a', 100, 100)], SIZE.width, SIZE.height)).toEqual([{ id: 'a', x: 109, y: 90 }])
  })

  it('stand on the other side at the right edge', () => {
    const [a] = place([label('a', 620, 100)], SIZE.width, SIZE.height)
    expect(a!.x + 90).toBeLessThan(620)
  })

  it('keep off what the picture is about where that is possible', () => {
    const shown = Array.from({ length: 40 }, (_, i) => ({ x: 105 + 3 * i, y: 100 }))
    const [a] = place([label('a', 100, 100)], SIZE.width, SIZE.height, shown)
    expect(shown.some(({ x, y }) => x > a!.x && x < a!.x + 90 && y > a!.y && y < a!.y + 20)).toBe(false)
  })

  it('are left out rather than laid over another, the less important first', () => {
    const crowd = Array.from({ length: 60 }, (_, i) => label(`n${i}`, 300, 200))
    const placed = place(crowd, SIZE.width, SIZE.height)
    expect(placed[0]!.id).toBe('n0')
    expect(placed.length).toBeLessThan(60)
    expect(placed.length).toBeGreaterThanOrEqual(4)
    expect(faults(crowd, placed)).toEqual([])
  })

  it('never lie over one another and never stick out, whatever is wanted', () => {
    const some = fc.array(
      fc.record({
        x: fc.integer({ min: -40, max: 700 }),
        y: fc.integer({ min: -40, max: 440 }),
        width: fc.integer({ min: 8, max: 220 }),
        height: fc.integer({ min: 8, max: 60 }),
        centered: fc.boolean(),
      }),
      { maxLength: 40 },
    )
    fc.assert(
      fc.property(some, (list) => {
        const wanted = list.map(({ x, y, ...more }, i) => label(`n${i}`, x, y, more))
        expect(faults(wanted, place(wanted, SIZE.width, SIZE.height))).toEqual([])
      }),
      { seed: 11, numRuns: 400 },
    )
  })

  it('that do lie over one another are told by this test', () => {
    const wanted = [label('a', 0, 0), label('b', 0, 0)]
    expect(
      faults(wanted, [
        { id: 'a', x: 10, y: 10 },
        { id: 'b', x: 60, y: 15 },
      ]),
    ).toEqual(['a over b'])
  })
})
