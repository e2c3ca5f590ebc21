/** A case for each check of legs and their pads. */
import { type Cases, flat, LEGS, slope } from './support.ts'

const TO_START = { '/dock/start': null }

export const legs: Cases = {
  // Longest leg 3.048 m: set height up to 3.048 + 0.00635 - 0.1524 = 2.90195 m, depth 2.45195 m.
  'leg-none-long-enough': {
    raise: { site: flat(2.453) },
    neighbor: { site: flat(2.45) },
    // 0.45 + 2.453 + 0.1524 - 0.00635
    tells: {
      parts: LEGS,
      values: { legs: LEGS, required: 3.04905, longest: 3.048 },
      where: null,
    },
  },
  'leg-override-short': {
    raise: { dock: { overrides: { 's3.end.left': { stock: 1.2192 } } } },
    neighbor: { dock: { overrides: { 's3.end.left': { stock: 1.8288 } } } },
    helped: true,
  },
  // Deck to sleeve 0.1778 m and a pad of 0.08255 m: 0.26035 m. At the first leg, 0.0873 m in, the bank is 0.3 in 1.
  'leg-below-frame': {
    raise: { dock: { start: -0.73 } },
    neighbor: { dock: { start: -0.69 } },
    // At -0.73 + 0.087313 the bank is 0.192806 m up: 0.45 - 0.192806.
    tells: {
      parts: ['s2.start.left', 's2.start.right'],
      values: { legs: ['s2.start.left', 's2.start.right'], height: 0.257194, least: 0.26035 },
      where: TO_START,
    },
    helped: true,
  },
  // 24 in = 0.6096 m over the deck.
  'leg-tall-above-deck': { raise: { dock: { reserve: 0.6 } }, neighbor: { dock: { reserve: 0.1 } } },
  'leg-unpaired': {
    raise: { dock: { head: { shape: 'wide', sections: 1 } } },
    neighbor: { dock: { head: { shape: 'left', sections: 1 } } },
    tells: {
      parts: ['h1.start.left', 'h1.end.left'],
      values: { legs: ['h1.start.left', 'h1.end.left'], from: 1.524 },
      where: null,
    },
  },
  // Sections side by side: legs 2 x 0.087313 + 0.0254 = 0.200026 m apart; mud pads of 14 in = 0.3556 m, standard ones of 7 in that way.
  'pads-overlap': {
    raise: { dock: { head: { shape: 'wide', sections: 2 }, pad: 'mud-pad-14' } },
    neighbor: { dock: { head: { shape: 'wide', sections: 2 } } },
    // 0.3556 - 0.200026
    tells: {
      parts: ['h1.end.left', 'h2.start.left'],
      values: { a: 'h1.end.left', b: 'h2.start.left', by: 0.155574 },
      where: null,
    },
  },
  'pad-on-slope': {
    raise: { site: slope(0.36, 6), dock: { sections: 2 } },
    neighbor: { site: slope(0.34, 6), dock: { sections: 2 } },
    tells: {
      parts: LEGS.slice(0, 4),
      values: { legs: LEGS.slice(0, 4), slope: 0.36, most: 0.35 },
      where: null,
    },
  },
  'muck-without-mud-pad': {
    raise: { site: { bottom: 'muck' } },
    neighbor: { site: { bottom: 'muck' }, dock: { pad: 'mud-pad-14' } },
    tells: {
      parts: LEGS,
      values: { legs: LEGS, sinkage: 0.25 },
      where: { '/dock/pad': 'mud-pad-14' },
    },
    helped: true,
  },
}
