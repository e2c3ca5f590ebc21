/** Wind, waves, boats and crowds: what comes from outside, and what holds against it. */
import { BANK, type BuildersDock, EDGE, lake, type Spot, wind } from './form.ts'

const POINT: readonly Spot[] = [BANK, EDGE, [4, 0.5], [8, 0.85], [12, 1.1]]
const GALE = wind(15, 3000)
/** Clear of the waves: crest 0.7·1.27·0.56 = 0.49 m, frame's underside 0.67. */
const HIGH_DECK = { deckHeight: 0.85, sections: 5 }

export const EXPOSED: readonly BuildersDock[] = [
  {
    design: lake('Gannet Point', POINT, GALE, HIGH_DECK),
    words:
      'An open point, three kilometers of lake to windward, and nothing but feet. A gale walks it off its place: posts, or take it out.',
    // Wind 0.458·225·2.44 = 252 N a section against 125 of friction, waves not counted. Over: 252·1.6 = 400 Nm against 260.
    expect: 'with-care',
    because: ['goes-over', 'dock-slides'],
    never: ['crest-reaches-frame', 'deck-awash', 'buckles', 'does-not-stand', 'foot-sinks'],
  },
  {
    design: lake('Gannet Point, posts', POINT, GALE, {
      ...HIGH_DECK,
      extras: { 'anchor-post': 4 },
    }),
    words:
      'The same point with four posts in sand. They help and do not settle it: a post three feet down is no pile. Warned of still.',
    // 4·252 = 1.0 kN of wind plus waves on ten legs, some 0.3 kN; friction 500 N + 4·80 to 110 N (the deck stands 1.6 to 1.9 m up) = 0.9 kN.
    expect: 'with-care',
    because: ['goes-over', 'dock-slides', 'hooks-lift'],
    never: ['crest-reaches-frame', 'buckles', 'does-not-stand', 'post-too-short', 'auger-on-rock'],
  },
  {
    design: lake(
      'Bittern Flats',
      [BANK, EDGE, [4, 0.4], [8, 0.65], [12, 0.85]],
      { bottom: 'muck', ...wind(14, 2000) },
      { pad: 'mud-pad-14', deckHeight: 0.7, extras: { 'anchor-post': 2 } },
    ),
    words:
      'Two posts in muck on an open shore. They stand there like straws in pudding: the first real wind moves the dock, posts and all.',
    // Wind 1.12·196 = 220 N a section, three of them 660 N, and waves; muck gives no friction to count on, two posts 2·20 = 40 N.
    expect: 'with-care',
    because: ['dock-slides', 'goes-over'],
    never: ['muck-without-mud-pad', 'post-too-short', 'buckles', 'does-not-stand', 'auger-on-rock'],
  },
  {
    design: lake(
      'Broadwater Beach',
      [BANK, EDGE, [4, 0.4], [8, 0.7], [12, 0.95]],
      { levels: { low: -0.1, high: 0.1 }, ...wind(12, 3000) },
      { deckHeight: 0.3 },
    ),
    words:
      'A foot over the water on an open lake. In any blow the waves are in the frame, with the lake up they are over the planks.',
    // H_s = 5.112e-4·15.1·54.8 = 0.42 m; crest 0.7·1.27·0.42 = 0.38 m against an underside at 0.30 − 0.18 = 0.12.
    expect: 'with-care',
    because: ['crest-reaches-frame', 'deck-awash'],
    never: ['deck-under-level', 'deck-near-level', 'buckles', 'leg-none-long-enough'],
  },
  {
    design: lake('Regatta Cove', [BANK, EDGE, [4, 0.5], [8, 0.8], [12, 1.05]], wind(7, 200), {
      head: { shape: 'tee', sections: 2 },
      boat: { length: 5.5, height: 0.8, draught: 0.4, mass: 900, side: 'right' },
    }),
    words:
      'A T with a runabout at it. Fine to walk on; a boat that comes in a little fast shifts the whole head. Posts at the T, or come in slowly.',
    // Bump 0.5·900·0.3²·0.75 = 30 J; into some 60 kN/m that is sqrt(2·30·60000) = 1.9 kN. Five sections on sand: 5·209 = 1.0 kN.
    expect: 'with-care',
    because: ['dock-slides', 'tips', 'hooks-lift'],
    never: [
      'boat-aground',
      'sections-overlap',
      'joint-short',
      'buckles',
      'does-not-stand',
      'crest-reaches-frame',
    ],
  },
  {
    design: lake('Pontoon Arm', [BANK, EDGE, [4, 0.8], [7, 1.4], [10, 1.8], [14, 1.8]], wind(9, 500), {
      sections: 5,
      boat: { length: 7, height: 1.2, draught: 0.35, mass: 1100, side: 'left' },
    }),
    words:
      'A four foot dock in chest-deep water and more, with a pontoon boat tied to it all summer. The boat is the sail. It wants posts, or a wider dock.',
    // Wind on the boat 0.613·(1.44·9)²·1.2·0.75·7·1.2 = 780 N and 91 N a section at 2.1 m: (780 + 364)·2.1 = 2.4 kNm, light the dock holds
    // 4·260 = 1.0. Slides: 1.1 kN over 500 N.
    expect: 'with-care',
    because: ['goes-over', 'dock-slides', 'tips'],
    never: ['boat-aground', 'buckles', 'brace-left-out', 'leg-none-long-enough', 'brace-does-not-fit'],
  },
  {
    design: lake('Tender Landing', [BANK, EDGE, [3, 0.7], [6, 1.2], [9, 1.4]], wind(6, 200), {
      sections: 3,
      boat: { length: 7.5, height: 1, draught: 0.5, mass: 2800, side: 'right' },
    }),
    words:
      'Nearly three tons of cruiser at two sections on legs. A light touch at the end is more than they weigh: it moves them, or bends a leg.',
    // 0.5·2800·0.09·0.75 = 95 J; into 60 kN/m 3.4 kN. Two sections slide at 2·209 = 420 N; held, 3.4 kN at 1.6 m on the last
    // pair: 2.7 kNm a leg, braced perhaps half of that, against 1.8. Beside the last section, whose middle is 5.08 m out, it reaches in to
    // 1.33 m: 0.31 m deep there, 0.11 m at the low level, and it draws 0.5 m.
    expect: ['with-care', 'no'],
    because: ['dock-slides', 'tips', 'leg-overloaded', 'goes-over', 'boat-aground'],
    never: ['leg-none-long-enough', 'does-not-stand', 'buckles'],
  },
  {
    design: lake('Fireworks Bay', [BANK, EDGE, [4, 0.4], [8, 0.65], [12, 0.85], [16, 1]], wind(7, 200), {
      frame: '4x10',
      sections: 5,
      load: 2873,
    }),
    words:
      'Ten foot frames packed with people on the Fourth. The frames carry it, and so do ten by twelve pads on sand: just.',
    // 2873·3.05·1.22 = 10.7 kN + 1.0 a section: 5.8 kN a foot. Rail: 1.9 kN/m·2.87²/8 = 2.0 kNm on 45 cm³ = 44 MPa, allowed beside welds
    // 103/1.65 = 62. Leg 1.2 m: some 20 kN, 3.5 times.
    // First verdict: with care, by foot-sinks and sleeve-slips, for the 7 x 10 in pad (130 kPa over the 96 of sand) and the set bolts at 4 kN
    // that the shop had then. It sells 10 x 12 in pads since: 5.8/0.0774 = 75 kPa; and bolts seen to hold 12 kN: 8 kN trusted.
    expect: 'fine',
    because: [],
    never: [
      'rail-overloaded',
      'buckles',
      'does-not-stand',
      'leg-none-long-enough',
      'muck-without-mud-pad',
      'foot-sinks',
      'sleeve-slips',
    ],
  },
  {
    design: lake(
      'Fireworks Bay, clay',
      [BANK, EDGE, [4, 0.4], [8, 0.65], [12, 0.85], [16, 1]],
      { bottom: 'clay', ...wind(7, 200) },
      { frame: '4x10', sections: 5, load: 2873 },
    ),
    words:
      'The same crowd over clay. Clay bears three quarters of what sand does: the feet go in a little. Take the wide pads for that day.',
    // 5.8 kN on 0.0774 m² = 75 kPa over the 72 of clay; on 14 x 14 in 46.
    expect: 'with-care',
    because: ['foot-sinks'],
    never: ['rail-overloaded', 'buckles', 'does-not-stand', 'sleeve-slips'],
  },
]
