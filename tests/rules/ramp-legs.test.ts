/** A ramp in the standing section's legs: the finding against the clearances that geometry measures on the true shapes. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clearances } from '../../rules/clearance/clearance.ts'
import { assess, type Dock, demoCatalog, deriveKit, makeBed } from '../../rules/index.ts'
import { anyCase, type Case } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'
import { runs } from '../support/runs.ts'
import { contractDemo } from '../support/worked-designs.ts'

const DOCKS = runs(150)
const SEED = 20_262

const found = (dock: Dock): string[] =>
  dock.findings.filter((f) => f.code === 'ramp-in-legs').flatMap((f) => f.parts.slice(1))

/** Legs that clash with the ramp's frame. */
function measured(dock: Dock, { design, catalog }: Case): string[] {
  const ramp = dock.sections.find((s) => s.role === 'ramp')!
  return clearances(dock, catalog, makeBed(design.site), { of: ramp.id, within: 1e-4 }).flatMap(
    ({ a, b, clash }) => {
      const [frame, leg] = a.kind === 'frame' ? [a, b] : [b, a]
      return clash && frame?.kind === 'frame' && frame.section === ramp.id && leg?.kind === 'leg'
        ? [leg.of]
        : []
    },
  )
}

describe(`ramps of ${DOCKS} random docks (seed ${SEED})`, () => {
  it('run into the legs that are found, and into no others', () => {
    let clashing = 0
    for (const one of fc.sample(anyCase, { seed: SEED, numRuns: DOCKS })) {
      const dock = deriveAtOnce(one.design, one.catalog)
      if (!dock.ramp) continue
      // A leg without a length has no tube that could be measured.
      const tubes = found(dock).filter((id) => dock.legs.find((leg) => leg.id === id)!.stock !== null)
      expect(tubes.sort()).toEqual(measured(dock, one).sort())
      clashing += tubes.length
    }
    expect(clashing).toBeGreaterThan(DOCKS / 30)
  })
})

describe('a ramp in legs', () => {
  it('is told once, by the dock itself, also where the shop allows so steep a ramp', () => {
    const steep = { ...demoCatalog.rules, rampSlopeMax: { ...demoCatalog.rules.rampSlopeMax, value: 1 } }
    const catalog = { ...demoCatalog, rules: steep }
    const soundings = [-3, 0, 0.5, 20].map((distance) => ({
      distance,
      depth: Math.min(0.94, Math.max(-0.9, 3 * distance)),
    }))
    const design = parsed({
      ...contractDemo,
      site: { ...contractDemo.site, soundings },
      dock: { ...contractDemo.dock, start: 6, sections: 2, extras: {} },
    })
    const dock = assess(deriveKit(design, catalog), { remedies: false })
    expect(found(dock)).toEqual(['s2.start.left', 's2.start.right'])
    expect(dock.findings.map((f) => f.code)).not.toContain('ramp-too-steep')
    expect(dock.findings.filter((f) => f.code === 'parts-clash' && f.parts.includes('s1'))).toEqual([])
  })
})
