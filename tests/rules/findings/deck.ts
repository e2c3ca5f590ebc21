/** A case for each check of the deck and its frames: over the lake, its waves, the boat and the ground. */
import { type Cases, flat, slope } from './support.ts'

const boat = (height: number) => ({ length: 5, height, draught: 0.3, mass: 400, side: 'left' })

const berth = (length: number, section: string, edge: string, id = 'a') => ({
  id,
  length,
  height: 0.6,
  draught: 0.3,
  mass: 400,
  section,
  edge,
})
const HEADED = { start: 2, head: { shape: 'left', sections: 1 } }

const TO_START = { '/dock/start': null }

export const deck: Cases = {
  'deck-under-level': {
    raise: { dock: { deckHeight: 0.25 } },
    neighbor: { dock: { deckHeight: 0.26 } },
    // 0.25 + 0.1524 = 0.4024, up to the next centimeter.
    tells: { parts: [], values: { deck: 0.25, high: 0.25 }, where: { '/dock/deckHeight': 0.4064 } },
    helped: true,
  },
  // 6 in = 0.1524 m over the high level of 0.25 m.
  'deck-near-level': {
    raise: { dock: { deckHeight: 0.402 } },
    neighbor: { dock: { deckHeight: 0.4025 } },
    tells: {
      parts: [],
      values: { over: 0.152, least: 0.1524 },
      where: { '/dock/deckHeight': 0.4064 },
    },
    helped: true,
  },
  // Underside at 0.2722 m, less 6 in: 0.1198 m, the crest (0.7) of a wake of 0.1711 m.
  // 0.7 of 0.172 m = 0.1204, 0.1518 under the frame's 0.2722 where 0.1524 is asked for; 0.7 of 0.389 m = 0.2723.
  'crest-near-frame': {
    raise: { site: { wake: 0.172 } },
    neighbor: { site: { wake: 0.171 } },
    // 0.1204 + 0.1524 + 0.1778 = 0.4506
    tells: {
      parts: [],
      values: { crest: 0.1204, clear: 0.1518, least: 0.1524 },
      where: { '/dock/deckHeight': 0.4572 },
    },
    helped: true,
  },
  'crest-reaches-frame': {
    raise: { site: { wake: 0.389 } },
    neighbor: { site: { wake: 0.388 } },
    // 0.2723 + 0.1524 + 0.1778 = 0.6025
    tells: {
      parts: [],
      values: { crest: 0.2723, clear: -0.0001, least: 0.1524 },
      where: { '/dock/deckHeight': 0.6096 },
    },
    helped: true,
  },
  // Deck at 0.45 m, lake at 0.25 m: 0.2 m, the crest of a wake of 0.2857 m.
  'deck-awash': {
    raise: { site: { wake: 0.286 } },
    neighbor: { site: { wake: 0.285 } },
    // 0.25 + 0.2002 - 0.45; 0.25 + 0.2002 + 0.1524 + 0.1778 = 0.7804
    tells: { parts: [], values: { over: 0.0002, high: 0.25 }, where: { '/dock/deckHeight': 0.7874 } },
    helped: true,
  },
  // Deck 0.45 m over a lake 0.3 m lower: 0.75 m, less 24 in = 0.6096 m: a boat's side of 0.1404 m.
  'step-to-boat': {
    raise: { dock: { boat: boat(0.14) } },
    neighbor: { dock: { boat: boat(0.141) } },
    // -0.3 + 0.14 + 0.6096 = 0.4496, down to the centimeter.
    tells: { parts: [], values: { step: 0.61, most: 0.6096 }, where: { '/dock/deckHeight': 0.4445 } },
    helped: true,
  },
  // To the lake at its lowest 0.3 m lower: 0.762 m = 30 in from a deck at 0.462 m.
  'deck-guard': {
    raise: { dock: { deckHeight: 0.463 } },
    neighbor: { dock: { deckHeight: 0.462 } },
    tells: { parts: [], values: { drop: 0.763, most: 0.762 }, where: { '/dock/deckHeight': 0.4572 } },
    helped: true,
  },
  // The fifth section's middle is 10.6106 m out, three sections of 2.4384 m with gaps of 0.0254 m from 2 m and a half: 5 m of boat begin at
  // 8.1106 m, 0.8111 m deep, with the lake 0.3 m lower 0.5111 m.
  'boat-aground': {
    raise: { site: slope(0.1), dock: { start: 2, boat: { ...boat(0.6), draught: 0.512 } } },
    neighbor: { site: slope(0.1), dock: { start: 2, boat: { ...boat(0.6), draught: 0.511 } } },
    // One section more is 2.4638 m farther out: 0.2464 m deeper.
    tells: {
      parts: ['s5'],
      values: { depth: 0.51106, draught: 0.512, short: 0.00094 },
      where: { '/dock/sections': 6 },
    },
    helped: true,
  },
  // Middle of the fourth section: 8.1468 m; the head beside the fifth begins at 11.8298 - 1.2192 = 10.6106 m, half a boat of 5 m ends at 10.6468 m.
  'boat-on-section': {
    raise: { site: flat(1.2), dock: { ...HEADED, boats: [{ ...berth(5, 's4', 'left'), along: 1.2192 }] } },
    neighbor: { site: flat(1.2), dock: { ...HEADED, boats: [berth(4.92, 's4', 'left')] } },
    tells: {
      parts: ['h1'],
      values: { boat: 5, section: 'h1', by: 0.0362 },
      where: {
        '/dock/boats/0/section': 's5',
        '/dock/boats/0/edge': 'right',
        '/dock/boats/0/along': undefined,
      },
    },
    helped: true,
  },
  // Middles of two sections are 2.4638 m apart.
  'boats-overlap': {
    raise: { site: flat(1.2), dock: { boats: [berth(2.5, 's5', 'right'), berth(2.5, 's4', 'right', 'b')] } },
    neighbor: {
      site: flat(1.2),
      dock: { boats: [berth(2.46, 's5', 'right'), berth(2.46, 's4', 'right', 'b')] },
    },
    tells: {
      parts: ['s5', 's4'],
      values: { a: 2.5, b: 2.5, by: 0.0362 },
      where: { '/dock/boats/1/section': 's5', '/dock/boats/1/edge': 'left' },
    },
    helped: true,
  },
  // Underside at 0.2722 m; a bank of 0.3 in 1 is that high at -0.907 m.
  'frame-in-bed': {
    raise: { dock: { start: -0.95 } },
    neighbor: { dock: { start: -0.9 } },
    // 0.2722 - 0.3 x 0.95; 0.2722 - 0.3 x 0.6
    tells: { parts: ['s2'], values: { sections: ['s2'], depth: 0.0128 }, where: TO_START },
    helped: true,
  },
  // 4 in = 0.1016 m under it: 0.1706 m, at -0.569 m.
  'frame-near-bed': {
    raise: { dock: { start: -0.6 } },
    neighbor: { dock: { start: -0.55 } },
    tells: {
      parts: ['s2'],
      values: { sections: ['s2'], clear: 0.0922, least: 0.1016 },
      where: TO_START,
    },
    helped: true,
  },
}
