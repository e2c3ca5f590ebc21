/** A case for each check of the plan, its codes and its sections. */
import { type Catalog, demoCatalog } from '../../../rules/index.ts'
import type { Cases, Change } from './support.ts'

const planned = (...items: Record<string, unknown>[]): Change => ({
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

/** The demo shop, whose people carry no more than so much, kg. */
const carriesLess = (person: number): Catalog => ({
  ...demoCatalog,
  packing: { ...demoCatalog.packing, person },
})

export const plan: Cases = {
  'unknown-code': {
    raise: { dock: { frame: '6x8' } },
    neighbor: { dock: { frame: '5x8' } },
    tells: {
      parts: ['s1', 's2', 's3', 's4', 's5'],
      values: { what: 'frame', code: '6x8', known: ['4x8', '5x8', '4x10', 'corner-45'] },
      where: { '/dock/frame': '4x8' },
    },
    helped: true,
  },
  'unknown-id': {
    raise: { dock: { overrides: { 's9.end.left': { stock: 1.524 } } } },
    neighbor: { dock: { overrides: { 's3.end.left': { stock: 1.524 } } } },
    tells: {
      parts: [],
      values: { id: 's9.end.left', what: 'leg' },
      where: { '/dock/overrides/s9.end.left': undefined },
    },
    helped: true,
  },
  'catalog-differs': {
    raise: { catalog: { id: 'quillet-dock-works', version: '2025-1' } },
    neighbor: { catalog: { id: 'quillet-dock-works', version: '2026-1' } },
    tells: {
      parts: [],
      values: { made: 'quillet-dock-works 2025-1', now: 'quillet-dock-works 2026-1' },
      where: { '/catalog': { id: 'quillet-dock-works', version: '2026-1' } },
    },
    helped: true,
  },
  'section-unreachable': {
    raise: planned(next('s3', 's4'), next('s4', 's3')),
    neighbor: planned(next('s3', 's2'), next('s4', 's3')),
    tells: { parts: ['s3', 's4'], values: { sections: ['s3', 's4'] }, where: null },
  },
  'sections-overlap': {
    raise: planned(
      next('s3', 's2'),
      { id: 'h1', on: 's2', edge: 'left', with: 'start', along: 2 },
      { id: 'h2', on: 's3', edge: 'left', with: 'start', along: 0 },
    ),
    neighbor: planned(next('s3', 's2'), { id: 'h2', on: 's3', edge: 'left', with: 'start', along: 0 }),
    tells: { parts: ['h1', 'h2'], values: { a: 'h1', b: 'h2' }, where: null },
  },
  // Two hooks set in by 10 in each, brackets 4 in wide side by side: 24 in = 0.6096 m of shared edge, of the 1.2192 m of a 4 ft edge.
  'joint-short': {
    raise: planned(next('s3', 's2', { along: 0.61 })),
    neighbor: planned(next('s3', 's2', { along: 0.609 })),
    // 1.2192 - 0.61
    tells: {
      parts: ['s2', 's3'],
      values: { host: 's2', guest: 's3', shared: 0.6092, least: 0.6096 },
      where: null,
    },
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
    // 1.2192 - 0.21
    tells: { parts: ['s1', 's2'], values: { shared: 1.0092, least: 1.016 }, where: null },
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
    // 6 in over the high level of 0.25 m.
    tells: { parts: [], values: { rule: 'ramp', wanted: 0.4024 }, where: null },
  },
  // Four carry 4 x 29 kg = 116 kg; frames of 5 x 8 ft weigh under 60 kg as carried, so a shop whose people carry 12 kg each finds it heavy.
  'lift-heavy': {
    raise: { dock: { frame: '5x8' }, shop: carriesLess(12) },
    neighbor: { dock: { frame: '5x8' } },
  },
  // A wall hides what was sounded behind it; bearing and benchmark are on the papers.
  'not-considered': {
    raise: { site: { shore: { kind: 'wall', height: 0.42 } }, dock: { deckHeight: 0.7 } },
    neighbor: { site: { bearing: 30, benchmark: { name: 'a bolt', above: 1 } } },
    tells: { parts: [], values: { keys: ['site.soundings.landward'] }, where: null },
  },
}
