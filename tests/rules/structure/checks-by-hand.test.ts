/**
 * Each check of the structure on figures that are given, at its limit and just over it: what it finds, on which part, with which figure,
 * and what it would change. The docks that come to such figures: `structure-findings.test.ts`.
 */
import { describe, expect, it } from 'vitest'
import { STRUCTURE_CHECKS } from '../../../rules/checks/structure/registry.ts'
import type { BraceUse, FootUse, HookUse, LegUse, RailUse, Structure } from '../../../rules/dock.ts'
import { type Catalog, type Design, demoCatalog, demoDesign, deriveKit } from '../../../rules/index.ts'
import type { Kit } from '../../../rules/kit.ts'
import { parsed } from '../../support/by-hand.ts'

const { wind: _wind, ...calm } = demoDesign.site

/** Three sections in a row, 1.2 m deep, without a ramp. */
function kitOf(
  dock: Record<string, unknown> = {},
  site: Record<string, unknown> = {},
  catalog = demoCatalog,
): Kit {
  const design: Design = parsed({
    ...demoDesign,
    site: { ...calm, soundings: [0, 60].map((distance) => ({ distance, depth: 1.2 })), ...site },
    dock: { ...demoDesign.dock, ramp: false, start: 3, sections: 3, extras: {}, ...dock },
  })
  return deriveKit(design, catalog)
}
const shop = (change: (catalog: { -readonly [K in keyof Catalog]: Catalog[K] }) => void): Catalog => {
  const copy = structuredClone(demoCatalog)
  change(copy)
  return copy
}

const NOTHING: Structure = {
  legs: [],
  braces: [],
  feet: [],
  hooks: [],
  rails: [],
  railUse: null,
  railDeflection: null,
  sway: 0,
  swayAlong: 0,
  swayAcross: 0,
  playAlong: 0.004,
  playAcross: 0.006,
  swayUnbraced: 0,
  swayUnbracedAcross: 0,
  buckling: null,
  bucklingUnbraced: null,
  sleeve: { stiffness: 22_352, stated: false },
  sleeves: [],
  uneven: null,
  deep: true,
  slides: { push: 0, case: null, slides: false },
  stands: true,
  falls: [],
  cases: 1,
  live: 1915,
}
const found = (code: string, structure: Partial<Structure>, kit: Kit = KIT) =>
  STRUCTURE_CHECKS.find((check) => check.code === code)!
    .find({ kit, waves: null, structure: { ...NOTHING, ...structure } })
    .map(({ parts, values, remedy }) => ({
      parts,
      values: Object.fromEntries(Object.entries(values).map(([name, { value }]) => [name, value])),
      patch: remedy?.patch ?? null,
    }))

const KIT = kitOf()
const POSTS = [{ op: 'add', path: '/dock/extras/anchor-post', value: 2 }]
const fewer = (sections: number) => [{ op: 'replace', path: '/dock/sections', value: sections }]

const leg = (more: Partial<LegUse>): LegUse => ({
  leg: 's2.end.left',
  axial: 2000,
  moment: 100,
  use: 0.5,
  governs: 'yielding',
  case: 'D+L',
  ...more,
})
const brace = (more: Partial<BraceUse>): BraceUse => ({
  pair: 's2.end',
  axial: -900,
  use: 0.5,
  governs: 'bolt',
  case: 'D+L left',
  ...more,
})
const foot = (more: Partial<FootUse>): FootUse => ({
  leg: 's2.end.left',
  load: 1000,
  pressure: 20_000,
  use: 0.4,
  case: 'D+L',
  lifts: false,
  liftCase: null,
  slides: false,
  push: 0,
  pushCase: null,
  ...more,
})
const rail = (more: Partial<RailUse>): RailUse => ({
  section: 's2',
  use: 0.5,
  case: 'D+L',
  deflection: 0.001,
  span: 2.16,
  ...more,
})
const hook = (more: Partial<HookUse>): HookUse => ({
  joint: KIT.joints.all[1]!.id,
  down: 500,
  up: 0,
  upCase: null,
  opens: false,
  openCase: null,
  ...more,
})

describe('parts', () => {
  it('legs, braces and rails are overloaded over all that they may, and not at it', () => {
    expect(found('leg-overloaded', { legs: [leg({ use: 1 })] })).toEqual([])
    expect(found('leg-overloaded', { legs: [leg({ use: 1.01 }), leg({ use: 0.2 })] })).toEqual([
      { parts: ['s2.end.left'], values: { leg: 's2.end.left', use: 1.01, case: 'D+L' }, patch: fewer(1) },
    ])
    expect(found('brace-overloaded', { braces: [brace({ use: 1 })] })).toEqual([])
    expect(found('brace-overloaded', { braces: [brace({ use: 1.01 })] })).toEqual([
      {
        parts: ['s2.end'],
        values: { pair: 's2.end', axial: 900, use: 1.01, case: 'D+L left' },
        patch: fewer(1),
      },
    ])
    expect(found('rail-overloaded', { rails: [rail({ use: 1 })] })).toEqual([])
    expect(found('rail-overloaded', { rails: [rail({ use: 1.01 })] })).toEqual([
      { parts: ['s2'], values: { section: 's2', use: 1.01, case: 'D+L' }, patch: null },
    ])
  })

  it('a brace that is over by its clamp slips, and is told once, by the worst', () => {
    const over = [
      brace({ use: 1.2, governs: 'clamp' }),
      brace({ pair: 's3.end', use: 1.4, governs: 'clamp' }),
    ]
    expect(found('brace-overloaded', { braces: over })).toEqual([])
    expect(
      found('brace-slips', { braces: [brace({ use: 1, governs: 'clamp' }), brace({ use: 2 })] }),
    ).toEqual([])
    expect(found('brace-slips', { braces: over })).toEqual([
      {
        parts: ['s2.end', 's3.end'],
        values: { pair: 's3.end', axial: 900, use: 1.4, case: 'D+L left' },
        patch: POSTS,
      },
    ])
  })

  it('a leg is helped by its own brace first, in weather and shoves by posts, else by a shorter run', () => {
    const bare = kitOf({ bracing: { none: ['s1.end', 's2.end'] } })
    const patchOf = (name: string, kit = KIT) =>
      found('leg-overloaded', { legs: [leg({ use: 2, case: name })] }, kit)[0]!.patch
    expect(patchOf('D+L', bare)).toEqual([{ op: 'replace', path: '/dock/bracing/none', value: ['s1.end'] }])
    for (const name of ['D+W high left', 'D+P lake', 'D+B left']) expect(patchOf(name)).toEqual(POSTS)
    for (const name of ['D+L left', 'D+C lake', 'D+E left']) expect(patchOf(name)).toEqual(fewer(1))
    // Of the first section nothing is left over.
    expect(found('leg-overloaded', { legs: [leg({ leg: 's1.end.left', use: 2 })] })[0]!.patch).toBeNull()
    // On rock no post is turned in.
    expect(patchOf('D+W high left', kitOf({}, { bottom: 'rock' }))).toEqual(fewer(1))
  })

  it('a rail sags over a 360th of its span', () => {
    // 2.16 m / 360 = 6 mm
    expect(found('rail-sags', { rails: [rail({ deflection: 0.006 })] })).toEqual([])
    expect(
      found('rail-sags', {
        rails: [
          rail({ deflection: 0.0061 }),
          rail({ section: 's3', deflection: 0.0061, span: 1.08 }),
          rail({}),
        ],
      }),
    ).toEqual([{ parts: ['s2', 's3'], values: { section: 's3', sag: 6.1, limit: 3 }, patch: null }])
  })

  it('a sleeve slips over two thirds of what the shop measured', () => {
    // 12,000 N / 1.5
    expect(found('sleeve-slips', { feet: [foot({ load: 8000 })] })).toEqual([])
    expect(
      found('sleeve-slips', {
        feet: [foot({ load: 8001 }), foot({ leg: 's3.end.left', load: 8002, case: 'D+C' })],
      }),
    ).toEqual([
      {
        parts: ['s2.end.left', 's3.end.left'],
        values: { leg: 's3.end.left', load: 8002, slip: 12_000, case: 'D+C' },
        patch: null,
      },
    ])
    const unstated = shop((c) => {
      const { slip: _slip, ...sleeve } = c.sleeve
      c.sleeve = sleeve
    })
    expect(found('sleeve-slips', { feet: [foot({ load: 1e6 })] }, kitOf({}, {}, unstated))).toEqual([])
  })

  it('a hook lifts over two thirds of its lock, or where it opens; the hinge is none', () => {
    // One bracket of 2000 N over 1.5: 1333.3 N.
    const [one, two] = KIT.joints.all.filter((joint) => joint.kind === 'hook').map(({ id }) => id)
    expect(found('hooks-lift', { hooks: [hook({ joint: one!, up: 1333, upCase: 'D+L' })] })).toEqual([])
    expect(
      found('hooks-lift', {
        hooks: [
          hook({ joint: one!, up: 1334, upCase: 'D+L' }),
          hook({ joint: two!, up: 1400, upCase: 'D+C lake' }),
        ],
      }),
    ).toEqual([
      {
        parts: [one, two],
        values: { joint: two, up: 1400, holds: expect.closeTo(1333.333, 3), case: 'D+C lake' },
        patch: POSTS,
      },
    ])
    expect(
      found('hooks-lift', { hooks: [hook({ joint: one!, opens: true, openCase: 'D+L' })] }),
    ).toHaveLength(1)
    const ramped = kitOf({ ramp: true, start: null })
    const hinge = ramped.joints.all.find((joint) => joint.kind === 'hinge')!.id
    expect(found('hooks-lift', { hooks: [hook({ joint: hinge, up: 9000, opens: true })] }, ramped)).toEqual(
      [],
    )
  })

  it('a foot sinks over 2000 psf on sand, as deep as Vesić’s factors say, and a larger pad is put', () => {
    // 2000 psf = 95,760.5 Pa
    expect(found('foot-sinks', { feet: [foot({ pressure: 95_760 })] })).toEqual([])
    const [told] = found('foot-sinks', {
      feet: [foot({ pressure: 95_761 }), foot({ leg: 's3.end.left', pressure: 96_000 })],
    })
    // B = 0.1778 m: (96,000 − 0.5 · 9000 · 0.1778 · 30.22 · 0.6) / (9000 · 23.18 · 1.625) = 81,493/339,008
    expect(told).toEqual({
      parts: ['s2.end.left', 's3.end.left'],
      values: {
        leg: 's3.end.left',
        pressure: 96_000,
        bears: expect.closeTo(95_760.5, 1),
        sinks: expect.closeTo(0.2404, 3),
      },
      patch: [{ op: 'add', path: '/dock/pad', value: 'mud-pad-14' }],
    })
    // Muck is presumed to bear nothing that could be passed.
    expect(found('foot-sinks', { feet: [foot({ pressure: 1e6 })] }, kitOf({}, { bottom: 'muck' }))).toEqual(
      [],
    )
    // The largest pad is on already.
    expect(
      found('foot-sinks', { feet: [foot({ pressure: 1e6 })] }, kitOf({ pad: 'mud-pad-14' }))[0]!.patch,
    ).toBeNull()
  })

  it('one foot low overloads another leg over all that it may', () => {
    const uneven = { by: 0.02, low: 's2.end.right', leg: 's2.end.left', use: 1, axial: 3000, hangs: [] }
    expect(found('foot-low', { uneven })).toEqual([])
    expect(found('foot-low', { uneven: { ...uneven, use: 1.1 } })).toEqual([
      {
        parts: ['s2.end.left', 's2.end.right'],
        values: { low: 's2.end.right', leg: 's2.end.left', use: 1.1, by: 20 },
        patch: null,
      },
    ])
  })
})

describe('the dock as a whole', () => {
  // 1.6 over 0.8; 3 is ours. The longest legs: all alike here.
  it.each([
    [1.99, true, false],
    [2, false, true],
    [2.99, false, true],
    [3, false, false],
  ])('that buckles at %f times its load must not be built: %s, is told: %s', (buckling, stop, note) => {
    expect(found('buckles', { buckling })).toHaveLength(stop ? 1 : 0)
    expect(found('buckling-near', { buckling })).toHaveLength(note ? 1 : 0)
  })

  it('is told its factor, the least, and its longest legs', () => {
    const deeper = kitOf(
      {},
      {
        soundings: [
          { distance: 0, depth: 1.2 },
          { distance: 8, depth: 1.2 },
          { distance: 9, depth: 1.5 },
          { distance: 60, depth: 1.5 },
        ],
      },
    )
    const far = ['s3.end.left', 's3.end.right']
    expect(found('buckles', { buckling: 1.5 }, deeper)).toEqual([
      { parts: far, values: { factor: 1.5, least: 2 }, patch: POSTS },
    ])
    expect(found('buckling-near', { buckling: 2.5 }, deeper)).toEqual([
      { parts: far, values: { factor: 2.5, least: 3 }, patch: POSTS },
    ])
    expect(found('buckles', { buckling: null })).toEqual([])
  })

  it('that falls is told by what carries it over: weight and people, weather, or a push', () => {
    const falls = ['D+B left', 'D+L left', 'D+C lake', '0.6D+W high left', '0.6D+W low left', 'D+P lake']
    expect(found('does-not-stand', { falls })).toEqual([
      { parts: [], values: { case: 'D+L left' }, patch: POSTS },
    ])
    expect(found('goes-over', { falls })).toEqual([
      { parts: [], values: { case: '0.6D+W high left', cases: 2, hold: 'posts' }, patch: POSTS },
    ])
    expect(found('tips', { falls })).toEqual([{ parts: [], values: { case: 'D+B left' }, patch: POSTS }])
    for (const code of ['does-not-stand', 'goes-over', 'tips']) expect(found(code, {})).toEqual([])
    expect(found('does-not-stand', { falls: ['0.6D+W high left', 'D+B left'] })).toEqual([])
    expect(found('goes-over', { falls: ['D+L', 'D+B left'] })).toEqual([])
    expect(found('tips', { falls: ['D+L', '0.6D+W high left'] })).toEqual([])
  })

  it('that does not stand is helped by a brace left out, by posts, or by its last section less', () => {
    const of = (kit: Kit) => found('does-not-stand', { falls: ['D+L'] }, kit)[0]!.patch
    expect(of(kitOf({ bracing: { none: ['s3.end'] } }))).toEqual([
      { op: 'replace', path: '/dock/bracing/none', value: [] },
    ])
    expect(of(kitOf({}, { bottom: 'rock' }))).toEqual(fewer(2))
    expect(of(kitOf({ extras: { 'anchor-post': 3 } }))).toEqual([{ ...POSTS[0], value: 5 }])
  })

  it('slides, unless the same weather carries it over', () => {
    const slides = { push: 1.3, case: '0.6D+W high left', slides: true }
    const told = [{ parts: [], values: { push: 1.3, case: '0.6D+W high left', hold: 'posts' }, patch: POSTS }]
    expect(found('dock-slides', { slides })).toEqual(told)
    expect(found('dock-slides', { slides, falls: ['D+L', 'D+B left'] })).toEqual(told)
    expect(found('dock-slides', { slides, falls: ['0.6D+W low left'] })).toEqual([])
    expect(
      found('dock-slides', { slides: { ...slides, case: 'D+B left' }, falls: ['0.6D+W low left'] }),
    ).toHaveLength(1)
    expect(found('dock-slides', { slides: { ...slides, slides: false } })).toEqual([])
  })

  it('sways by a shove of 200 lb: felt from 50 N/mm on, loose under 10 N/mm', () => {
    // 889.64 N: 17.79 mm and 88.96 mm.
    expect(found('sways-across', { swayAcross: 0.0889 })).toEqual([])
    expect(found('sways-across', { swayAcross: 0.089 })).toEqual([
      { parts: [], values: { sway: 89, play: 6 }, patch: POSTS },
    ])
    expect(found('sways-along', { swayAlong: 0.0889 })).toEqual([])
    expect(found('sways-along', { swayAlong: 0.089 })).toEqual([
      { parts: [], values: { sway: 89, play: 4 }, patch: POSTS },
    ])
    expect(found('sway-felt', { sway: 0.0177 })).toEqual([])
    expect(found('sway-felt', { sway: 0.018, swayAlong: 0.01, swayAcross: 0.018 })).toEqual([
      { parts: [], values: { sway: 18, across: 18, along: 10 }, patch: null },
    ])
    expect(found('sway-felt', { sway: 0.0889 })).toHaveLength(1)
    expect(found('sway-felt', { sway: 0.089 })).toEqual([])
  })

  it('is another one with other sleeves: that is told with their parts', () => {
    const sleeve = (part: number, buckling: number | null, legUse: number | null) => ({
      part,
      buckling,
      legUse,
      swayAlong: 0,
      swayAcross: 0,
    })
    const of = (sleeves: Structure['sleeves'], more: Partial<Structure> = {}) =>
      found('sleeves-decide', {
        legs: [leg({ use: 0.9 }), leg({ use: 0.3 })],
        buckling: 2.5,
        sleeves,
        ...more,
      })
    // At the limits it stands: a factor of 2, a use of 1, none found.
    expect(of([sleeve(0.5, 2, 1), sleeve(2, null, 0.2)])).toEqual([])
    expect(of([sleeve(0.5, 1.9, 0.9), sleeve(2, 3, 0.2)])).toEqual([
      { parts: [], values: { sleeve: 22_352, parts: [0.5] }, patch: null },
    ])
    expect(of([sleeve(0.5, 2.5, 1.1), sleeve(2, 2.5, null)])[0]!.values.parts).toEqual([0.5, 2])
    // Not to be built as it is: told where it would be with others.
    for (const more of [{ buckling: 1.9 }, { legs: [] }, { legs: [leg({ use: 1.1 })] }])
      expect(of([sleeve(0.5, 1.5, 2), sleeve(2, 2.5, 0.5)], more)[0]!.values.parts).toEqual([2])
  })
})
