/** Every check: a design that raises it, a neighbor that does not, and its remedy, which makes it go. The cases: `findings/`. */
import jsonPatch, { type Operation } from 'fast-json-patch'
import { describe, expect, it } from 'vitest'
import { proposeKit } from '../../rules/assess-kit.ts'
import {
  CHECKS,
  type Design,
  type Dock,
  demoCatalog,
  derive,
  deriveKit,
  english,
  findingText,
  type Remedy,
  remedyText,
} from '../../rules/index.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { validate } from '../support/validate.ts'
import { braces } from './findings/braces.ts'
import { deck } from './findings/deck.ts'
import { extras } from './findings/extras.ts'
import { legs } from './findings/legs.ts'
import { limits } from './findings/limits.ts'
import { plan } from './findings/plan.ts'
import { ramp } from './findings/ramp.ts'
import { soundings } from './findings/soundings.ts'
import { type Cases, calmSite, designOf } from './findings/support.ts'

const CASES: Cases = { ...plan, ...ramp, ...deck, ...limits, ...legs, ...braces, ...extras, ...soundings }

/** By an independent library. */
const applied = (design: Design, { patch }: Remedy): Design =>
  parsedDesign(
    jsonPatch.applyPatch(structuredClone(design), structuredClone([...patch]) as Operation[], true)
      .newDocument,
  )

const codes = (dock: Dock): string[] => dock.findings.map((finding) => finding.code)

describe('the demo dock', () => {
  it('has nothing found against it on calm water', () => {
    expect(codes(deriveAtOnce(designOf({}), demoCatalog))).toEqual([])
  })
})

describe('every check', () => {
  it('has a case here', () => {
    expect(Object.keys(CASES).sort()).toEqual(CHECKS.map((check) => check.code).sort())
  })

  for (const [code, { raise, neighbor, helped = false }] of Object.entries(CASES)) {
    it(`${code} is raised, and not by its neighbor`, () => {
      const design = designOf(raise)
      const catalog = raise.shop ?? demoCatalog
      const dock = deriveAtOnce(design, catalog)
      expect(codes(dock)).toContain(code)
      expect(validate(dock, design, catalog)).toEqual([])
      expect(codes(deriveAtOnce(designOf(neighbor), demoCatalog))).not.toContain(code)

      const finding = dock.findings.find((f) => f.code === code)!
      for (const form of ['plain', 'text'] as const)
        for (const units of ['metric', 'imperial'] as const) {
          const words = findingText(finding, form, english(units))
          expect(words.length).toBeGreaterThan(10)
          expect(words).not.toMatch(/[{}]|undefined|NaN/)
        }
      expect(finding.remedy).toBe(null)
      const withRemedy = ({ findings }: Dock) => findings.filter((f) => f.code === code && f.remedy)
      const proposed = withRemedy(proposeKit(deriveKit(design, demoCatalog)))
      const offered = proposed.length === 0 ? [] : withRemedy(derive(design, demoCatalog))
      expect(offered.length > 0).toBe(helped)
      for (const { remedy } of offered) {
        expect(remedyText(remedy!)).not.toMatch(/[{}]|undefined|NaN/)
        const left = deriveAtOnce(applied(design, remedy!), demoCatalog).findings.filter(
          (f) => f.code === code,
        )
        expect(left.length).toBeLessThan(dock.findings.filter((f) => f.code === code).length)
      }
    })
  }
})

describe('a finding', () => {
  it.each(
    Object.entries(CASES).flatMap(([code, { raise, tells }]) => (tells ? [{ code, raise, tells }] : [])),
  )('$code tells what by, in figures worked by hand', ({ code, raise, tells }) => {
    const { parts, values, where } = tells
    const { findings } = proposeKit(deriveKit(designOf(raise), raise.shop ?? demoCatalog))
    const found = findings.find((finding) => finding.code === code)!
    expect(found.parts).toEqual(parts)
    const told = Object.entries(found.values).map(([name, { value }]) => [name, value] as const)
    expect(told.map(([name]) => name).sort()).toEqual(Object.keys(values).sort())
    for (const [name, value] of told)
      if (typeof value === 'number')
        expect(Math.abs(value - Number(values[name])), `${name} ${value}`).toBeLessThan(5e-5)
      else expect(value, name).toEqual(values[name])
    const patch =
      found.remedy &&
      Object.fromEntries(
        found.remedy.patch.map((step) => [step.path, 'value' in step ? step.value : undefined]),
      )
    expect(patch).toEqual(where)
  })
})

describe('soundings over an area', () => {
  const area = (from: number, to: number) => ({
    soundings: calmSite.soundings.flatMap((s) => [
      { ...s, offset: from },
      { ...s, offset: to },
    ]),
  })
  const of = (site: Record<string, unknown>) => codes(deriveAtOnce(designOf({ site }), demoCatalog))

  it('of an ordinary survey raise nothing', () => {
    expect(of(area(-1, 1))).toEqual([])
    expect(of(area(-0.9, 2.5))).toEqual([])
  })

  // The legs stand up to 0.52 m to the right; 10 ft = 3.048 m.
  it('that lie all far to one side of the dock are told', () => {
    expect(of(area(2.6, 4))).toContain('soundings-aside')
    expect(of(area(2.4, 4))).not.toContain('soundings-aside')
  })

  it('are told by place and depth where two do not agree', () => {
    const site = { soundings: [...calmSite.soundings, { distance: 8.05, offset: 0.05, depth: 1.4 }] }
    const dock = deriveAtOnce(designOf({ site }), demoCatalog)
    const finding = dock.findings.find((f) => f.code === 'soundings-differ')!
    expect(finding.severity).toBe('warn')
    expect(findingText(finding, 'text')).toMatch(/8.*8\.05.*0\.9.*1\.4/)
    expect(dock.legs.length).toBeGreaterThan(0)
  })
})

describe('a brace finding', () => {
  it('names both legs', () => {
    for (const code of ['brace-does-not-fit', 'brace-near-pad', 'brace-left-out']) {
      const { raise } = CASES[code]!
      const dock = deriveAtOnce(designOf(raise), raise.shop ?? demoCatalog)
      const finding = dock.findings.find((f) => f.code === code)!
      const pair = dock.pairs.find((p) => finding.parts.includes(p.id))!
      for (const leg of pair.legs) expect(finding.parts).toContain(leg)
    }
  })
})
