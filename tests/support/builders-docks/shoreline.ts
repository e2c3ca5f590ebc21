/** The first section and the ramp: banks, walls and levels. */
import { BANK, type BuildersDock, EDGE, lake, wind } from './form.ts'

export const SHORELINE: readonly BuildersDock[] = [
  {
    design: lake('Bluff Cove', [[-2, -1.8], EDGE, [3, 0.75], [6, 1.1], [10, 1.3]], wind(7, 200), {}),
    words: 'A steep bank, steps cut down to a ramp that lies near level a third of a meter up. Good.',
    // Ground 0.15 + 0.15 = 0.30 m up at −0.33; hinge axis 0.39 over a foot edge 0.11 below it: ramp rises 0.03 in 2.4 m.
    expect: 'fine',
    because: [],
    never: ['ramp-too-steep', 'ramp-no-bank', 'ramp-end-low', 'ramp-in-legs', 'frame-in-bed', 'buckles'],
  },
  {
    design: lake(
      'Harbor Wall',
      [
        [0, 0.5],
        [3, 0.7],
        [6, 0.85],
        [9, 1],
        [13, 1.15],
      ],
      { shore: { kind: 'wall', height: 0.45 }, ...wind(7, 200) },
      { ramp: false },
    ),
    words: 'A wall, the deck level with its top, firm sand before it: one steps over and walks out. Good.',
    // Legs 0.95 to 1.55 m, braced from 1.07. Wind 55 N·1.5 m = 82 Nm against 260; slides at 125 N.
    expect: 'fine',
    because: [],
    never: ['step-high', 'frame-in-bed', 'ramp-no-bank', 'buckles', 'goes-over', 'dock-slides'],
  },
  {
    design: lake(
      'Tilted Strand',
      [BANK, EDGE, [4, 0.4], [8, 0.7], [12, 0.95]],
      { crossSlope: 0.15, ...wind(6, 150) },
      {},
    ),
    words:
      'The beach falls off to the left. The ramp comes down on its right corner and the left one hangs a hand above the ground: it rocks under whoever steps on it. Dig in or shim.',
    // 0.15·1.22 = 0.18 m from corner to corner; a ramp that is held level by its hinge follows none of it. No check says so by a code
    // that is known here: only the verdict is held.
    expect: 'with-care',
    because: [],
    never: ['pad-on-slope', 'buckles', 'does-not-stand', 'ramp-too-steep', 'ramp-no-bank'],
  },
  {
    design: lake('Faraway Meadow', [[-10, -0.2], EDGE, [4, 0.35], [8, 0.6], [12, 0.8]], wind(6, 150), {}),
    words:
      'A wet meadow that rises a hand in ten meters. Dry ground for the ramp lies fifteen meters back, and a deck of that height would lie in the grass all the way.',
    // Ground at 0.30 m is at −15 m; a hinge 2.4 m from there has ground at 0.25 under it, and the frame's underside is at 0.27.
    expect: 'no',
    because: ['frame-in-bed', 'leg-below-frame', 'start-not-found', 'ramp-no-bank'],
    never: ['ramp-too-steep', 'leg-none-long-enough', 'deck-under-level'],
  },
  {
    design: lake('Tower Strand', [BANK, EDGE, [4, 0.4], [8, 0.7], [12, 0.95]], wind(6, 150), {
      deckHeight: 1.4,
    }),
    words:
      'A deck at chest height over a low beach, and one ramp of eight feet down to it: a slide, not a ramp.',
    // Hinge axis 1.34, foot edge on ground at 0.30: asin(1.04/2.44) − asin(0.11/2.44) = 25.1° − 2.7° = 22.4°, 0.41 over the 1 in 3.
    expect: 'no',
    because: ['ramp-too-steep'],
    never: ['frame-in-bed', 'leg-none-long-enough', 'deck-under-level', 'crest-reaches-frame'],
  },
  {
    design: lake(
      'Reservoir Arm',
      [BANK, EDGE, [4, 0.4], [8, 0.7], [12, 0.95]],
      { levels: { low: -0.6, high: 0.6 }, ...wind(6, 150) },
      {},
    ),
    words:
      'A reservoir that comes up two feet in spring, and a deck at a foot and a half. It would be under water: raise it.',
    // 0.45 of deck under 0.60 of level.
    expect: 'no',
    because: ['deck-under-level'],
    never: ['deck-near-level', 'leg-none-long-enough', 'ramp-too-steep'],
  },
  {
    design: lake(
      'Spring Rise',
      [BANK, EDGE, [4, 0.4], [8, 0.7], [12, 0.95]],
      { levels: { low: -0.2, high: 0.38 } },
      {},
    ),
    words:
      'The high level comes to a hand under the planks: dry, and too near for comfort. Raise it by four inches.',
    // 0.45 − 0.38 = 0.07 m, 0.15 wanted.
    expect: 'with-care',
    because: ['deck-near-level'],
    never: ['deck-under-level', 'ramp-too-steep', 'buckles', 'does-not-stand'],
  },
  {
    design: lake('Family Bay', [BANK, EDGE, [4, 0.4], [8, 0.65], [12, 0.85]], wind(8, 300), {
      frame: '5x8',
      extras: { bumper: 2, 'anchor-post': 2 },
    }),
    words: 'Five foot frames, waist deep, two posts and two bumpers: a broad, quiet dock for children. Good.',
    // Wind 72 N a section against 0.25·0.6·1000 = 150 N; 1915·3.7 = 7.1 kN + 1.0, 4.0 kN a foot: 90 kPa just under the 96 of sand.
    // That is also what the set bolts are trusted with, 4 kN: a builder would not see it, a strict reckoner may warn.
    expect: ['fine', 'with-care'],
    because: [],
    never: ['foot-sinks', 'dock-slides', 'goes-over', 'buckles', 'brace-does-not-fit', 'post-too-short'],
  },
]
