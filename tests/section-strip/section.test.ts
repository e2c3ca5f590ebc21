import { describe, expect, it } from 'vitest'
import { rotate } from '../../geometry/vec.ts'
import { type Design, demoCatalog, demoDesign, makeBed, projectOf } from '../../rules/index.ts'
import { FOOT, HEAD, makeScale, ticks } from '../../src/section-strip/scale.ts'
import { sideView } from '../../src/section-strip/section-view.ts'
import { stripRange } from '../../src/state/strip-range.ts'
import { deriveAtOnce } from '../support/at-once.ts'

const shapes: Design['dock'][] = [
  demoDesign.dock,
  { ...demoDesign.dock, ramp: false, sections: 3 },
  { ...demoDesign.dock, head: { shape: 'tee', sections: 4 } },
  { ...demoDesign.dock, head: { shape: 'wide', sections: 2 } },
]

describe('the section through the lake', () => {
  it.each(shapes.map((dock) => [dock]))(
    'draws each frame, leg, pad and brace of the Dock once, in its place: %j',
    (dock) => {
      const design = { ...demoDesign, dock }
      const made = deriveAtOnce(design, demoCatalog)
      const range = stripRange(projectOf(design, demoCatalog, made))
      const view = sideView(projectOf(design, demoCatalog, made), range.x0, range.x1)
      const of = (kind: string) =>
        made.placements
          .filter((p) => p.kind === kind)
          .map((p) => p.of)
          .sort()
      const ids = (list: readonly { id: string }[]) => list.map((shape) => shape.id).sort()
      expect(ids(view.frames)).toEqual(of('frame'))
      expect(ids(view.legs)).toEqual(made.legs.map((leg) => leg.id).sort())
      expect(ids(view.pads)).toEqual(of('foot-pad'))
      expect(ids(view.braces)).toEqual(of('brace'))
      for (const leg of view.legs) {
        const dockLeg = made.legs.find((l) => l.id === leg.id)!
        const [foot, top] = leg.points
        expect(foot![1]).toBe(dockLeg.bed)
        expect(top![1] - foot![1]).toBeCloseTo(dockLeg.setHeight + dockLeg.aboveDeck!, 9)
      }
      for (const brace of view.braces) {
        const fit = made.pairs.find((pair) => pair.id === brace.id)!.brace!
        expect(brace.points[0]![1]).toBeCloseTo(fit.lowZ, 5)
        expect(brace.points[1]![1]).toBeCloseTo(fit.highZ, 5)
      }
      for (const frame of view.frames) {
        const section = made.sections.find((s) => s.id === frame.id)!
        const xs = frame.points.map((p) => p[0])
        const long = section.heading % 180 === 0 ? section.length : section.width
        if (section.role !== 'ramp') expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(long, 5)
      }
    },
  )

  it('draws the ramp from the hinge down to where it touches the shore', () => {
    const made = deriveAtOnce(demoDesign, demoCatalog)
    const { frames } = sideView(projectOf(demoDesign, demoCatalog, made), -5, 15)
    const ramp = frames.find((frame) => frame.id === 's1')!
    const [start, end, , low] = ramp.points
    expect(end![0]).toBeCloseTo(made.start!, 2)
    expect(start![1]).toBeCloseTo(made.sections[0]!.z, 5)
    expect(low![0]).toBeCloseTo(made.ramp!.shoreX, 4)
    expect(low![1]).toBeCloseTo(made.ramp!.shoreZ, 4)
  })

  it('draws the ground as the engine knows it', () => {
    const bed = makeBed(demoDesign.site)
    const { ground } = sideView(
      projectOf(demoDesign, demoCatalog, deriveAtOnce(demoDesign, demoCatalog)),
      -5,
      15,
    )
    expect(ground[0]![0]).toBe(-5)
    expect(ground.at(-1)![0]).toBe(15)
    for (const [x, z] of ground) expect(z).toBe(bed.bedAt(x, 0))
  })

  it('turns a vector as its quaternion says', () => {
    const h = Math.SQRT1_2
    expect(rotate([0, 0, h, h], [1, 0, 0]).map((n) => Math.round(n * 1e9) / 1e9 + 0)).toEqual([0, 1, 0])
    expect(rotate([0, 0, 0, 1], [1, 2, 3])).toEqual([1, 2, 3])
  })
})

describe('the scale', () => {
  const range = stripRange(projectOf(demoDesign, demoCatalog, deriveAtOnce(demoDesign, demoCatalog)))

  it('spans the range from edge to edge', () => {
    for (const width of [358, 940, 1600]) {
      const scale = makeScale(range, width)
      expect(scale.x(range.x0)).toBeCloseTo(0, 9)
      expect(scale.x(range.x1)).toBeCloseTo(width, 9)
      // Upright what is written has its room, over the highest thing and under the lowest.
      expect(scale.z(range.z1)).toBeCloseTo(HEAD, 9)
      expect(scale.z(range.z0)).toBeCloseTo(scale.height - FOOT, 9)
      expect(scale.height).toBeLessThan(340)
    }
  })

  it('writes distances in round steps with room between them', () => {
    for (const unit of [0.3048, 1])
      for (const perX of [18, 55, 200]) {
        const list = ticks(range, perX, unit)
        const step = list[1]! - list[0]!
        expect(step * unit * perX).toBeGreaterThanOrEqual(70 - 1e-6)
        expect(list).toContain(0)
      }
  })
})
