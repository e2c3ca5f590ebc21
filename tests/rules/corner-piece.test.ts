/** Corner pieces: a run with one of 45 degrees worked by hand, and rings of them, which close by themselves. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive, parseCatalog, shopOf } from '../../rules/index.ts'
import { areaOf, centerOf, type Size } from '../../rules/layout/footprint.ts'
import { highestUnder, outlineArea, overlapOf } from '../../rules/layout/outline.ts'
import { withPlan } from '../../rules/plan/as-plan.ts'
import type { PlanItem } from '../../rules/plan/schema.ts'
import { lie } from '../../rules/plan/troubles.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { catalogs } from '../support/catalogs.ts'
import { hung } from '../support/hung.ts'
import { validate } from '../support/validate.ts'

/** Two sections out, the corner, two more; `to` the left hung by its start, to the right by its end. */
const turning = (to: 'left' | 'right'): PlanItem[] => [
  { id: 's1', on: null, along: 0 },
  hung('s2', 's1'),
  hung('c1', 's2', { frame: 'corner-45', with: to === 'left' ? 'start' : 'end' }),
  hung('s3', 'c1', { edge: to === 'left' ? 'end' : 'start' }),
  hung('s4', 's3'),
]

const dockOf = (to: 'left' | 'right') => {
  const level = [0, 1, 30].map((distance) => ({ distance, depth: distance === 0 ? 0 : 1 }))
  const { soundings: _, ...site } = demoDesign.site
  const base = withPlan(demoDesign, turning(to))
  const design = parsedDesign({
    ...base,
    site: { ...site, soundings: level, crossSlope: 0 },
    dock: { ...base.dock, start: 1, extras: {}, placed: [], boat: undefined, overrides: {} },
  })
  return { design, dock: derive(design, demoCatalog) }
}

// By hand: frames 2.4384 x 1.2192 m, an inch between them; the corner's left side a foot. From the end edge's left corner, a foot at 22.5
// degrees from the start edge's, half a width back at 45 degrees, an inch on, and then 2.4638 m along 45 degrees.
const C = Math.cos(Math.PI / 8)
const S = Math.sin(Math.PI / 8)
const H = Math.SQRT1_2
const THIRD = {
  x: 1 + 3 * 2.4638 - 0.0254 + 0.3048 * C + 0.6096 * H + 0.0254 * H - 2.4384,
  y: 0.6096 + 0.3048 * S - 0.6096 * H + 0.0254 * H,
}

describe('a run with a corner of 45 degrees', () => {
  it('lies where it does by hand, and its mirror image to the right', () => {
    const { dock } = dockOf('left')
    const at = Object.fromEntries(dock.sections.map((one) => [one.id, one]))
    expect([at.s2!.x, at.s2!.y, at.s2!.heading]).toEqual([3.4638, 0, 0])
    expect([at.c1!.x, at.c1!.y, at.c1!.heading, at.c1!.turn]).toEqual([5.9276, 0, 0, 45])
    expect(at.s3!.heading).toBe(45)
    expect(at.s3!.x).toBeCloseTo(THIRD.x, 6)
    expect(at.s3!.y).toBeCloseTo(THIRD.y, 6)
    expect(at.s3!.x).toBeCloseTo(6.658212, 5)
    expect(at.s3!.y).toBeCloseTo(0.31315, 5)
    expect(at.s4!.x).toBeCloseTo(THIRD.x + 2.4638 * H, 6)
    expect(at.s4!.y).toBeCloseTo(THIRD.y + 2.4638 * H, 6)
    const right = dockOf('right').dock
    expect(right.sections.find(({ id }) => id === 's4')).toMatchObject({
      x: at.s4!.x,
      y: -at.s4!.y,
      heading: 315,
    })
    const places = (one: typeof dock, sign: 1 | -1): string[] =>
      one.legs.map(({ x, y }) => `${x.toFixed(5)} ${(sign * y).toFixed(5)}`).sort()
    expect(places(right, -1)).toEqual(places(dock, 1))
  })

  it('stands on twelve legs, on four joints and no tie, of these parts', () => {
    const { dock, design } = dockOf('left')
    expect(dock.legs.map(({ id }) => id)).toEqual([
      ...['s1.start.left', 's1.start.right', 's1.end.left', 's1.end.right', 's2.end.left', 's2.end.right'],
      ...['c1.end.left', 'c1.end.right', 's3.end.left', 's3.end.right', 's4.end.left', 's4.end.right'],
    ])
    expect(dock.joints.map(({ id, kind }) => `${kind} ${id}`)).toEqual([
      'hook s1~s2',
      'hook s2~c1',
      'hook c1~s3',
      'hook s3~s4',
    ])
    const leg = dock.legs.find(({ id }) => id === 'c1.end.left')!
    // 87.313 mm inside of the end edge and of the left side: the start edge's own, seen in the mirror between the two.
    const pivot = 0.6096 + 0.1524 / S
    const own = { x: 0.087313, y: 0.6096 - (0.087313 * (1 - S)) / C - pivot }
    const far = Math.hypot(own.x, own.y)
    const angle = (-135 * Math.PI) / 180 - Math.atan2(own.y, own.x)
    expect(leg.x).toBeCloseTo(5.9276 + far * Math.cos(angle), 5)
    expect(leg.y).toBeCloseTo(pivot + far * Math.sin(angle), 5)
    const counts = Object.fromEntries(dock.parts.map(({ code, quantity }) => [code, quantity]))
    expect(counts).toMatchObject({ '4x8': 4, 'corner-45': 1, 'panel-4x4': 8, 'panel-corner-45': 1 })
    const kinds = (kind: string): number =>
      dock.parts.filter((row) => row.kind === kind).reduce((sum, row) => sum + row.quantity, 0)
    // Two hooks a joint, one bracket each; twelve legs with their caps and pads; eight sleeves that no leg is in.
    expect([kinds('hook-bracket'), kinds('leg'), kinds('foot-pad'), kinds('sleeve-cap')]).toEqual([
      8, 12, 12, 8,
    ])
    expect(dock.findings.filter(({ severity }) => severity === 'stop')).toEqual([])
    expect(validate(dock, design, demoCatalog)).toEqual([])
  })

  it('is judged: its feet carry all that it weighs', () => {
    const { dock } = dockOf('left')
    expect(dock.structure?.legs).toHaveLength(12)
    for (const { use } of dock.structure!.legs) expect(use).toBeGreaterThan(0)
  })
})

describe('a ring of corner pieces', () => {
  const pieces = catalogs.flatMap((catalog) =>
    catalog.frames.flatMap(({ code, turn }) => (turn ? [[code, turn, catalog] as const] : [])),
  )
  it.each(pieces)('of %s (%i degrees) closes: the last is tied to the first', (code, turn, catalog) => {
    const n = 360 / turn
    const plan: PlanItem[] = Array.from({ length: n }, (_, i) =>
      i === 0 ? { id: 'c1', on: null, along: 0, frame: code } : hung(`c${i + 1}`, `c${i}`, { frame: code }),
    )
    const { layout, joints, troubles } = lie(plan, code, shopOf(catalog))
    expect(troubles).toEqual([])
    expect(layout.placed.at(-1)!.heading).toBe(360 - turn)
    expect(joints.all.filter(({ kind }) => kind === 'tie').map(({ id }) => id)).toEqual([`c1~c${n}`])
    // One more would lie on the first.
    const more = lie([...plan, hung('more', `c${n}`, { frame: code })], code, shopOf(catalog))
    expect(more.troubles.map(({ kind, sections }) => [kind, ...sections])).toContainEqual([
      'overlap',
      'c1',
      'more',
    ])
  })
})

describe('a catalog with corner pieces', () => {
  const wrong = (change: (catalog: typeof demoCatalog) => void): string => {
    const catalog = structuredClone(demoCatalog)
    change(catalog)
    const read = parseCatalog(catalog)
    return read.ok ? '' : read.issues.map(({ path, expected }) => `${path}: ${expected}`).join('; ')
  }
  it('says what is wrong with one', () => {
    expect(wrong(() => undefined)).toBe('')
    const corner = (catalog: typeof demoCatalog) => catalog.frames.find(({ turn }) => turn)!
    expect(wrong((c) => Object.assign(corner(c), { turn: 30 }))).toBe(
      'frames[3].panel: a panel turned by 30, as the frame is',
    )
    expect(wrong((c) => Object.assign(corner(c), { panels: 2 }))).toBe(
      'frames[3].panels: 1: a corner piece has one panel',
    )
    expect(wrong((c) => Object.assign(c, { frames: [corner(c)], templates: [] }))).toContain(
      'frames: a frame without a turn, for the run',
    )
  })
})

describe('outlines', () => {
  const piece: Size = { length: 0.3048, width: 1.2192, turn: 45 }
  it('have the area and the middle of a trapezoid', () => {
    // Between its parallel sides w cos 22.5; the longer one longer by 2 w sin 22.5.
    const longer = 0.3048 + 2 * 1.2192 * S
    expect(areaOf(piece)).toBeCloseTo(((0.3048 + longer) / 2) * 1.2192 * C, 9)
    // By the triangle and the parallelogram that it falls into, across from its longer side.
    const high = 1.2192 * C
    const from = (((longer - 0.3048) / 2) * high * (high / 3) + 0.3048 * high * (high / 2)) / areaOf(piece)
    const [x, y] = centerOf(piece)
    const [rx, ry] = [(longer / 2) * C, -0.6096 + (longer / 2) * S]
    expect(Math.hypot(x - rx, y - ry)).toBeCloseTo(from, 9)
  })

  it('are on each other by the least way that takes them apart', () => {
    const square = [
      [0, 0],
      [0, 1],
      [1, 1],
      [1, 0],
    ] as const
    const diamond = (x: number) =>
      [
        [x - 1, 0.5],
        [x, 1.5],
        [x + 1, 0.5],
        [x, -0.5],
      ] as const
    expect(overlapOf(square, diamond(1.5))).toBeCloseTo(0.5, 9)
    expect(overlapOf(diamond(1.5), square)).toBeCloseTo(0.5, 9)
    expect(overlapOf(square, diamond(2.2))).toBeLessThan(0)
    // Their rectangles are on each other, they are not: corner against edge, 45 degrees.
    const beside = square.map(([x, y]) => [x + 1.1, y + 1.1] as const)
    expect(overlapOf(diamond(0.5), beside)).toBeLessThan(0)
    expect(outlineArea(diamond(0))).toBeCloseTo(2, 9)
  })

  it('have under them what the bed has there, not in the rectangle around', () => {
    // A ridge at y over 0.9 m, under the rectangle around a turned square alone.
    const bed = { highest: (_x0: number, _x1: number, _y0: number, y1: number) => (y1 > 0.9 ? 1 : 0) }
    const turned = [
      [0, 0],
      [0.5, 0.5],
      [1, 0],
      [0.5, -0.5],
    ] as const
    expect(highestUnder(bed, turned)).toBe(0)
    expect(
      highestUnder(
        bed,
        turned.map(([x, y]) => [x, y + 0.5] as const),
      ),
    ).toBe(1)
    const slope = { highest: (_a: number, x1: number, _b: number, y1: number) => x1 + y1 }
    // Along its edge x + y = 1, in strips of a tenth: so much more at the most.
    expect(highestUnder(slope, turned)).toBeGreaterThanOrEqual(1)
    expect(highestUnder(slope, turned)).toBeLessThan(1.11)
  })
})
