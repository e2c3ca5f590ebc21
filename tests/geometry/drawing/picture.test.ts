/** Pictures for the other papers: in their box, of the right parts, labels clear of each other. */
import { describe, expect, it } from 'vitest'
import { boxOf, overlap } from '../../../geometry/drawing/labels.ts'
import { picture, planPicture, standingPicture, stationPicture } from '../../../geometry/drawing/picture.ts'
import { type Drawn, planView } from '../../../geometry/drawing/plan.ts'
import type { Mark, TextMark } from '../../../geometry/paper/marks.ts'
import { assessKit, demoCatalog, demoDesign, deriveKit } from '../../../rules/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'

const BOX = { x0: 20, y0: 30, x1: 130, y1: 85 }
const design = parsedDesign({
  ...demoDesign,
  dock: { ...demoDesign.dock, sections: 4, head: { shape: 'tee', sections: 4 } },
})
const dock = assessKit(deriveKit(design, demoCatalog))
const drawn: Drawn = { dock, design, catalog: demoCatalog, units: 'imperial', lang: 'en' }

const textsOf = (marks: readonly Mark[]): TextMark[] => marks.filter((mark) => mark.kind === 'text')
const tinted = (marks: readonly Mark[]): Mark[] =>
  marks.filter((mark) => mark.kind === 'path' && mark.fill === '#cfe2ee')

function expectInBox(marks: readonly Mark[]): void {
  const boxes = textsOf(marks).map(boxOf)
  boxes.forEach((box, i) => {
    for (const other of boxes.slice(0, i)) expect(overlap(box, other)).toBe(false)
  })
  const points = [
    ...boxes.flatMap(({ x0, y0, x1, y1 }) => [
      [x0, y0],
      [x1, y1],
    ]),
    ...marks.flatMap((mark) => (mark.kind === 'path' ? mark.points : [])),
  ]
  for (const [x, y] of points) {
    expect(x!).toBeGreaterThanOrEqual(BOX.x0 - 1e-6)
    expect(x!).toBeLessThanOrEqual(BOX.x1 + 1e-6)
    expect(y!).toBeGreaterThanOrEqual(BOX.y0 - 1e-6)
    expect(y!).toBeLessThanOrEqual(BOX.y1 + 1e-6)
  }
}

describe('a picture', () => {
  it('of each section as it is hung stays in its box, with that section tinted and none that comes later', () => {
    dock.workOrder.forEach((id, i) => {
      const marks = stationPicture(drawn, id, BOX)
      expectInBox(marks)
      expect(tinted(marks).length).toBeGreaterThan(3)
      const words = textsOf(marks).flatMap(({ text }) => text.split(', '))
      for (const later of dock.workOrder.slice(i + 1)) expect(words).not.toContain(later)
    })
  })

  it('of a section that the Dock has not is empty', () => {
    expect(stationPicture(drawn, 'nobody', BOX)).toEqual([])
  })

  it('of the plan tints what it is asked to, and only that', () => {
    expect(tinted(planPicture(drawn, [], BOX))).toEqual([])
    const leg = planPicture(drawn, [dock.legs[0]!.id], BOX)
    const section = planPicture(drawn, [dock.legs[0]!.section], BOX)
    expectInBox(leg)
    expectInBox(section)
    expect(tinted(leg).length).toBeGreaterThan(0)
    expect(tinted(section).length).toBeGreaterThan(tinted(leg).length)
  })

  it('is no larger than it is let be, and as large as its box allows', () => {
    const widthOf = (marks: readonly Mark[]): number => {
      const xs = marks.flatMap((mark) => (mark.kind === 'path' ? mark.points.map(([x]) => x) : []))
      return Math.max(...xs) - Math.min(...xs)
    }
    const view = { ...planView(drawn), notes: [] }
    const free = picture(view, BOX)
    const held = picture(view, BOX, { largest: 800 })
    expect(widthOf(held)).toBeLessThan(widthOf(free))
    const xs = view.paths.flatMap(({ points }) => points.map(([x]) => x))
    expect(widthOf(held)).toBeCloseTo((Math.max(...xs) - Math.min(...xs)) / 0.8, 6)
    const larger = picture(view, { ...BOX, x1: 220, y1: 150 })
    expect(widthOf(larger)).toBeGreaterThan(widthOf(free) * 1.5)
  })

  it('of what stands shows no more with nothing standing', () => {
    expect(standingPicture(drawn, [], 100)).toBeNull()
    const some = standingPicture(drawn, dock.workOrder.slice(0, 2), 160)!
    const all = standingPicture(drawn, dock.workOrder, 160)!
    expect(some.marks.length).toBeLessThan(all.marks.length)
  })
})
