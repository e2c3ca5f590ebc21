/** Docks on quiet water: what a builder sets without a second thought, or with one. */
import { BANK, type BuildersDock, EDGE, lake, wind } from './form.ts'

export const SHELTERED: readonly BuildersDock[] = [
  {
    design: lake('Tansy Cove', [BANK, EDGE, [4, 0.4], [8, 0.7], [12, 1]], wind(7, 150), {}),
    words:
      'Four sections on sand in a cove, knee to waist deep: the dock that every builder starts with. Good.',
    // Wind 1.12·49 = 55 N a section and little wave (H_s 0.05 m), against 125 N of friction. Over: 55·1.0 m = 55 Nm against 260.
    // Legs 1.2 m: 3.3 kN, sway buckling of one π²·19.3/(4·1.0²) = 48 kN. Feet 72 kPa under the 96 of sand.
    expect: 'fine',
    because: [],
    never: [
      'buckles',
      'does-not-stand',
      'goes-over',
      'dock-slides',
      'leg-overloaded',
      'foot-sinks',
      'crest-reaches-frame',
    ],
  },
  {
    design: lake(
      'Pebble Reach',
      [BANK, EDGE, [4, 0.45], [8, 0.75], [12, 1.05]],
      { bottom: 'gravel', ...wind(7, 200) },
      { extras: { bumper: 2, ladder: 1 } },
    ),
    words:
      'Gravel, sheltered, two bumpers and a ladder at the end: firm under foot, nothing to say against it.',
    // Friction 175 N a section against 55 of wind. 72 kPa under the 144 of gravel. Ladder 8.6 kg at one edge: 84 N·0.6 m on 2 kN of dock.
    expect: 'fine',
    because: [],
    never: [
      'foot-sinks',
      'dock-slides',
      'goes-over',
      'buckles',
      'extra-no-room',
      'post-too-short',
      'muck-without-mud-pad',
    ],
  },
  {
    design: lake(
      'Long Sedge Flats',
      [
        BANK,
        EDGE,
        [5, 0.3],
        [10, 0.4],
        [16, 0.5],
        [22, 0.55],
        [28, 0.6],
        [34, 0.65],
        [40, 0.7],
        [46, 0.75],
        [52, 0.8],
      ],
      wind(7, 150),
      { sections: 20 },
    ),
    words:
      'Twenty sections over shallow flats. Long, and yet no harder than four: each section stands on its own legs.',
    // Each section as in a cove: 55 N of wind against 125. Along it nothing sums up: the end gets 55·(1.22/2.44) N. Legs 0.8 to 1.25 m.
    expect: 'fine',
    because: [],
    never: [
      'buckles',
      'does-not-stand',
      'leg-overloaded',
      'leg-none-long-enough',
      'goes-over',
      'soundings-far-apart',
    ],
  },
  {
    design: lake(
      'Slate Ledge',
      [BANK, EDGE, [3, 0.4], [6, 0.6], [9, 0.8], [13, 1]],
      { bottom: 'rock', ...wind(7, 200) },
      {},
    ),
    words:
      'A rock shelf in the lee of a point: feet stand as on a floor, and no posts are asked of the rock. Good.',
    // 175 N a section of friction against 55 of wind. Rock bears hundreds of kPa, 72 asked.
    expect: 'fine',
    because: [],
    never: ['auger-on-rock', 'foot-sinks', 'dock-slides', 'goes-over', 'buckles'],
  },
  {
    design: lake(
      'Slate Ledge, with posts',
      [BANK, EDGE, [3, 0.4], [6, 0.6], [9, 0.8], [13, 1]],
      { bottom: 'rock', ...wind(7, 200) },
      { extras: { 'anchor-post': 2 } },
    ),
    words:
      'The same shelf with two anchor posts. An auger does not go into rock: as ordered it cannot be set.',
    // Nothing to work out: embedment 0, holds 0.
    expect: 'no',
    because: ['auger-on-rock'],
    never: ['buckles', 'does-not-stand', 'foot-sinks'],
  },
  {
    design: lake('Crook Bay', [BANK, EDGE, [4, 0.4], [8, 0.6], [12, 0.75], [16, 0.85]], wind(7, 200), {
      sections: 5,
      head: { shape: 'right', sections: 1 },
    }),
    words: 'An L in a shallow bay. The foot of the L stiffens it the other way: good.',
    // Five standing sections, 5·834 = 4.2 kN, light 0.6·0.25·4.2 kN = 625 N; wind from the side on four of 2.44 m and one of 1.22: 250 N.
    expect: 'fine',
    because: [],
    never: ['joint-short', 'sections-overlap', 'buckles', 'goes-over', 'dock-slides', 'leg-overloaded'],
  },
  {
    design: lake('Sunning Bay', [BANK, EDGE, [4, 0.35], [8, 0.55], [12, 0.7], [16, 0.8]], wind(7, 200), {
      sections: 5,
      head: { shape: 'wide', sections: 2 },
    }),
    words:
      'Two more sections beside the last two, for chairs. Wide and low: it stands better than the run that leads to it.',
    // The head is 2.46 m wide: against going over 4·0.6·834·1.1 = 2.2 kNm, wind on its edge 110 N·1.1 m = 0.12 kNm.
    expect: 'fine',
    because: [],
    never: ['sections-overlap', 'joint-short', 'goes-over', 'dock-slides', 'buckles', 'does-not-stand'],
  },
  {
    design: lake(
      'Stepping Cove',
      [BANK, EDGE, [3, 0.4], [6, 0.7], [9, 0.9]],
      {},
      { sections: 1, ramp: false },
    ),
    words:
      'One section alone, no ramp, half over the beach: a knee-high step up from wet sand, and four legs with nothing beside them. It stands; the step wants a block.',
    // Frame clears the bank by 0.1 m where ground is at 0.45 − 0.18 − 0.10 = 0.17 m up: bank 0.3 in 1, so start near −0.57. Step
    // 0.45 − 0.17 = 0.28 m, over the 0.20 of the shop. A shove of 890 N on 834 N of section slides it, but the feet that shove stand on it.
    expect: 'with-care',
    because: ['step-high'],
    never: ['buckles', 'does-not-stand', 'ramp-no-bank', 'frame-in-bed', 'leg-none-long-enough'],
  },
]
