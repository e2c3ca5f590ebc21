/** Pictures for the other papers: in their box, of the right parts, labels clear of each other. */
import { describe, expect, it } from 'vitest'
import { overlap } from '../../../geometry/drawing/cells.ts'
import { boxOf } from '../../../geometry/drawing/labels.ts'
import { PERSON, peopleAt, spanOf, topOf } from '../../../geometry/drawing/people.ts'
import { picture, planPicture, standingPicture, stationPicture } from '../../../geometry/drawing/picture.ts'
import { type Drawn, planView } from '../../../geometry/drawing/plan.ts'
import type { Mark, TextMark } from '../../../geometry/paper/marks.ts'
import { demoCatalog, demoDesign, makeBed, projectOf } from '../../../rules/index.ts'
import { steps } from '../../../rules/papers.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const BOX = { x0: 20, y0: 30, x1: 130, y1: 85 }
const design = parsedDesign({
  ...demoDesign,
  dock: { ...demoDesign.dock, sections: 4, head: { shape: 'tee', sections: 4 } },
})
const dock = deriveAtOnce(design, demoCatalog)
const drawn: Drawn = { ...projectOf(design, demoCatalog, dock), units: 'imperial', lang: 'en' }

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

  it('of a step shows who stands where: each on deck or ground, on the right section, none out of the picture', () => {
    const bed = makeBed(design.site)
    let shown = 0
    for (const { crew, section: id, phase } of steps(dock, design, demoCatalog).steps) {
      if (id === null || phase === 'dry') continue
      const section = dock.sections.find((one) => one.id === id)!
      const people = crew.reduce((sum, one) => sum + one.people, 0)
      const paths = peopleAt(crew, section, { dock, deck: design.dock.deckHeight, bed, from: -50, to: 50 })
      // A body and a head each.
      expect(paths).toHaveLength(2 * people)
      const bodies = paths.filter((_, i) => i % 2 === 0)
      const feet = bodies.map(({ points }) => {
        const xs = points.map(([x]) => x)
        return [(Math.min(...xs) + Math.max(...xs)) / 2, Math.min(...points.map(([, z]) => z))] as const
      })
      expect(topOf(paths)! - Math.max(...feet.map(([, z]) => z))).toBeCloseTo(1.75, 6)
      const places = crew.flatMap((one) => Array.from({ length: one.people }, () => one.place))
      feet.forEach(([x, z], i) => {
        const [from, to] = spanOf(
          places[i] === 'deck' ? dock.sections.find((s) => s.id === section.on)! : section,
        )
        if (places[i] === 'deck') expect(z).toBeCloseTo(design.dock.deckHeight, 9)
        else expect(z).toBeCloseTo(bed.bedAt(x, places[i] === 'water' ? section.y : bed.lineY), 9)
        if (places[i] === 'shore') expect(z).toBeGreaterThan(0)
        else {
          expect(x).toBeGreaterThan(from)
          expect(x).toBeLessThan(to)
        }
      })
      const marks = stationPicture(drawn, id, BOX, crew)
      expectInBox(marks)
      const seen = marks.filter((mark) => mark.kind === 'path' && mark.fill === PERSON).length
      expect(seen).toBe(2 * people)
      shown += people
    }
    expect(shown).toBeGreaterThan(10)
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
