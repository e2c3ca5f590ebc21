/** A case for each check of the ramp and the step onto the dock. */
import { type Cases, flat, slope } from './support.ts'

const TO_START = { '/dock/start': null }

export const ramp: Cases = {
  'ramp-no-bank': {
    raise: { site: slope(0.8, 6), dock: { start: 6, sections: 2 } },
    neighbor: { site: slope(0.8, 6), dock: { start: 3, sections: 2 } },
    tells: { parts: ['s1'], values: { ramp: 's1' }, where: TO_START },
    helped: true,
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
    tells: {
      parts: ['s1', 's2.start.left', 's2.start.right'],
      values: { ramp: 's1', legs: ['s2.start.left', 's2.start.right'] },
      where: TO_START,
    },
    helped: true,
  },
  // A wall of 0.45 m; hinge at 0.7 - 0.0635 m; the ramp's end, 2.44 m from it, comes down at about start - 2.43 m.
  'ramp-bearing-short': {
    raise: { site: { shore: { kind: 'wall', height: 0.45 } }, dock: { deckHeight: 0.7, start: 2.35 } },
    neighbor: { site: { shore: { kind: 'wall', height: 0.45 } }, dock: { deckHeight: 0.7, start: 2.2 } },
    helped: true,
  },
  'ramp-slope-ada': { raise: { dock: { deckHeight: 0.85 } }, neighbor: { dock: { deckHeight: 0.7 } } },
  'ramp-end-low': { raise: { dock: { start: 1.2 } }, neighbor: { dock: { start: 1.05 } }, helped: true },
  // 1.2192 m across: 0.061 m under the hanging corner against 0.012.
  'ramp-corner-hangs': {
    raise: { site: { crossSlope: 0.05 } },
    neighbor: { site: { crossSlope: 0.01 } },
    // 0.05 across 1.2192 m
    tells: { parts: ['s1'], values: { gap: 0.06096 }, where: null },
  },
  'ramp-on-crest': {
    raise: { site: { shore: { kind: 'wall', height: 0.7 } } },
    neighbor: { site: { shore: { kind: 'wall', height: 0.42 } }, dock: { deckHeight: 0.7 } },
  },
  'step-high': {
    raise: { dock: { ramp: false, start: 0.6 } },
    neighbor: { dock: { ramp: false, start: -0.85, deckHeight: 0.45 } },
    // At 0.59 m the bed is 0.125 in 1 down: 0.45 + 0.07375; 8 in.
    tells: { parts: ['s1'], values: { step: 0.52375, most: 0.2032 }, where: null },
  },
}
