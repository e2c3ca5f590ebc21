/** Boats as they are drawn: true in size, draught and place; and told with one figure on the finding and on every paper. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boatPlan, boatSide, boatsIn, type Flat, hullOf } from '../../geometry/boats.ts'
import { paperFrom } from '../../geometry/paper/paper-of.ts'
import { paperOf } from '../../geometry/sheets/packet.ts'
import {
  assessKit,
  demoCatalog,
  deriveKit,
  ENGLISH,
  english,
  formatFigure,
  projectOf,
} from '../../rules/index.ts'
import { type Berth, hullBox } from '../../rules/layout/berth.ts'
import { usualBoat } from '../../rules/structure/strength/usual-boats.ts'
import { boatName, boatWater } from '../../rules/words/boats.ts'
import { addBoat, emptyMesh } from '../../src/scene/boats/boat-mesh.ts'
import { anyCase, parsedDesign } from '../support/arbitraries.ts'
import { runs } from '../support/runs.ts'
import { contractDemo } from '../support/worked-designs.ts'

const READER = english('imperial')
const KINDS = ['fishing', 'runabout', 'pontoon'] as const

const projectWith = (dock: Record<string, unknown>) => {
  const design = parsedDesign({ ...contractDemo, dock: { ...contractDemo.dock, ...dock } })
  return projectOf(design, demoCatalog, assessKit(deriveKit(design, demoCatalog)))
}
const extent = (points: readonly Flat[]) => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
}
const near = (box: object, digits = 9) =>
  Object.fromEntries(
    Object.entries(box).map(([name, value]: [string, number]) => [name, expect.closeTo(value, digits)]),
  )
const berthOf = (kind: (typeof KINDS)[number], edge: string): Berth =>
  boatsIn(projectWith({ boats: [{ id: 'a', kind, ...usualBoat(kind, 6.096), section: 's5', edge }] }))[0]!

describe('a boat of 20 ft', () => {
  it.each(KINDS)(
    '%s is drawn as long, wide, deep and high as it is, from above and from its side',
    (kind) => {
      for (const edge of ['left', 'right', 'end'] as const) {
        const berth = berthOf(kind, edge)
        const { beam, draught, height } = berth.boat
        const above = extent(boatPlan(berth).outlines.flat())
        expect(above).toEqual(near(hullBox(berth)))
        const lengthwise = edge !== 'end'
        expect(above.x1 - above.x0).toBeCloseTo(lengthwise ? 6.096 : beam, 9)
        // 0.2 m up: the level of the lake moves all of it.
        const side = extent(boatSide(berth, 0.2).outlines.flat())
        expect(side.y0).toBeCloseTo(0.2 - draught, 9)
        expect(side.y1).toBeGreaterThan(0.2 + height * 0.8)
        expect(side.y1).toBeLessThan(0.2 + height + 1e-9)
        if (lengthwise)
          expect([side.x0, side.x1]).toEqual([above.x0, above.x1].map((x) => expect.closeTo(x, 9)))
        expect(side.x1 - side.x0).toBeLessThanOrEqual((lengthwise ? 6.096 : beam) + 1e-9)
      }
    },
  )
  it.each(KINDS)('%s is a mesh of the same size with few triangles, all normals of one meter', (kind) => {
    for (const edge of ['left', 'right', 'end'] as const) {
      const berth = berthOf(kind, edge)
      const mesh = emptyMesh()
      addBoat(mesh, berth)
      const at = (k: number): number[] => mesh.positions.filter((_, i) => i % 3 === k)
      const plan = hullBox(berth)
      expect(Math.min(...at(0))).toBeCloseTo(plan.x0, 2)
      expect(Math.max(...at(0))).toBeCloseTo(plan.x1, 2)
      expect(Math.min(...at(1))).toBeCloseTo(plan.y0, 2)
      expect(Math.max(...at(1))).toBeCloseTo(plan.y1, 2)
      expect(Math.min(...at(2))).toBeCloseTo(-berth.boat.draught, 9)
      expect(mesh.indices.length / 3).toBeLessThan(2500)
      expect(Math.max(...mesh.indices)).toBe(mesh.positions.length / 3 - 1)
      for (let i = 0; i < mesh.normals.length; i += 3)
        expect(Math.hypot(...mesh.normals.slice(i, i + 3))).toBeCloseTo(1, 6)
    }
  })
  it('is fullest amidships, and its bottom rises to the bow alone', () => {
    const { stations } = hullOf(berthOf('runabout', 'left').boat)
    const halves = stations.map(({ half }) => half)
    expect(Math.max(...halves)).toBeCloseTo(berthOf('runabout', 'left').boat.beam / 2, 9)
    expect(halves.at(-1)!).toBeLessThan(0.1)
    const keels = stations.map(({ keel }) => keel)
    expect(keels).toEqual([...keels].sort((a, b) => a - b))
  })
})

describe('what is said of a boat', () => {
  const texts = (name: 'quote' | 'estimate' | 'drawing', dock: Record<string, unknown>): string => {
    const paper = paperOf(
      name,
      paperFrom(projectWith(dock), {
        ...{ units: 'imperial', language: ENGLISH, size: 'letter', date: '2026-05-01', by: 'A. Person' },
      }),
    )
    return paper.sheets
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
      .join('\n')
  }
  const two = {
    boat: { kind: 'pontoon', ...usualBoat('pontoon', 6.096), side: 'left' },
    boats: [{ id: 'a', kind: 'fishing', ...usualBoat('fishing', 4.2672), section: 's5', edge: 'right' }],
  }
  it.each(['quote', 'estimate', 'drawing'] as const)(
    'is on the %s: both, and the water under each',
    (name) => {
      const said = texts(name, two)
      const project = projectWith(two)
      for (const berth of boatsIn(project))
        for (const words of [
          boatName(berth.boat, READER),
          boatWater(berth, project.bed, project.design.site.levels, READER),
        ])
          expect(said).toContain(words)
      expect(said).toContain('Pontoon, 20 ft')
      expect(said).toContain('Fishing boat, 14 ft')
      expect(texts(name, {})).not.toContain('under the keel')
    },
  )
  it('keeps its kind with figures of its own, and an older Design’s is known by them', () => {
    const { length, ...rest } = usualBoat('pontoon', 6.096)
    expect(boatName({ kind: 'pontoon', length, ...rest, mass: 1 }, READER)).toBe('Pontoon, 20 ft')
    expect(boatName(usualBoat('runabout', 18 * 0.3048), READER)).toBe('Runabout, 18 ft')
    expect(boatName({ length, ...rest, mass: 1 }, READER)).toBe('Boat, 20 ft')
  })
})

describe('on any dock', () => {
  it('the finding says the very figure that papers and panel do, of each boat that touches and of no other (seed 20261128)', () => {
    let touching = 0
    let floating = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const dock = assessKit(deriveKit(design, catalog))
        const project = projectOf(design, catalog, dock)
        const said = boatsIn(project).map((berth) =>
          boatWater(berth, project.bed, design.site.levels, READER),
        )
        const aground = dock.findings
          .filter(({ code }) => code === 'boat-aground')
          .map(({ values }) => `${formatFigure(values.short!, READER)} too little water at low water`)
        expect(said.filter((words) => words.includes('too little')).sort()).toEqual(aground.sort())
        touching += aground.length
        floating += said.length - aground.length
        for (const berth of boatsIn(project)) {
          expect(extent(boatPlan(berth).outlines.flat())).toEqual(near(hullBox(berth), 6))
          const level = design.site.levels.high
          expect(extent(boatSide(berth, level).outlines.flat()).y0).toBeCloseTo(level - berth.boat.draught, 9)
        }
      }),
      { seed: 20261128, numRuns: runs(300) },
    )
    expect(touching).toBeGreaterThan(runs(20))
    expect(floating).toBeGreaterThan(runs(10))
  })
})
