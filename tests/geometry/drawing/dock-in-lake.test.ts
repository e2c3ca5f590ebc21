/** The dock in its water: within its box, true to the Dock's places, on every kind of shore, of any dock. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dockInLake } from '../../../geometry/drawing/dock-in-lake.ts'
import { perspective } from '../../../geometry/drawing/perspective.ts'
import { drawnOf } from '../../../geometry/drawn.ts'
import type { PathMark } from '../../../geometry/paper/marks.ts'
import {
  assessKit,
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  english,
  projectOf,
  type Vec3,
} from '../../../rules/index.ts'
import { anyCase, parsedDesign } from '../../support/arbitraries.ts'
import { runs } from '../../support/runs.ts'

const WIDTH = 186
const pictureOf = (design: Design, catalog = demoCatalog) =>
  dockInLake(
    drawnOf(projectOf(design, catalog, assessKit(deriveKit(design, catalog))), english('imperial')),
    WIDTH,
  )
const paths = (design: Design): readonly PathMark[] =>
  pictureOf(design)!.marks.flatMap((mark) => (mark.kind === 'path' ? [mark] : []))
const withDock = (change: object): Design =>
  parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...change } })

describe('the dock in its water', () => {
  it(`lies within its box, of ${runs(12)} random docks of both shops`, () => {
    let drawn = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const made = pictureOf(design, catalog)
        if (!made) return
        drawn++
        expect(made.marks.filter(({ kind }) => kind !== 'path')).toEqual([])
        const within = (at: number, most: number): boolean => at > -0.01 && at < most + 0.01
        const outside = made.marks.flatMap((mark) =>
          mark.kind === 'path'
            ? mark.points.filter(([x, y]) => !within(x, made.width) || !within(y, made.height))
            : [],
        )
        expect(outside).toEqual([])
      }),
      { numRuns: runs(12), seed: 20261128, endOnFailure: true },
    )
    expect(drawn).toBeGreaterThan(runs(12) * 0.7)
  })

  it('has each plank of the deck, until there are too many to be told apart', () => {
    const wood = (design: Design): number =>
      paths(design).filter(
        ({ fill }) =>
          fill !== null && Number.parseInt(fill.slice(1, 3), 16) > Number.parseInt(fill.slice(5, 7), 16) + 40,
      ).length
    const five = wood(demoDesign)
    expect(wood(withDock({ sections: 6 }))).toBeGreaterThan(five + 10)
    expect(wood(withDock({ sections: 31, ramp: false }))).toBeLessThan(
      wood(withDock({ sections: 30, ramp: false })),
    )
  })

  it('has no picture of a dock without sections, nor of one that would be a line', () => {
    const of = (design: Design) => pictureOf(design)
    expect(of(withDock({ sections: 400 }))).not.toBeNull()
    expect(of(withDock({ sections: 401 }))).toBeNull()
  })

  it('is the same each time', () => {
    expect(JSON.stringify(pictureOf(demoDesign))).toBe(JSON.stringify(pictureOf(demoDesign)))
  })
})

describe('a perspective', () => {
  const box = { x0: 0, y0: 0, x1: 100, y1: 60 }
  const frame = { x0: 10, y0: 20, x1: 90, y1: 50 }
  const framed: Vec3[] = [0, 12].flatMap((x) => [-1, 1].flatMap((y) => [0, 2].map((z): Vec3 => [x, y, z])))
  const seen = perspective(framed, { toward: 40, down: 9, away: 0.95 }, frame, box)

  it('fills its frame with what it is of, and is within it', () => {
    const places = framed.map(seen.place)
    const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)]
    expect(Math.min(...xs)).toBeGreaterThan(9.99)
    expect(Math.max(...xs)).toBeLessThan(90.01)
    expect(Math.min(...ys)).toBeGreaterThan(19.99)
    expect(Math.max(...ys)).toBeLessThan(50.01)
    const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
    expect(Math.max(wide / 80, high / 30)).toBeCloseTo(1, 6)
  })

  it('shows straight as straight, what is farther smaller, and level ground up to the horizon', () => {
    const [a, b, c] = [0, 6, 12].map((x) => seen.place([x, 0, 0]))
    expect((b![0] - a![0]) * (c![1] - a![1])).toBeCloseTo((b![1] - a![1]) * (c![0] - a![0]), 6)
    const tall = (x: number): number => seen.place([x, 0, 0])[1] - seen.place([x, 0, 1])[1]
    expect(tall(0)).toBeGreaterThan(tall(6))
    expect(tall(6)).toBeGreaterThan(tall(12))
    expect(seen.place([1e7, 0, 0])[1]).toBeCloseTo(seen.horizon, 3)
  })

  it('cuts off what is behind the eye or out of the box', () => {
    const ground: Vec3[] = [
      [-500, -500, 0],
      [500, -500, 0],
      [500, 500, 0],
      [-500, 500, 0],
    ]
    const shown = seen.polygon(ground)
    expect(shown.length).toBeGreaterThan(2)
    for (const [x, y] of shown) {
      expect(x >= -1e-9 && x <= 100 + 1e-9).toBe(true)
      expect(y >= seen.horizon - 1e-9 && y <= 60 + 1e-9).toBe(true)
    }
    const behind = seen.eye[0] - 50
    expect(seen.polygon(ground.map(([, y, z]): Vec3 => [behind, y * 0.01 + seen.eye[1] - 50, z]))).toEqual([])
  })
})
