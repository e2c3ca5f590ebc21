/** What must hold of every member's strengths, whatever its stock: on random stock, both families, every option. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Stock, Strength } from '../../../rules/catalog/index.ts'
import { bendingProperties, sectionProperties } from '../../../rules/catalog/section-properties.ts'
import { demoCatalog } from '../../../rules/index.ts'
import { basisOf, strengthsOf, strengthsOfStock } from '../../../rules/structure/strength/member.ts'
import {
  type MemberOptions,
  type Strengths,
  utilization,
} from '../../../rules/structure/strength/strengths.ts'
import { metricCatalog } from '../../support/catalogs.ts'
import { runs } from '../../support/runs.ts'

const VALUES = ['compression', 'tension', 'momentY', 'momentZ', 'shearY', 'shearZ', 'torsion'] as const

const side = fc.double({ min: 0.01, max: 0.4, noNaN: true })
/** From paper-thin to nearly solid. */
const part = fc.double({ min: 0.002, max: 0.49, noNaN: true })
const material = 'x'
const anyStock: fc.Arbitrary<Stock> = fc.oneof(
  fc
    .tuple(side, part)
    .map(([diameter, p]): Stock => ({ shape: 'round-tube', diameter, wall: diameter * p, material })),
  fc.tuple(side, side, part).map(
    ([width, height, p]): Stock => ({
      shape: 'rect-tube',
      width,
      height,
      wall: Math.min(width, height) * p,
      material,
    }),
  ),
  side.map((diameter): Stock => ({ shape: 'round-bar', diameter, material })),
  fc.tuple(side, side).map(([width, height]): Stock => ({ shape: 'flat', width, height, material })),
)
const anyStrength: fc.Arbitrary<Strength> = fc
  .record({
    steel: fc.boolean(),
    aged: fc.boolean(),
    yields: fc.double({ min: 2e7, max: 7e8, noNaN: true }),
    over: fc.double({ min: 1, max: 2, noNaN: true }),
    welded: fc.option(fc.double({ min: 0.2, max: 1, noNaN: true }), { nil: undefined }),
  })
  .map(({ steel, aged, yields, over, welded }): Strength => {
    const E = steel ? 2e11 : 7e10
    const common = { E, G: 0.38 * E, yield: yields, ultimate: yields * over }
    if (steel) return { family: 'steel', ...common }
    const soft = welded && { welded: { yield: yields * welded, ultimate: yields * over * welded } }
    return { family: 'aluminum', temper: aged ? 'T5-T9' : 'other', ...common, ...soft }
  })
const anyOptions: fc.Arbitrary<MemberOptions> = fc.record({
  length: fc.double({ min: 0.01, max: 8, noNaN: true }),
  k: fc.double({ min: 0.5, max: 2, noNaN: true }),
  weld: fc.constantFrom('none', 'ends', 'all'),
})
const anyMember = fc.tuple(anyStrength, anyStock, anyOptions)
const RUNS = { numRuns: runs(300), seed: 11 }

/** Column curves step down by half a percent where they turn elastic. */
const STEP = 1.006
function notStronger(weaker: Strengths, stronger: Strengths): void {
  for (const name of VALUES) expect(weaker[name].value, name).toBeLessThanOrEqual(stronger[name].value * STEP)
}

describe('strengths of any stock', () => {
  it('are finite and over zero', () => {
    fc.assert(
      fc.property(anyMember, ([strength, stock, options]) => {
        const strengths = strengthsOf(strength, stock, options)
        for (const name of VALUES) {
          expect(Number.isFinite(strengths[name].value), name).toBe(true)
          expect(strengths[name].value, name).toBeGreaterThan(0)
        }
      }),
      RUNS,
    )
  })

  it('never grow with length, with slender ends, or by a weld', () => {
    fc.assert(
      fc.property(
        anyMember,
        fc.double({ min: 1, max: 5, noNaN: true }),
        ([strength, stock, options], longer) => {
          const now = strengthsOf(strength, stock, options)
          notStronger(strengthsOf(strength, stock, { ...options, length: options.length * longer }), now)
          notStronger(strengthsOf(strength, stock, { ...options, k: options.k! * longer }), now)
          const [none, ends, all] = (['none', 'ends', 'all'] as const).map((weld) =>
            strengthsOf(strength, stock, { ...options, weld }),
          )
          notStronger(ends!, none!)
          notStronger(all!, ends!)
        },
      ),
      RUNS,
    )
  })

  it('never pass what the bare metal of the section could do', () => {
    fc.assert(
      fc.property(anyMember, ([strength, stock, options]) => {
        const { area, Zy, Zz, C } = bendingProperties(stock)
        const s = strengthsOf(strength, stock, options)
        const { yield: F } = strength
        expect(s.compression.value).toBeLessThanOrEqual((F * area) / 1.65)
        expect(s.tension.value).toBeLessThanOrEqual((F * area) / 1.65)
        expect(s.momentY.value).toBeLessThanOrEqual((F * Zy) / 1.65 + 1e-9)
        expect(s.momentZ.value).toBeLessThanOrEqual((F * Zz) / 1.65 + 1e-9)
        expect(s.shearY.value).toBeLessThanOrEqual((0.6 * F * area) / 1.65)
        expect(s.torsion.value).toBeLessThanOrEqual((0.6 * F * C) / 1.65 + 1e-9)
      }),
      RUNS,
    )
  })

  it('never pass Euler’s load of the member', () => {
    fc.assert(
      fc.property(anyMember, ([strength, stock, options]) => {
        const { Iy, Iz } = sectionProperties(stock)
        const euler = (Math.PI ** 2 * strength.E * Math.min(Iy, Iz)) / (options.k! * options.length) ** 2
        expect(strengthsOf(strength, stock, options).compression.value).toBeLessThanOrEqual(euler)
      }),
      RUNS,
    )
  })

  it('turn with the stock: width for height is y for z', () => {
    fc.assert(
      fc.property(anyMember, ([strength, stock, options]) => {
        if (stock.shape !== 'rect-tube' && stock.shape !== 'flat') return
        const turned = { ...stock, width: stock.height, height: stock.width }
        const [a, b] = [strengthsOf(strength, stock, options), strengthsOf(strength, turned, options)]
        expect(a.momentY.value / b.momentZ.value).toBeCloseTo(1, 9)
        expect(a.shearY.value / b.shearZ.value).toBeCloseTo(1, 9)
        expect(a.compression.value / b.compression.value).toBeCloseTo(1, 9)
      }),
      RUNS,
    )
  })
})

describe('utilization', () => {
  const share = fc.double({ min: -1.5, max: 1.5, noNaN: true })
  const shares = fc.record({ axial: share, My: share, Mz: share, Vy: share, Vz: share, T: share })
  const forces = (
    s: Strengths,
    by: { axial: number; My: number; Mz: number; Vy: number; Vz: number; T: number },
  ) => ({
    axial: by.axial * (by.axial > 0 ? s.tension : s.compression).value,
    My: by.My * s.momentY.value,
    Mz: by.Mz * s.momentZ.value,
    Vy: by.Vy * s.shearY.value,
    Vz: by.Vz * s.shearZ.value,
    T: by.T * s.torsion.value,
  })

  it('never falls when every force grows by the same factor, and is zero under none', () => {
    fc.assert(
      fc.property(anyMember, shares, fc.double({ min: 1, max: 3, noNaN: true }), (member, by, factor) => {
        const s = strengthsOf(...member)
        const all = forces(s, by)
        const grown = Object.fromEntries(
          Object.entries(all).map(([name, value]) => [name, value * factor]),
        ) as typeof all
        expect(utilization(s, grown).use).toBeGreaterThanOrEqual(utilization(s, all).use)
        expect(utilization(s, { axial: 0, My: 0, Mz: 0 }).use).toBe(0)
      }),
      RUNS,
    )
  })

  it('is at least each share by itself (of steel, of a small axial share half), and blind to signs of bending', () => {
    fc.assert(
      fc.property(anyMember, shares, (member, by) => {
        const s = strengthsOf(...member)
        const { use } = utilization(s, forces(s, by))
        const axial = Math.abs(by.axial)
        const least = s.interaction === 'aisc' && axial < 0.2 ? axial / 2 : axial
        const bent = s.interaction === 'aisc' ? 8 / 9 : 1
        for (const one of [
          least,
          bent * Math.abs(by.My),
          bent * Math.abs(by.Mz),
          Math.abs(by.Vy),
          Math.abs(by.T),
        ])
          expect(use).toBeGreaterThanOrEqual(one * (1 - 1e-12))
        const mirrored = { ...by, My: -by.My, Vz: -by.Vz, T: -by.T }
        expect(utilization(s, forces(s, mirrored)).use).toBeCloseTo(use, 12)
      }),
      RUNS,
    )
  })
})

describe('strengths by a catalog’s codes', () => {
  it('are there for all that carries in both shops, by the law of its material', () => {
    for (const catalog of [demoCatalog, metricCatalog]) {
      const codes = [
        ...catalog.frames.flatMap((frame) => [frame.rail, frame.ends, frame.cross.stock]),
        ...[...catalog.legs, ...catalog.braces].map((part) => part.stock),
        ...catalog.extras.flatMap((extra) => (extra.place === 'post' ? extra.posts.map((p) => p.stock) : [])),
        catalog.sleeve.stock,
      ]
      for (const code of codes) {
        const strengths = strengthsOfStock(catalog, code, { length: 1 })
        const { family } = catalog.materials[catalog.stock[code]!.material]!.strength!
        expect(strengths?.interaction === 'aisc', code).toBe(family === 'steel')
      }
    }
  })

  it('are null where the shop states none, or the code is not known', () => {
    expect(strengthsOfStock(demoCatalog, 'plank', { length: 1 })).toBeNull()
    expect(strengthsOfStock(demoCatalog, 'unobtainium', { length: 1 })).toBeNull()
  })

  it('name their source', () => {
    expect(basisOf(demoCatalog.materials['6061-T6']!.strength!)).toMatch(/^Aluminum Design Manual 2020/)
    expect(basisOf(demoCatalog.materials.steel!.strength!)).toMatch(/^AISC 360-16/)
  })
})
