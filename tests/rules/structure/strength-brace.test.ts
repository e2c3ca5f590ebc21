/** The demo shop's short brace worked by hand, and what a shop may leave unsaid. */
import { describe, expect, it } from 'vitest'
import { demoCatalog } from '../../../rules/index.ts'
import { braceStrength, braceUse, slipUse } from '../../../rules/structure/strength/brace.ts'
import { metricCatalog } from '../../support/catalogs.ts'

const KIP = 4448.2216
const off = (actual: number, published: number): number => Math.abs(actual / published - 1)

describe('a brace 42 in from hole to hole, 1-1/4 in tube with a 1/8 in wall of 6061-T6, 3/8 in bolts', () => {
  const brace = demoCatalog.braces[0]!
  const strength = braceStrength(demoCatalog, brace)!

  it('buckles at 42 in over its radius of gyration, past the limit of 65.7: 0.85 Euler over 1.65', () => {
    const area = (Math.PI / 4) * (1.25 ** 2 - 1)
    const r = Math.sqrt(1.25 ** 2 + 1) / 4
    expect(42 / r).toBeGreaterThan(65.7)
    expect(
      off(strength.pressed.value / KIP, (0.85 * Math.PI ** 2 * 10_100 * area) / (42 / r) ** 2 / 1.65),
    ).toBeLessThan(0.002)
    expect(strength.pressed.by).toBe('member-buckling')
  })

  it('pulled, breaks through the hole: net area times 38 ksi over 1.95', () => {
    const net = (Math.PI / 4) * (1.25 ** 2 - 1) - 2 * 0.375 * 0.125
    expect(off(strength.pulled.value / KIP, (net * 38) / 1.95)).toBeLessThan(0.002)
    expect(strength.pulled.by).toBe('rupture')
  })

  it('hangs on one plane of a 3/8 in A307 bolt: 27 ksi of 0.110 in2 over 2 (AISC Manual table 7-1: 1.49 kip; memory)', () => {
    expect(off(strength.bolt! / KIP, 1.49)).toBeLessThan(0.003)
  })

  it('bears on two walls, e t Ftu each over 1.95, its end 1/2 in from the hole; at most 2 d t Ftu where it is farther', () => {
    expect(brace.end).toBe(0.0127)
    expect(off(strength.hole / KIP, (0.5 * 0.25 * 38) / 1.95)).toBeLessThan(0.002)
    const far = braceStrength(demoCatalog, { ...brace, end: 0.0254 })!
    expect(off(far.hole / KIP, (2 * 0.375 * 0.25 * 38) / 1.95)).toBeLessThan(0.002)
  })

  it('of steel bears by AISC 360-16 J3.10: 1.2 (e − d/2) t Fu a wall, at most 2.4 d t Fu, over 2', () => {
    const stock = {
      ...demoCatalog.stock,
      'brace-tube': { ...demoCatalog.stock['brace-tube']!, material: 'steel' },
    }
    const made = braceStrength({ ...demoCatalog, stock }, { ...brace, end: 0.0254 })!
    // 60 ksi; 1.2 (1 − 0.1875) = 0.975 in is more than 2.4 · 0.375 = 0.9 in; with 0.8 in of end it is 0.735 in.
    expect(off(made.hole / KIP, (0.9 * 0.25 * 60) / 2)).toBeLessThan(0.002)
    const short = braceStrength({ ...demoCatalog, stock }, { ...brace, end: 0.8 * 0.0254 })!
    expect(off(short.hole / KIP, (0.735 * 0.25 * 60) / 2)).toBeLessThan(0.002)
  })

  it('is used up by its weakest part', () => {
    const steep = 0.8
    const clamp = 5000 / 1.5
    expect(strength.clamp).toBe(clamp)
    // Steep, the clamps slip first; level, the bolt shears; pressed on, the tube would take more.
    expect(braceUse(strength, 2500, steep)).toEqual({
      use: (2500 * steep) / clamp,
      part: 'clamp',
      by: 'slip',
    })
    expect(braceUse(strength, -2500, 0.1).part).toBe('bolt')
    expect(braceUse(strength, 0, steep).use).toBe(0)
    const long = braceStrength(demoCatalog, { ...brace, holes: 2.5 })!
    expect(braceUse(long, -2500, 0.1)).toMatchObject({ part: 'tube', by: 'member-buckling' })
    expect(braceUse(long, 2500, 0.1).part).toBe('bolt')
  })
})

describe('what a shop leaves unsaid', () => {
  it('is not judged: no slip stated, no grade of bolt stated', () => {
    expect(metricCatalog.clamp.slip).toBeUndefined()
    const hardware = metricCatalog.hardware.map(({ ultimate: _, ...bolt }) => bolt)
    const strength = braceStrength({ ...metricCatalog, hardware }, metricCatalog.braces[0]!)!
    expect(strength.clamp).toBeNull()
    expect(strength.bolt).toBeNull()
    expect(['tube', 'hole']).toContain(braceUse(strength, -1000, 0.9).part)
    expect(slipUse(undefined, 1000)).toBeNull()
  })

  it('makes no brace’s strength at all where its material has none', () => {
    const { '6082-T6': alloy, ...materials } = metricCatalog.materials
    const { strength: _, ...bare } = alloy!
    const catalog = { ...metricCatalog, materials: { ...materials, '6082-T6': bare } }
    expect(braceStrength(catalog, metricCatalog.braces[0]!)).toBeNull()
  })

  it('of slip counts 1.5 of it', () => {
    expect(slipUse(6000, -3000)).toBeCloseTo(0.75, 12)
    expect(slipUse(0, 0)).toBe(0)
    expect(slipUse(0, 1)).toBe(Number.POSITIVE_INFINITY)
  })
})
