/** What a catalog may say of strength: all of it may be left out, and what contradicts itself is told. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive, parseCatalog } from '../../../rules/index.ts'
import { metricCatalog } from '../../support/catalogs.ts'

/** A deep copy that may be bent out of its type. */
type Bent = Record<'sleeve' | 'clamp' | 'hooks', Record<string, unknown>> & {
  materials: Record<string, { strength?: Record<string, unknown> }>
  hardware: Record<string, unknown>[]
}
const copy = (): Bent => structuredClone(demoCatalog) as unknown as Bent
const strengthOf = (catalog: Bent, material: string) => catalog.materials[material]!.strength!
const pathsOf = (input: unknown): string[] => {
  const parsed = parseCatalog(input)
  return parsed.ok ? [] : parsed.issues.map((issue) => issue.path)
}

describe('a catalog’s strengths', () => {
  it('may all be left out, and the dock’s kit stays what it is', () => {
    const bare = copy()
    for (const material of Object.values(bare.materials)) delete material.strength
    for (const field of ['stiffness', 'slack', 'slip']) delete bare.sleeve[field]
    delete bare.clamp.slip
    delete bare.hooks.lock
    for (const bolt of bare.hardware) delete bolt.ultimate
    const parsed = parseCatalog(bare)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    const [with_, without] = [derive(demoDesign, demoCatalog), derive(demoDesign, parsed.value)]
    expect(without.parts).toEqual(with_.parts)
    expect(without.legs).toEqual(with_.legs)
    expect(without.totals).toEqual(with_.totals)
  })

  it.each([
    ['yield over ultimate', (s: object) => Object.assign(s, { yield: 3e8 }), 'yield'],
    ['G over half of E', (s: object) => Object.assign(s, { G: 3.6e10 }), 'G'],
    ['G under a third of E', (s: object) => Object.assign(s, { G: 2.3e10 }), 'G'],
    [
      'a weld that hardens',
      (s: object) => Object.assign(s, { welded: { yield: 2.5e8, ultimate: 2.5e8 } }),
      'welded.yield',
    ],
    [
      'a weld that strengthens',
      (s: object) => Object.assign(s, { welded: { yield: 1e8, ultimate: 2.7e8 } }),
      'welded.ultimate',
    ],
  ])('are refused where they contradict themselves: %s', (_, bend, at) => {
    const bent = copy()
    bend(strengthOf(bent, '6061-T6'))
    expect(pathsOf(bent)).toEqual([`materials["6061-T6"].strength.${at}`])
  })

  it.each([
    ['no family', (c: Bent) => delete strengthOf(c, '6061-T6').family],
    ['a family not known', (c: Bent) => Object.assign(strengthOf(c, '6061-T6'), { family: 'wood' })],
    ['no temper', (c: Bent) => delete strengthOf(c, '6061-T6').temper],
    ['megapascals for pascals', (c: Bent) => Object.assign(strengthOf(c, 'steel'), { yield: 241.3 })],
    ['a notch under 1', (c: Bent) => Object.assign(strengthOf(c, '6061-T6'), { notch: 0.9 })],
    ['slack of a radian', (c: Bent) => Object.assign(c.sleeve, { slack: 1 })],
    ['a lock that pushes', (c: Bent) => Object.assign(c.hooks, { lock: -1 })],
    ['slip in words', (c: Bent) => Object.assign(c.clamp, { slip: 'firm' })],
  ])('are refused with %s', (_, bend) => {
    const bent = copy()
    bend(bent)
    expect(pathsOf(bent).length).toBeGreaterThan(0)
  })

  it('of the metric shop are those of EN 1999-1-1:2007 table 3.2b for EN AW-6082 T6, thin extrusions (memory)', () => {
    const { strength } = metricCatalog.materials['6082-T6']!
    expect(strength).toMatchObject({ family: 'aluminum', yield: 250e6, ultimate: 290e6, E: 70e9 })
    expect(strength).toMatchObject({ welded: { yield: 125e6, ultimate: 185e6 } })
  })
})
