/** 'Forty feet out' in sections: the fewest that get there, worked by hand and held against the placed dock. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, deriveKit } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { sectionsForReach } from '../../rules/layout/sections-for-reach.ts'
import { straightCase } from '../support/arbitraries.ts'
import { parsed } from '../support/by-hand.ts'
import { kitOf } from '../support/level-dock.ts'
import { runs } from '../support/runs.ts'

const FT = 0.3048
const reachOf = ({ layout }: ReturnType<typeof deriveKit>): number =>
  footprintOfAll(layout.placed.map((p) => ({ ...p, length: p.frame.length, width: p.frame.width })))!.x1

describe('sections of 8 ft, 1 in apart, from 3 m on', () => {
  const { design } = kitOf()
  const pitch = 8 * FT + demoCatalog.rules.jointGap.value

  it('are four for 40 ft: three reach 10.37 m, four 12.83 m', () => {
    const found = sectionsForReach(design, demoCatalog, 40 * FT)!
    expect(found.sections).toBe(4)
    expect(found.reach).toBeCloseTo(3 + 4 * pitch - demoCatalog.rules.jointGap.value, 9)
    expect(found.reach).toBeCloseTo(reachOf(kitOf({ sections: 4 })), 9)
    expect(reachOf(kitOf({ sections: 3 }))).toBeLessThan(40 * FT)
  })

  it('are as many as reach exactly that far, not one more', () => {
    const exact = reachOf(kitOf({ sections: 5 }))
    expect(sectionsForReach(design, demoCatalog, exact)!.sections).toBe(5)
    expect(sectionsForReach(design, demoCatalog, exact + 0.001)!.sections).toBe(6)
  })

  it('are one at the least, however near', () => {
    expect(sectionsForReach(design, demoCatalog, -50)!.sections).toBe(1)
  })

  it('are one more with a ramp, which begins at the same place', () => {
    const ramped = parsed({ ...design, dock: { ...design.dock, ramp: true, sections: 2 } })
    expect(sectionsForReach(ramped, demoCatalog, 40 * FT)).toEqual({
      sections: 5,
      reach: sectionsForReach(design, demoCatalog, 40 * FT)!.reach,
    })
  })
})

it('a plan of its own and a frame that nobody sells are told from a number', () => {
  const plan = [{ id: 'a', on: null }]
  const { sections: _, ramp: __, head: ___, ...dock } = demoDesign.dock
  expect(sectionsForReach(parsed({ ...demoDesign, dock: { ...dock, plan } }), demoCatalog, 5)).toBeNull()
  const unknown = parsed({ ...demoDesign, dock: { ...demoDesign.dock, frame: 'none' } })
  expect(sectionsForReach(unknown, demoCatalog, 5)).toBeNull()
})

it('on any shore and with any end reaches as far as the placed dock does, and one section less does not', () => {
  let several = 0
  fc.assert(
    fc.property(
      straightCase,
      fc.integer({ min: 0, max: 25_000 }),
      fc.constantFrom('straight', 'left', 'right', 'tee', 'wide'),
      ({ design, catalog }, millimeters, shape) => {
        const wanted = millimeters / 1000
        const found = sectionsForReach(design, catalog, wanted)
        if (!found || !catalog.frames.some(({ code }) => code === design.dock.frame)) return
        const ramp = design.dock.ramp === true
        const least = ramp ? 2 : 1
        const head = { shape, sections: shape === 'straight' ? 0 : shape === 'tee' ? 2 : 1 }
        const of = (sections: number): number =>
          reachOf(
            deriveKit({ ...design, dock: { ...design.dock, sections, head } } as typeof design, catalog),
          )
        expect(of(found.sections)).toBeCloseTo(found.reach, 6)
        expect(found.reach).toBeGreaterThanOrEqual(wanted - 1e-5)
        if (found.sections === least) return
        several++
        expect(of(found.sections - 1)).toBeLessThan(wanted)
      },
    ),
    { numRuns: runs(200) },
  )
  expect(several).toBeGreaterThan(runs(60))
})
