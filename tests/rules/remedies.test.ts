/**
 * A remedy that is offered is enough: applied, its finding is gone, and nothing else is worse. Looked at by applying it
 * with an independent library and deriving anew; what better and worse are is written out here once more.
 */
import fc from 'fast-check'
import jsonPatch, { type Operation } from 'fast-json-patch'
import { describe, expect, it } from 'vitest'
import { proposeKit } from '../../rules/assess-kit.ts'
import { assessQuickly } from '../../rules/derive.ts'
import {
  assess,
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  derive,
  deriveKit,
  type Finding,
  findingText,
} from '../../rules/index.ts'
import { stand } from '../../rules/stand.ts'
import { withStructure } from '../../rules/with-structure.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveFound } from '../support/at-once.ts'
import { runs } from '../support/runs.ts'
import { validate } from '../support/validate.ts'
import { smallCase } from './structure/dock-cases.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 20_263)
const RUNS = runs(3)

const { wind: _wind, ...calm } = demoDesign.site
const designOf = (site: object, dock: object): Design =>
  parsedDesign({
    ...demoDesign,
    site: { ...calm, ...site },
    dock: { ...demoDesign.dock, extras: {}, ...dock },
  })
const slope = (rise: number): object => ({
  soundings: [-3, 0, 2, 4, 6, 8, 10, 12, 14, 16].map((x) => ({
    distance: x,
    depth: x < 0 ? 0.3 * x : rise * x,
  })),
})

const times = (dock: Dock, code: string): number => dock.findings.filter((f) => f.code === code).length
const rank = (dock: Dock): number =>
  Math.max(0, ...dock.findings.map(({ severity }) => ({ stop: 2, warn: 1, note: 0 })[severity]))

/** Each dock once: many remedies lead to the same one. */
function once(make: (design: Design, catalog: Catalog) => Dock) {
  const known = new Map<string, Dock>()
  return (design: Design, catalog: Catalog): Dock => {
    const name = JSON.stringify([design, catalog.id])
    const dock = known.get(name) ?? make(design, catalog)
    known.set(name, dock)
    return dock
  }
}
const foundOf = once(deriveFound)
const dockOf = once(derive)

const GRAVER: Readonly<Record<string, string>> = {
  'dock-slides': 'goes-over',
  'clips-lift': 'section-floats',
}

/** Promises that the remedies of a dock break. */
function broken(dock: Dock, design: Design, catalog: Catalog): string[] {
  return dock.findings.flatMap((finding) => {
    if (!finding.remedy) return []
    const patched = jsonPatch.applyPatch(
      structuredClone(design),
      structuredClone([...finding.remedy.patch]) as Operation[],
      true,
    ).newDocument
    const after = foundOf(parsedDesign(patched), catalog)
    const name = `${finding.code}: ${finding.remedy.key}`
    const out: string[] = []
    if (!isHelped(finding, dock, after)) out.push(`${name} does not help`)
    if (dock.structure && rank(after) > rank(dock)) out.push(`${name} makes it worse`)
    for (const { code, severity } of after.findings) {
      // Told only where a graver one of the same cause is not: lighter, but of that one's own remedy nothing may be left.
      const graver = GRAVER[code] ?? ''
      if (times(dock, graver) > 0 && graver !== finding.code) continue
      // What the loads do was not known of a dock that could not be judged: there only what must not be built so counts. Of a note's
      // remedy notes count too, but for the one that is found by solving with other sleeves.
      const known = severity === 'warn' || (finding.severity === 'note' && code !== 'sleeves-decide')
      const counts = severity === 'stop' || (known && dock.structure !== null)
      if (counts && times(after, code) > times(dock, code)) out.push(`${name} brings ${code}`)
    }
    return out
  })
}

function isHelped({ code, parts }: Finding, before: Dock, after: Dock): boolean {
  const left = after.findings.filter((f) => f.code === code)
  return (
    times(after, code) < times(before, code) &&
    !left.some((f) => parts.length > 0 && f.parts.join() === parts.join())
  )
}

/** The same dock with remedies as the checks propose them, none of them tried. */
function proposed(design: Design, catalog: Catalog): Dock {
  const kit = deriveKit(design, catalog)
  const placed = proposeKit(kit)
  return withStructure(placed, stand(kit, placed.waves))
}

const bad: readonly [string, Design][] = [
  ['a boat over a drop', designOf({ ...slope(0.15), bottom: 'rock' }, { boat: boat(9000, 0.6) })],
  [
    'wind on deep water',
    designOf(
      { ...slope(0.12), wind: { speed: 20, fetch: 1500 } },
      { bracing: { none: ['s3.end', 's4.end'] } },
    ),
  ],
  ['a deck under water', designOf({}, { deckHeight: 0.1 })],
  ['more than there are legs for', designOf(slope(0.2), { sections: 7 })],
  ['a mud bottom', designOf({ bottom: 'muck' }, { load: 3000 })],
]
function boat(mass: number, draught: number): object {
  return { length: 6, height: 0.8, draught, mass, side: 'left' }
}

describe('a remedy that is offered', () => {
  it(`does what it says, on ${RUNS} random docks (seed ${SEED})`, () => {
    fc.assert(
      fc.property(smallCase(6), ({ design, catalog }) => {
        expect(broken(derive(design, catalog), design, catalog)).toEqual([])
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  it.each(bad)('does what it says: %s', (_name, design) => {
    const dock = dockOf(design, demoCatalog)
    expect(broken(dock, design, demoCatalog)).toEqual([])
    expect(validate(dock, design, demoCatalog)).toEqual([])
  })

  it('is not any that a check proposes: untried, promises would be broken on these docks', () => {
    const promises = bad.flatMap(([, design]) =>
      broken(proposed(design, demoCatalog), design, demoCatalog).map((one) => one.replace(/.* /, '')),
    )
    expect(promises.length).toBeGreaterThanOrEqual(2)
    const offered = bad.flatMap(([, design]) => dockOf(design, demoCatalog).findings.filter((f) => f.remedy))
    expect(offered.length).toBeGreaterThan(5)
  })

  it('is the longer dock where the boat lies in too little water, and its patch makes it go', () => {
    const design = designOf(slope(0.1), { start: 2, sections: 3, boat: { ...boat(400, 0.4), length: 5 } })
    const finding = derive(design, demoCatalog).findings.find((f) => f.code === 'boat-aground')!
    expect(finding.remedy).toMatchObject({
      key: 'more-sections',
      patch: [{ path: '/dock/sections', value: 5 }],
    })
  })

  it('is there when all is found, not before: null in the frame of a drag, after it, and where none is asked for', () => {
    const design = bad[1]![1]
    const kit = deriveKit(design, demoCatalog)
    expect(proposeKit(kit).findings.some((f) => f.remedy)).toBe(true)
    for (const dock of [assessKit(kit), assessQuickly(kit), assess(kit, { remedies: false })])
      expect(dock.findings.filter((f) => f.remedy)).toEqual([])
    expect(assess(kit).findings.some((f) => f.remedy)).toBe(true)
  })

  it('is one of 40 that are tried: of fifty settings of legs that are gone as many can be left out by a tap', () => {
    const overrides = Object.fromEntries(
      Array.from({ length: 50 }, (_, i) => [`s${i + 20}.end.left`, { stock: 1.8288 }]),
    )
    const { findings } = derive(designOf({}, { overrides }), demoCatalog)
    const told = findings.filter((f) => f.code === 'unknown-id')
    expect(told.length).toBe(50)
    // Two of the tries go to other findings.
    expect(told.filter((f) => f.remedy).length).toBeGreaterThan(30)
    expect(findings.filter((f) => f.remedy).length).toBeLessThanOrEqual(40)
  })
})

describe('findings that ask for opposite things', () => {
  // Deck 0.45 m over a lake 0.3 m lower, 0.75 m over a boat of 0.12 m: lower it. A wake of 0.3 m crests 0.21 m: raise it. That it
  // reaches the frame is a note by now; that it washes the planks with the lake high is the warning, and comes first.
  const both = designOf({ wake: 0.3 }, { boat: { ...boat(400, 0.3), height: 0.12 } })

  it('are told so once, by their codes', () => {
    const { findings } = dockOf(both, demoCatalog)
    const told = findings.filter((f) => f.code === 'remedies-oppose')
    expect(told).toHaveLength(1)
    expect(told[0]).toMatchObject({
      severity: 'note',
      remedy: null,
      values: {
        first: { value: 'deck-awash', unit: 'code' },
        second: { value: 'step-to-boat', unit: 'code' },
        ask: { value: 'deck', unit: 'key' },
      },
    })
    expect(findingText(told[0]!, 'plain')).toContain('a higher deck and a lower one')
    expect(validate(dockOf(both, demoCatalog), both, demoCatalog)).toEqual([])
  })

  it('are not told where only one of them asks', () => {
    for (const design of [
      designOf({ wake: 0.3 }, {}),
      designOf({}, { boat: { ...boat(400, 0.3), height: 0.12 } }),
    ])
      expect(derive(design, demoCatalog).findings.map((f) => f.code)).not.toContain('remedies-oppose')
  })
})
