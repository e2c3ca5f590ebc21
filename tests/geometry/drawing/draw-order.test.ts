/** Near bodies are drawn over far ones: held against what an eye meets first along its looks. */
import { describe, expect, it } from 'vitest'
import { type Bounded, drawOrder } from '../../../geometry/drawing/draw-order.ts'
import type { Vec3 } from '../../../rules/index.ts'
import { runs } from '../../support/runs.ts'

interface Named extends Bounded {
  readonly name: number
}
const all = () => true

/** Where a ray from the eye enters a box, as a part of its way to `to`; null where it misses. */
function enters({ low, high }: Bounded, eye: Vec3, to: Vec3): number | null {
  let [from, until] = [0, Number.POSITIVE_INFINITY]
  for (let i = 0; i < 3; i++) {
    const way = to[i]! - eye[i]!
    if (Math.abs(way) < 1e-12) {
      if (eye[i]! < low[i]! || eye[i]! > high[i]!) return null
      continue
    }
    const [a, b] = [(low[i]! - eye[i]!) / way, (high[i]! - eye[i]!) / way]
    from = Math.max(from, Math.min(a, b))
    until = Math.min(until, Math.max(a, b))
  }
  return from < until - 1e-9 ? from : null
}

/** A generator of its own, so that a failing case comes again. */
function random(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296
    return state / 4294967296
  }
}

/** Boxes of a grid, each within its own cell: some plane along the axes parts any two. */
function boxesOf(next: () => number): Named[] {
  const boxes: Named[] = []
  for (let x = 0; x < 4; x++)
    for (let y = 0; y < 3; y++)
      for (let z = 0; z < 2; z++) {
        if (next() < 0.3) continue
        const cell = [x, y, z]
        const low = cell.map((c) => c + 0.4 * next()) as unknown as Vec3
        const high = cell.map((c) => c + 0.6 + 0.4 * next()) as unknown as Vec3
        boxes.push({ name: boxes.length, low, high })
      }
  return boxes
}

describe('the order of drawing', () => {
  it('puts whatever is met first along a look last', () => {
    let crossed = 0
    for (let seed = 1; seed <= runs(150); seed++) {
      const next = random(seed)
      const boxes = boxesOf(next)
      const eye: Vec3 = [-3 - 4 * next(), -2 - 5 * next(), 1 + 4 * next()]
      const place = new Map(drawOrder(boxes, eye, all).map((box, i) => [box.name, i]))
      expect(place.size).toBe(boxes.length)
      for (const a of boxes) {
        const to = [0, 1, 2].map((i) => (a.low[i]! + a.high[i]!) / 2) as unknown as Vec3
        const own = enters(a, eye, to)!
        for (const b of boxes) {
          const at = b === a ? null : enters(b, eye, to)
          if (at === null) continue
          crossed++
          expect(place.get(b.name)! > place.get(a.name)!, `seed ${seed}: ${b.name} before ${a.name}`).toBe(
            at < own,
          )
        }
      }
    }
    expect(crossed).toBeGreaterThan(runs(150) * 5)
  })

  it('draws every body once, those too that are in each other', () => {
    const body = (name: number, x: number): Named => ({ name, low: [x, 0, 0], high: [x + 2, 1, 1] })
    const order = drawOrder([body(0, 0), body(1, 1), body(2, 2)], [-9, 0, 5], all)
    expect(order.map(({ name }) => name)).toEqual([2, 1, 0])
  })

  it('asks nothing of bodies that lie beside each other in the picture', () => {
    const near: Named = { name: 0, low: [0, 0, 0], high: [1, 9, 1] }
    const far: Named = { name: 1, low: [2, 0, 0], high: [3, 1, 1] }
    const names = (overlap: () => boolean) =>
      drawOrder([near, far], [-1, 0.5, 0.5], overlap).map(({ name }) => name)
    // The middle of the long one is farther off, and it stands before the other all the same.
    expect(names(all)).toEqual([1, 0])
    expect(names(() => false)).toEqual([0, 1])
  })
})
