/** Ordinary docks stand, with figures that an installer would believe; absurd ones do not, and it is said why. */
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog, demoDesign, parseCatalog } from '../../../rules/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveFound } from '../../support/at-once.ts'
import { SHORES } from '../../support/shores.ts'

const STOPS_OF_STRUCTURE = [
  'does-not-stand',
  'buckles',
  'leg-overloaded',
  'brace-overloaded',
  'rail-overloaded',
  'unstable',
]

const within = (value: number, least: number, most: number): void => {
  expect(value).toBeGreaterThanOrEqual(least)
  expect(value).toBeLessThanOrEqual(most)
}

describe('the structure of an ordinary dock', () => {
  for (const [design] of [[demoDesign], ...SHORES] as const)
    it(`has figures with sense: ${design.name}`, () => {
      const dock = deriveFound(design, demoCatalog)
      const structure = dock.structure!
      expect(structure.stands).toBe(true)
      expect(dock.findings.filter(({ code }) => STOPS_OF_STRUCTURE.includes(code))).toEqual([])
      // Tubes and rails are used by a part of what they may carry: such docks are lifted by hand, not cut to the limit.
      // The wide water's waves break at its end and reach its frames: they take two thirds.
      within(Math.max(...structure.legs.map(({ use }) => use)), 0.1, 0.7)
      within(structure.railUse!, 0.25, 0.8)
      for (const brace of structure.braces) within(brace.use, 0, 0.9)
      // A full deck puts 250 to 1,700 lb on a foot.
      within(Math.max(...structure.feet.map(({ load }) => load)), 1100, 7600)
      // An inch of sway under a hard shove is much for a dock with its braces.
      within(structure.swayAcross, 1e-3, 20e-3)
      within(structure.swayAlong, 1e-3, 20e-3)
      expect(structure.swayUnbracedAcross).toBeGreaterThanOrEqual(structure.swayAcross * 0.999)
      within(structure.buckling!, 3, 15)
      within(structure.railDeflection!, 1e-3, 8e-3)
      expect(structure.sleeves.map(({ part }) => part)).toEqual([0.5, 2])
      const [half, twice] = structure.sleeves
      expect(half!.buckling!).toBeLessThan(structure.buckling!)
      expect(twice!.buckling!).toBeGreaterThan(structure.buckling!)
      expect(half!.swayAlong).toBeGreaterThan(structure.swayAlong)
    })
})

const { wind: _wind, ...calm } = demoDesign.site
interface Absurd {
  readonly name: string
  /** One of these is told. */
  readonly codes: readonly string[]
  readonly depth: number
  readonly site?: Record<string, unknown>
  readonly dock?: Record<string, unknown>
  // biome-ignore lint/suspicious/noExplicitAny: a catalog to be changed at any place
  readonly shop?: (catalog: any) => void
}
const BARE = { bracing: { none: ['s1.start', 's1.end', 's2.end', 's3.end'] } }

const ABSURD: readonly Absurd[] = [
  {
    name: '2.4 m of water, no braces, 60 psf',
    depth: 2.4,
    dock: { ...BARE, load: 2873 },
    codes: ['buckles', 'does-not-stand'],
  },
  { name: 'as deep, with all its braces', depth: 2.4, codes: ['buckles', 'does-not-stand'] },
  {
    name: 'sleeves that hold next to nothing',
    depth: 0.9,
    shop: (c) => {
      c.sleeve.stiffness = 1500
    },
    codes: ['buckles'],
  },
  {
    name: 'sleeves that hold hardly more than nothing',
    depth: 0.6,
    shop: (c) => {
      c.sleeve.stiffness = 100
    },
    codes: ['unstable', 'does-not-stand', 'buckles'],
  },
  {
    name: 'rails of a stick, 3 x 6 cm',
    depth: 0.6,
    shop: (c) => {
      Object.assign(c.stock['rail-6x2'], { height: 0.06, width: 0.03, wall: 0.002 })
    },
    codes: ['rail-overloaded'],
  },
  {
    name: 'legs of conduit',
    depth: 0.9,
    shop: (c) => {
      Object.assign(c.stock['pipe-2'], { diameter: 0.027, wall: 0.0015 })
    },
    codes: ['leg-overloaded', 'buckles'],
  },
  {
    name: 'braces of wire',
    depth: 1.2,
    shop: (c) => {
      Object.assign(c.stock['brace-tube'], { diameter: 0.008, wall: 0.001 })
    },
    codes: ['brace-overloaded'],
  },
  {
    name: 'all of it of plastic',
    depth: 0.9,
    shop: (c) => {
      Object.assign(c.materials['6061-T6'].strength, { E: 1e9, G: 0.4e9 })
    },
    codes: ['buckles'],
  },
  {
    name: 'a crowd in three layers',
    depth: 0.6,
    dock: { load: 12_000 },
    codes: ['buckles', 'rail-overloaded'],
  },
  {
    name: 'a ship of 60 t alongside',
    depth: 0.6,
    // Its feet slide before the legs bend: it pushes the dock away.
    dock: { boat: { length: 20, height: 6, draught: 0.4, mass: 60_000, side: 'left' } },
    codes: ['dock-slides', 'goes-over'],
  },
  {
    name: 'a hurricane over ten miles of water, no braces',
    depth: 1.6,
    site: { wind: { speed: 40, fetch: 16_000 } },
    dock: { ...BARE, extras: { 'anchor-post': 4 } },
    codes: ['leg-overloaded'],
  },
  {
    name: 'a gale over open water on clay, light as it is',
    depth: 1.8,
    site: { bottom: 'clay', wind: { speed: 22, fetch: 3000 } },
    codes: ['goes-over', 'leg-overloaded'],
  },
  {
    name: 'a bottom of muck in the wind',
    depth: 1,
    site: { bottom: 'muck', wind: { speed: 12, fetch: 200 } },
    codes: ['dock-slides'],
  },
]

describe('an absurd dock', () => {
  for (const { name, depth, site, dock, shop, codes } of ABSURD)
    it(`does not stand: ${name}`, () => {
      const copy = structuredClone(demoCatalog)
      shop?.(copy)
      const parsed = parseCatalog(copy)
      if (!parsed.ok) throw new Error(parsed.issues.map((issue) => issue.message).join('\n'))
      const catalog: Catalog = parsed.value
      const design = parsedDesign({
        ...demoDesign,
        site: {
          ...calm,
          levels: { low: 0, high: 0 },
          soundings: [0, 60].map((distance) => ({ distance, depth })),
          ...site,
        },
        dock: { ...demoDesign.dock, ramp: false, start: 3, sections: 3, extras: {}, ...dock },
      })
      const told = deriveFound(design, catalog).findings.map((finding) => finding.code)
      expect(codes.filter((code) => told.includes(code))).not.toEqual([])
    })

  it('comes in a dozen', () => {
    expect(ABSURD.length).toBeGreaterThanOrEqual(12)
  })
})
