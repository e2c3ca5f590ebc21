/** Every check: a design that raises it, a neighbor that does not, and its remedy, which makes it go. */
import jsonPatch, { type Operation } from 'fast-json-patch'
import { describe, expect, it } from 'vitest'
import { proposeKit } from '../../rules/assess-kit.ts'
import {
  type Catalog,
  CHECKS,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
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

type Change = {
  site?: Record<string, unknown>
  dock?: Record<string, unknown>
  catalog?: unknown
  /** Of another shop than the demo's. */
  shop?: Catalog
}

/** The demo shop, whose people carry no more than so much, kg. */
const carriesLess = (person: number): Catalog => ({
  ...demoCatalog,
  packing: { ...demoCatalog.packing, person },
})

const { wind: _wind, ...calmSite } = demoDesign.site

/** The demo dock without what this engine does not consider yet: nothing is found against it. */
function designOf({ site, dock, catalog }: Change) {
  return parsedDesign({
    ...demoDesign,
    ...(catalog !== undefined && { catalog }),
    site: { ...calmSite, ...site },
    dock: { ...demoDesign.dock, extras: {}, ...dock },
  })
}

/** Soundings straight down from the water's edge at a slope, behind a bank of 0.3 in 1. */
const slope = (rise: number, reach = 16): Record<string, unknown> => ({
  soundings: [-3, 0, 2, 4, 6, 8, 10, 12, 14, 16]
    .filter((x) => x <= reach)
    .map((x) => ({ distance: x, depth: x < 0 ? 0.3 * x : rise * x })),
})
/** A level bed, with so much soft bottom over a firm one. */
const flat = (depth: number, soft = 0): Record<string, unknown> => ({
  soundings: [
    { distance: -3, depth: -0.9 },
    { distance: 0, depth: 0 },
    ...[0.5, 3, 6, 9, 12, 15].map((distance) => ({ distance, depth, firm: depth + soft })),
  ],
})
const plan = (...items: Record<string, unknown>[]): Change => ({
  dock: {
    plan: [
      { id: 's1', on: null, role: 'ramp' },
      { id: 's2', on: 's1', edge: 'end', with: 'start' },
      ...items,
    ],
  },
})
const next = (id: string, on: string, more: Record<string, unknown> = {}) => ({
  id,
  on,
  edge: 'end',
  with: 'start',
  ...more,
})

/**
 * The short brace for 4 ft frames rises sqrt(42^2 - 37.125^2) = 19.64 in = 0.4989 m over 0.942975 m between its holes.
 * With the deck at 0.45 m the underside is at 0.2722 m. On a level bed at -d it hangs midway: what is left over it is
 * ((0.2722 + d) - 0.4989) / 2 - 0.0254, at least 2 in = 0.0508; over the pad the same less 0.08255, at least 1 in = 0.0254.
 */
const boat = (height: number) => ({ length: 5, height, draught: 0.3, mass: 400, side: 'left' })

const CASES: Record<string, { raise: Change; neighbor: Change; without?: 'remedy' }> = {
  'unknown-code': { raise: { dock: { frame: '6x8' } }, neighbor: { dock: { frame: '5x8' } } },
  'unknown-id': {
    raise: { dock: { overrides: { 's9.end.left': { stock: 1.524 } } } },
    neighbor: { dock: { overrides: { 's3.end.left': { stock: 1.524 } } } },
  },
  'catalog-differs': {
    raise: { catalog: { id: 'quillet-dock-works', version: '2025-1' } },
    neighbor: { catalog: { id: 'quillet-dock-works', version: '2026-1' } },
  },
  'section-unreachable': {
    raise: plan(next('s3', 's4'), next('s4', 's3')),
    neighbor: plan(next('s3', 's2'), next('s4', 's3')),
  },
  'sections-overlap': {
    raise: plan(
      next('s3', 's2'),
      { id: 'h1', on: 's2', edge: 'left', with: 'start', along: 2 },
      { id: 'h2', on: 's3', edge: 'left', with: 'start', along: 0 },
    ),
    neighbor: plan(next('s3', 's2'), { id: 'h2', on: 's3', edge: 'left', with: 'start', along: 0 }),
  },
  // Two hooks set in by 10 in each, brackets 4 in wide side by side: 24 in = 0.6096 m of shared edge, of the 1.2192 m of a 4 ft edge.
  'joint-short': {
    raise: plan(next('s3', 's2', { along: 0.61 })),
    neighbor: plan(next('s3', 's2', { along: 0.609 })),
  },
  'start-not-found': {
    raise: {
      site: {
        shore: { kind: 'bank', height: 0.4 },
        soundings: [
          { distance: 0, depth: 0 },
          { distance: 4, depth: 0.5 },
          { distance: 8, depth: 0.9 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
    neighbor: {
      site: {
        shore: { kind: 'bank', height: 0.41 },
        soundings: [
          { distance: -3, depth: -0.9 },
          { distance: 0, depth: 0 },
          { distance: 4, depth: 0.5 },
          { distance: 8, depth: 0.9 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
  },
  'ramp-no-bank': {
    raise: { site: slope(0.8, 6), dock: { start: 6, sections: 2 } },
    neighbor: { site: slope(0.8, 6), dock: { start: 3, sections: 2 } },
  },
  // The end comes down at 0 with the start at 2.4 m: the hinge is at 1 - 0.0635 = 0.9365 m, asin(0.9365 / 2.4411) = 22.56 degrees,
  // less 2.68 for the ramp's own depth: 1 in 2.8. By rule the end is at 0.40 m: 9.8 degrees.
  'ramp-too-steep': {
    raise: { dock: { deckHeight: 1, start: 2.25 } },
    neighbor: { dock: { deckHeight: 1, start: 1.5 } },
  },
  // The ramp's lower corner is 0.1778 - 0.0635 = 0.1143 m under the hinge axis; a leg's near side is 0.087313 - 0.0301625 = 0.05715 m
  // from it, so at sin t = 0.5. On a level bed at -d: 0.3865 + d = 2.4411 sin(30 + 2.684 degrees) = 1.3182, d = 0.9317.
  'ramp-in-legs': {
    raise: { site: flat(0.94), dock: { start: 6, sections: 2 } },
    neighbor: { site: flat(0.925), dock: { start: 6, sections: 2 } },
  },
  // A wall of 0.45 m; hinge at 0.7 - 0.0635 m; the ramp's end, 2.44 m from it, comes down at about start - 2.43 m.
  'ramp-bearing-short': {
    raise: { site: { shore: { kind: 'wall', height: 0.45 } }, dock: { deckHeight: 0.7, start: 2.35 } },
    neighbor: { site: { shore: { kind: 'wall', height: 0.45 } }, dock: { deckHeight: 0.7, start: 2.2 } },
  },
  // The hinge bar is 40 in = 1.016 m, a 4 ft edge 1.2192 m.
  'hinge-short': {
    raise: {
      dock: {
        plan: [
          { id: 's1', on: null, role: 'ramp' },
          { id: 's2', on: 's1', edge: 'end', with: 'start', along: 0.21 },
        ],
      },
    },
    neighbor: {
      dock: {
        plan: [
          { id: 's1', on: null, role: 'ramp' },
          { id: 's2', on: 's1', edge: 'end', with: 'start', along: 0.2 },
        ],
      },
    },
  },
  'ramp-slope-ada': { raise: { dock: { deckHeight: 0.85 } }, neighbor: { dock: { deckHeight: 0.7 } } },
  'ramp-end-low': { raise: { dock: { start: 1.2 } }, neighbor: { dock: { start: 1.05 } } },
  // 1.2192 m across: 0.061 m under the hanging corner against 0.012.
  'ramp-corner-hangs': {
    raise: { site: { crossSlope: 0.05 } },
    neighbor: { site: { crossSlope: 0.01 } },
  },
  'ramp-on-crest': {
    raise: { site: { shore: { kind: 'wall', height: 0.7 } } },
    neighbor: { site: { shore: { kind: 'wall', height: 0.42 } }, dock: { deckHeight: 0.7 } },
  },
  'step-high': {
    raise: { dock: { ramp: false, start: 0.6 } },
    neighbor: { dock: { ramp: false, start: -0.85, deckHeight: 0.45 } },
  },
  'deck-under-level': { raise: { dock: { deckHeight: 0.25 } }, neighbor: { dock: { deckHeight: 0.26 } } },
  // 6 in = 0.1524 m over the high level of 0.25 m.
  'deck-near-level': { raise: { dock: { deckHeight: 0.402 } }, neighbor: { dock: { deckHeight: 0.4025 } } },
  // Underside at 0.2722 m, less 6 in: 0.1198 m, the crest (0.7) of a wake of 0.1711 m.
  // 0.7 of 0.172 m = 0.1204, 0.1518 under the frame's 0.2722 where 0.1524 is asked for; 0.7 of 0.389 m = 0.2723.
  'crest-near-frame': { raise: { site: { wake: 0.172 } }, neighbor: { site: { wake: 0.171 } } },
  'crest-reaches-frame': { raise: { site: { wake: 0.389 } }, neighbor: { site: { wake: 0.388 } } },
  // Deck at 0.45 m, lake at 0.25 m: 0.2 m, the crest of a wake of 0.2857 m.
  'deck-awash': { raise: { site: { wake: 0.286 } }, neighbor: { site: { wake: 0.285 } } },
  // Deck 0.45 m over a lake 0.3 m lower: 0.75 m, less 24 in = 0.6096 m: a boat's side of 0.1404 m.
  'step-to-boat': { raise: { dock: { boat: boat(0.14) } }, neighbor: { dock: { boat: boat(0.141) } } },
  // To the lake at its lowest 0.3 m lower: 0.762 m = 30 in from a deck at 0.462 m.
  'deck-guard': { raise: { dock: { deckHeight: 0.463 } }, neighbor: { dock: { deckHeight: 0.462 } } },
  // Four carry 4 x 29 kg = 116 kg; frames of 5 x 8 ft weigh under 60 kg as carried, so a shop whose people carry 12 kg each finds it heavy.
  'lift-heavy': {
    raise: { dock: { frame: '5x8' }, shop: carriesLess(12) },
    neighbor: { dock: { frame: '5x8' } },
  },
  // Its shallower corners 9.3914 m out, three sections of 2.4384 m and gaps of 0.0254 m from 2 m: 0.9391 m deep, with the lake
  // 0.3 m lower 0.6391 m.
  'boat-aground': {
    raise: { site: slope(0.1), dock: { start: 2, boat: { ...boat(0.6), draught: 0.64 } } },
    neighbor: { site: slope(0.1), dock: { start: 2, boat: { ...boat(0.6), draught: 0.638 } } },
  },
  // Underside at 0.2722 m; a bank of 0.3 in 1 is that high at -0.907 m.
  'frame-in-bed': { raise: { dock: { start: -0.95 } }, neighbor: { dock: { start: -0.9 } } },
  // 4 in = 0.1016 m under it: 0.1706 m, at -0.569 m.
  'frame-near-bed': { raise: { dock: { start: -0.6 } }, neighbor: { dock: { start: -0.55 } } },
  // Longest leg 3.048 m: set height up to 3.048 + 0.00635 - 0.1524 = 2.90195 m, depth 2.45195 m.
  'leg-none-long-enough': { raise: { site: flat(2.453) }, neighbor: { site: flat(2.45) } },
  'leg-override-short': {
    raise: { dock: { overrides: { 's3.end.left': { stock: 1.2192 } } } },
    neighbor: { dock: { overrides: { 's3.end.left': { stock: 1.8288 } } } },
  },
  // Deck to sleeve 0.1778 m and a pad of 0.08255 m: 0.26035 m. At the first leg, 0.0873 m in, the bank is 0.3 in 1.
  'leg-below-frame': { raise: { dock: { start: -0.73 } }, neighbor: { dock: { start: -0.69 } } },
  // 24 in = 0.6096 m over the deck.
  'leg-tall-above-deck': { raise: { dock: { reserve: 0.6 } }, neighbor: { dock: { reserve: 0.1 } } },
  'leg-unpaired': {
    raise: { dock: { head: { shape: 'wide', sections: 1 } } },
    neighbor: { dock: { head: { shape: 'left', sections: 1 } } },
  },
  // Sections side by side: legs 2 x 0.087313 + 0.0254 = 0.200026 m apart; mud pads of 14 in = 0.3556 m, standard ones of 7 in that way.
  'pads-overlap': {
    raise: { dock: { head: { shape: 'wide', sections: 2 }, pad: 'mud-pad-14' } },
    neighbor: { dock: { head: { shape: 'wide', sections: 2 } } },
  },
  'pad-on-slope': {
    raise: { site: slope(0.36, 6), dock: { sections: 2 } },
    neighbor: { site: slope(0.34, 6), dock: { sections: 2 } },
  },
  'muck-without-mud-pad': {
    raise: { site: { bottom: 'muck' } },
    neighbor: { site: { bottom: 'muck' }, dock: { pad: 'mud-pad-14' } },
  },
  // A reserve of 0.8 m asks for 5 ft legs where there is too little room under the frame for any brace.
  'brace-does-not-fit': { raise: { site: flat(0.4), dock: { reserve: 0.8 } }, neighbor: { site: flat(0.7) } },
  // Over the bed (0.2722 + d - 0.4989) / 2 - 0.0254 < 0.1016 where d < 0.4807; the pads stand on firm bottom 0.3 m under it.
  'brace-near-bed': { raise: { site: flat(0.479, 0.3) }, neighbor: { site: flat(0.482, 0.3) } },
  // Over the pad ((0.2722 + d) - 0.4989) / 2 - 0.0254 - 0.08255 < 0.0508 where d < 0.5442; fits from d = 0.4934.
  'brace-near-pad': {
    raise: { site: flat(0.54), dock: { reserve: 0.4 } },
    neighbor: { site: flat(0.55), dock: { reserve: 0.4 } },
  },
  // Over it ((0.2722 + d) - 0.4989) / 2 - 0.0254 < 0.0762 where the higher bed d < 0.4299: on a slope, where the pad stands deeper.
  'brace-near-frame': {
    raise: { site: { ...flat(0.62), crossSlope: 0.38 } },
    neighbor: { site: flat(0.62), dock: { reserve: 0.4 } },
  },
  'brace-left-out': {
    raise: { dock: { bracing: { none: ['s3.end'] } } },
    neighbor: { dock: { bracing: { none: ['s2.end'] } } },
  },
  'auger-on-rock': {
    raise: { site: { bottom: 'rock' }, dock: { extras: { 'anchor-post': 1 } } },
    neighbor: { site: { bottom: 'gravel' }, dock: { extras: { 'anchor-post': 1 } } },
  },
  // Longest post 14 ft = 4.2672 m: 0.45 + 0.1524 above, 0.9144 in the bottom: depth up to 2.7504 m.
  'post-too-short': {
    raise: { site: flat(2.76), dock: { extras: { 'anchor-post': 1 } } },
    neighbor: { site: flat(2.75), dock: { extras: { 'anchor-post': 1 } } },
  },
  // Four legged sections: each side takes four bumpers of 2 ft on 8 ft, the end edge two on 4 ft: 34 in all.
  'extra-no-room': {
    raise: { dock: { extras: { bumper: 35 } } },
    neighbor: { dock: { extras: { bumper: 34 } } },
  },
  'extra-no-place': {
    raise: { dock: { placed: [{ code: 'bumper', section: 's3', edge: 'end', along: 0.6 }] } },
    neighbor: { dock: { placed: [{ code: 'bumper', section: 's5', edge: 'end', along: 0.6 }] } },
  },
  // 3 sqrt(2) x 0.03 m = 0.1273 m more than soundings of 0.03 m differ by.
  'soundings-differ': {
    raise: { site: { soundings: [...calmSite.soundings, { distance: 8.05, offset: 0.06, depth: 1.035 }] } },
    neighbor: { site: { soundings: [...calmSite.soundings, { distance: 8.05, offset: 0.06, depth: 1.02 }] } },
  },
  // Sand stands at 0.62: over 0.5 m 0.31 m, and 0.1273 m for the soundings.
  'soundings-cliff': {
    raise: { site: { soundings: [...calmSite.soundings, { distance: 8, offset: 0.5, depth: 1.345 }] } },
    neighbor: { site: { soundings: [...calmSite.soundings, { distance: 8, offset: 0.5, depth: 1.33 }] } },
  },
  // Deck at 0.45 m.
  'soundings-over-deck': {
    raise: { site: { soundings: [...calmSite.soundings, { distance: 6, offset: 2, depth: -0.46 }] } },
    neighbor: { site: { soundings: [...calmSite.soundings, { distance: 6, offset: 2, depth: -0.45 }] } },
  },
  'soundings-few': {
    raise: {
      site: {
        soundings: [
          { distance: -3, depth: -0.9 },
          { distance: 0, depth: 0 },
          { distance: 6, depth: 0.7 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
    neighbor: {},
  },
  // 20 ft = 6.096 m.
  'soundings-far-apart': {
    raise: {
      site: {
        soundings: [
          { distance: -3, depth: -0.9 },
          { distance: 0, depth: 0 },
          { distance: 3, depth: 0.4 },
          { distance: 9.2, depth: 1 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
    neighbor: {
      site: {
        soundings: [
          { distance: -3, depth: -0.9 },
          { distance: 0, depth: 0 },
          { distance: 3, depth: 0.4 },
          { distance: 9.09, depth: 1 },
          { distance: 12, depth: 1.4 },
        ],
      },
    },
  },
  // The last legs stand at 10.79 m with five sections, 13.26 m with six.
  'soundings-passed': { raise: { dock: { sections: 6 } }, neighbor: { dock: { sections: 5 } } },
  // Legs of a head of one section stand at 0.6096 + 0.0254 + 2.4384 - 0.0873 = 2.986 m, of two at 5.45 m; 10 ft = 3.048 m.
  'soundings-aside': {
    raise: { dock: { head: { shape: 'left', sections: 2 } } },
    neighbor: { dock: { head: { shape: 'left', sections: 1 } } },
  },
  'bank-not-sounded': {
    raise: {
      site: {
        soundings: calmSite.soundings.map((s) => (s.distance < 0 ? { ...s, distance: -1, depth: -0.3 } : s)),
      },
    },
    neighbor: {},
  },
  // A wall hides what was sounded behind it; bearing and benchmark are on the papers.
  'not-considered': {
    raise: { site: { shore: { kind: 'wall', height: 0.42 } }, dock: { deckHeight: 0.7 } },
    neighbor: { site: { bearing: 30, benchmark: { name: 'a bolt', above: 1 } } },
  },
}

/** What a finding says, its figures worked by hand: to 0.05 mm, ids and words exactly. `where`: value by path of the remedy's patch. */
interface Told {
  readonly parts: readonly string[]
  readonly values: Readonly<Record<string, number | string | readonly string[]>>
  readonly where?: Readonly<Record<string, unknown>> | null
}

const TO_START = { '/dock/start': null }
/** Legs of the demo dock: two where it stands, two at the end of each section. */
const LEGS = ['s2.start', 's2.end', 's3.end', 's4.end', 's5.end'].flatMap((end) => [
  `${end}.left`,
  `${end}.right`,
])
/** A pair across, and its legs. */
const across = (pair: string): readonly string[] => [pair, `${pair}.left`, `${pair}.right`]

/** Of the first finding of each check's case above, where its sizes follow from a line of arithmetic. */
const TOLD: Record<string, Told> = {
  'unknown-code': {
    parts: ['s1', 's2', 's3', 's4', 's5'],
    values: { what: 'frame', code: '6x8', known: ['4x8', '5x8', '4x10'] },
    where: { '/dock/frame': '4x8' },
  },
  'unknown-id': {
    parts: [],
    values: { id: 's9.end.left', what: 'leg' },
    where: { '/dock/overrides/s9.end.left': undefined },
  },
  'catalog-differs': {
    parts: [],
    values: { made: 'quillet-dock-works 2025-1', now: 'quillet-dock-works 2026-1' },
    where: { '/catalog': { id: 'quillet-dock-works', version: '2026-1' } },
  },
  'section-unreachable': { parts: ['s3', 's4'], values: { sections: ['s3', 's4'] }, where: null },
  'sections-overlap': { parts: ['h1', 'h2'], values: { a: 'h1', b: 'h2' }, where: null },
  // 1.2192 - 0.61
  'joint-short': {
    parts: ['s2', 's3'],
    values: { host: 's2', guest: 's3', shared: 0.6092, least: 0.6096 },
    where: null,
  },
  // 6 in over the high level of 0.25 m.
  'start-not-found': { parts: [], values: { rule: 'ramp', wanted: 0.4024 }, where: null },
  'ramp-no-bank': { parts: ['s1'], values: { ramp: 's1' }, where: TO_START },
  'ramp-in-legs': {
    parts: ['s1', 's2.start.left', 's2.start.right'],
    values: { ramp: 's1', legs: ['s2.start.left', 's2.start.right'] },
    where: TO_START,
  },
  // 1.2192 - 0.21
  'hinge-short': { parts: ['s1', 's2'], values: { shared: 1.0092, least: 1.016 }, where: null },
  // 0.05 across 1.2192 m
  'ramp-corner-hangs': { parts: ['s1'], values: { gap: 0.06096 }, where: null },
  // At 0.59 m the bed is 0.125 in 1 down: 0.45 + 0.07375; 8 in.
  'step-high': { parts: ['s1'], values: { step: 0.52375, most: 0.2032 }, where: null },
  // 0.25 + 0.1524 = 0.4024, up to the next centimeter.
  'deck-under-level': { parts: [], values: { deck: 0.25, high: 0.25 }, where: { '/dock/deckHeight': 0.41 } },
  'deck-near-level': {
    parts: [],
    values: { over: 0.152, least: 0.1524 },
    where: { '/dock/deckHeight': 0.41 },
  },
  // 0.1204 + 0.1524 + 0.1778 = 0.4506
  'crest-near-frame': {
    parts: [],
    values: { crest: 0.1204, clear: 0.1518, least: 0.1524 },
    where: { '/dock/deckHeight': 0.46 },
  },
  // 0.2723 + 0.1524 + 0.1778 = 0.6025
  'crest-reaches-frame': {
    parts: [],
    values: { crest: 0.2723, clear: -0.0001, least: 0.1524 },
    where: { '/dock/deckHeight': 0.61 },
  },
  // 0.25 + 0.2002 - 0.45; 0.25 + 0.2002 + 0.1524 + 0.1778 = 0.7804
  'deck-awash': { parts: [], values: { over: 0.0002, high: 0.25 }, where: { '/dock/deckHeight': 0.79 } },
  // -0.3 + 0.14 + 0.6096 = 0.4496, down to the centimeter.
  'step-to-boat': { parts: [], values: { step: 0.61, most: 0.6096 }, where: { '/dock/deckHeight': 0.44 } },
  'deck-guard': { parts: [], values: { drop: 0.763, most: 0.762 }, where: { '/dock/deckHeight': 0.46 } },
  // One section more is 2.4638 m farther out: 0.2464 m deeper.
  'boat-aground': {
    parts: ['s5'],
    values: { depth: 0.63914, draught: 0.64 },
    where: { '/dock/sections': 6 },
  },
  // 0.2722 - 0.3 x 0.95; 0.2722 - 0.3 x 0.6
  'frame-in-bed': { parts: ['s2'], values: { sections: ['s2'], depth: 0.0128 }, where: TO_START },
  'frame-near-bed': {
    parts: ['s2'],
    values: { sections: ['s2'], clear: 0.0922, least: 0.1016 },
    where: TO_START,
  },
  // 0.45 + 2.453 + 0.1524 - 0.00635
  'leg-none-long-enough': {
    parts: LEGS,
    values: { legs: LEGS, required: 3.04905, longest: 3.048 },
    where: null,
  },
  // At -0.73 + 0.087313 the bank is 0.192806 m up: 0.45 - 0.192806.
  'leg-below-frame': {
    parts: ['s2.start.left', 's2.start.right'],
    values: { legs: ['s2.start.left', 's2.start.right'], height: 0.257194, least: 0.26035 },
    where: TO_START,
  },
  'leg-unpaired': {
    parts: ['h1.start.left', 'h1.end.left'],
    values: { legs: ['h1.start.left', 'h1.end.left'], from: 1.524 },
    where: null,
  },
  // 0.3556 - 0.200026
  'pads-overlap': {
    parts: ['h1.end.left', 'h2.start.left'],
    values: { a: 'h1.end.left', b: 'h2.start.left', by: 0.155574 },
    where: null,
  },
  'pad-on-slope': {
    parts: LEGS.slice(0, 4),
    values: { legs: LEGS.slice(0, 4), slope: 0.36, most: 0.35 },
    where: null,
  },
  'muck-without-mud-pad': {
    parts: LEGS,
    values: { legs: LEGS, sinkage: 0.25 },
    where: { '/dock/pad': 'mud-pad-14' },
  },
  // Legs 1.2192 - 2 x 0.087313 apart; (0.2722 + 0.4 - 0.49886) / 2 - 0.0254, over the pad 0.08255 less.
  'brace-does-not-fit': {
    parts: across('s2.start'),
    values: {
      pair: 's2.start',
      spacing: 1.044574,
      brace: ['brace-42'],
      bed: 0.06127,
      pad: -0.02128,
      frame: 0.06127,
    },
    where: null,
  },
  // (0.2722 + 0.479 - 0.49886) / 2 - 0.0254
  'brace-near-bed': {
    parts: across('s2.start'),
    values: { pair: 's2.start', clear: 0.10077, least: 0.0762 },
    where: null,
  },
  // (0.2722 + 0.54 - 0.49886) / 2 - 0.0254 - 0.08255
  'brace-near-pad': {
    parts: across('s2.start'),
    values: { pair: 's2.start', clear: 0.04872, least: 0.0254 },
    where: null,
  },
  // The higher bed 0.62 - 0.38 x 0.522287 = 0.42153 m down: (0.2722 + 0.42153 - 0.49886) / 2 - 0.0254
  'brace-near-frame': {
    parts: across('s2.start'),
    values: { pair: 's2.start', clear: 0.072035, least: 0.0508 },
    where: null,
  },
  'brace-left-out': {
    parts: across('s3.end'),
    values: { pair: 's3.end' },
    where: { '/dock/bracing/none/0': undefined },
  },
  'auger-on-rock': {
    parts: ['anchor-post.1'],
    values: { posts: ['anchor-post.1'] },
    where: { '/dock/extras/anchor-post': undefined },
  },
  // 0.45 + 0.1524 + 2.76 + 0.9144
  'post-too-short': {
    parts: ['anchor-post.1'],
    values: { posts: ['anchor-post.1'], required: 4.2768, longest: 4.2672 },
    where: null,
  },
  'extra-no-room': {
    parts: [],
    values: { extra: 'bumper', placed: 34, missing: 1 },
    where: { '/dock/extras/bumper': 34 },
  },
  'extra-no-place': {
    parts: [],
    values: { extra: 'bumper', section: 's3', edge: 'end', why: 'taken' },
    where: { '/dock/placed/0': undefined },
  },
  'soundings-differ': {
    parts: [],
    values: { x: 8, y: 0, depth: 0.9, x2: 8.05, y2: 0.06, depth2: 1.035 },
    where: null,
  },
  // (1.345 - 0.9) / 0.5
  'soundings-cliff': {
    parts: [],
    values: { x: 8, y: 0, x2: 8, y2: 0.5, slope: 0.89, most: 0.62 },
    where: null,
  },
  'soundings-over-deck': {
    parts: [],
    values: { count: 1, x: 6, y: 2, height: 0.46, deck: 0.45 },
    where: null,
  },
  'soundings-few': { parts: [], values: { wet: 2, least: 3 }, where: null },
  'soundings-far-apart': { parts: [], values: { from: 3, to: 9.2, gap: 6.2, most: 6.096 }, where: null },
  // 0.6096 + 0.0254 + 2 x 2.4384 + 0.0254 - 0.087313
  'soundings-aside': {
    parts: ['h2.end.left', 'h2.end.right'],
    values: { off: 5.449887, most: 3.048 },
    where: null,
  },
  'not-considered': { parts: [], values: { keys: ['site.soundings.landward'] }, where: null },
}

/** In their case here one step of the Design helps and makes nothing else worse. */
const HELPED = new Set([
  ...['unknown-code', 'unknown-id', 'catalog-differs', 'ramp-no-bank', 'ramp-in-legs'],
  ...[
    'ramp-bearing-short',
    'ramp-end-low',
    'deck-under-level',
    'deck-near-level',
    'crest-reaches-frame',
    'crest-near-frame',
  ],
  ...[
    'boat-aground',
    'deck-awash',
    'step-to-boat',
    'deck-guard',
    'frame-in-bed',
    'frame-near-bed',
    'leg-override-short',
  ],
  ...[
    'leg-below-frame',
    'muck-without-mud-pad',
    'brace-left-out',
    'auger-on-rock',
    'extra-no-room',
    'extra-no-place',
  ],
])

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

  for (const [code, { raise, neighbor }] of Object.entries(CASES)) {
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
      expect(offered.length > 0).toBe(HELPED.has(code))
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
  it.each(Object.keys(TOLD))('%s tells what by, in figures worked by hand', (code) => {
    const { raise } = CASES[code]!
    const { parts, values, where } = TOLD[code]!
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
