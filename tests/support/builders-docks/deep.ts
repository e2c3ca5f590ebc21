/** Deep water, tall decks and soft bottoms: where length of leg and what it stands on decide. */
import { BANK, type BuildersDock, EDGE, lake, type Spot, wind } from './form.ts'

/** Two meters of water from the second section on. */
const DROP: readonly Spot[] = [BANK, EDGE, [4, 1.3], [6.5, 2], [10, 2], [14, 2]]
const TALL = { deckHeight: 0.85, sections: 5 }
const MUCK: readonly Spot[] = [BANK, EDGE, [4, 0.4], [8, 0.65], [12, 0.85]]

export const DEEP: readonly BuildersDock[] = [
  {
    design: lake('Stilt Bay, no braces', DROP, wind(6, 200), {
      ...TALL,
      bracing: { none: ['s2.end', 's3.end', 's4.end', 's5.end'] },
    }),
    words:
      'A tall deck on two meters of water with every brace left at the shop: it leans over as soon as it fills. Not to be set.',
    // Legs 2.67 m from bed to frame: one sways out at π²·19.3/(4·2.67²) = 6.7 kN in a rigid sleeve, some 4 kN in a bolted one with play;
    // 3.3 kN stand on it: factor 1.2 to 2. A shove of 890 N on two such legs: 445·2.67 = 1.2 kNm before it is half as much again.
    expect: 'no',
    because: ['buckles', 'leg-overloaded', 'does-not-stand'],
    never: ['leg-none-long-enough', 'pad-on-slope', 'deck-under-level', 'crest-reaches-frame'],
  },
  {
    design: lake('Stilt Bay, braced', DROP, wind(6, 200), TALL),
    words:
      'The same deck with its braces. Across it is a truss and stands; lengthwise the two shallow pairs hold it. High and light still: some would add posts.',
    // Along: shallow legs 2·3·19.3/1.12³ = 82 kN/m in rigid sleeves, half of it in bolted, against ΣP/L = 13 kN/m: factor over 3. Wind
    // 40 N·2.75 m = 111 Nm against 260. A shove: 890·2.85 = 2.5 kNm over 4·834·0.52 = 1.7 kNm, but the feet slide at about as much.
    expect: ['fine', 'with-care'],
    because: [],
    never: [
      'buckles',
      'does-not-stand',
      'brace-left-out',
      'sways-across',
      'brace-does-not-fit',
      'leg-none-long-enough',
    ],
  },
  {
    design: lake('Peat Hollow, bare pads', MUCK, { bottom: 'muck' }, {}),
    words:
      'Muck, and the small pads that were in the van. Every foot goes down by a hand and goes on. Take mud pads.',
    // 3.3 kN on 0.045 m² = 72 kPa; soft muck of 3 to 5 kPa cohesion gives way at 6 c = 18 to 30 kPa.
    expect: 'with-care',
    because: ['muck-without-mud-pad', 'foot-sinks'],
    never: ['buckles', 'leg-none-long-enough', 'ramp-too-steep', 'frame-in-bed'],
  },
  {
    design: lake('Peat Hollow, mud pads', MUCK, { bottom: 'muck' }, { pad: 'mud-pad-14' }),
    words: 'The same muck with mud pads, out of the wind: what is done there, and re-leveled once a summer.',
    // 3.3 kN on 0.126 m² = 26 kPa with the deck full, 0.45 kN = 4 kPa empty, against 18 to 30 kPa: holds as it is used, full only just.
    expect: ['fine', 'with-care'],
    because: [],
    never: ['muck-without-mud-pad', 'buckles', 'leg-none-long-enough', 'does-not-stand', 'goes-over'],
  },
  {
    design: lake(
      'Rushy Narrows',
      [
        BANK,
        EDGE,
        [4, 0.4, { firm: 0.55, bottom: 'muck' }],
        [8, 0.65, { firm: 0.9, bottom: 'muck' }],
        [12, 0.85, { firm: 1.15, bottom: 'muck' }],
      ],
      { bottom: 'sand' },
      {},
    ),
    words:
      'Soft on top, firm a foot below, and somebody pushed a rod down to know it. Legs are cut for the firm ground: good.',
    // Leg at the end: 0.45 + 1.05 + 0.15 of reserve = 1.65, a 6 ft leg with a brace. 72 kPa on firm sand under 96.
    expect: 'fine',
    because: [],
    never: [
      'muck-without-mud-pad',
      'buckles',
      'does-not-stand',
      'leg-none-long-enough',
      'brace-does-not-fit',
    ],
  },
  {
    design: lake('Plunge Point', [BANK, EDGE, [4, 0.8], [8, 1.8], [11, 2.7], [14, 3.1]], wind(7, 200), {
      sections: 6,
    }),
    words:
      'A run that ends over three meters of water. No leg of the shop gets there: stop a section or two before.',
    // End legs near 1.4 + 5·2.46 = 13.7 m out: 3.05 of water + 0.45 + 0.15 = 3.65 m, the longest leg is 10 ft = 3.05.
    expect: 'no',
    because: ['leg-none-long-enough'],
    never: ['leg-override-short', 'deck-under-level', 'ramp-too-steep'],
  },
  {
    design: lake('Miscut Cove', [BANK, EDGE, [4, 0.5], [8, 0.9], [12, 1.2]], wind(7, 150), {
      overrides: { 's3.end.left': { stock: 0.9144 } },
    }),
    words:
      'Somebody put a 3 ft leg down for the second pair in waist-deep water. It hangs under the deck and touches nothing.',
    // At 6.2 m: 0.72 of water + 0.45 = 1.17 m from bed to deck; the leg has 0.91.
    expect: 'no',
    because: ['leg-override-short'],
    never: ['leg-none-long-enough', 'unknown-id', 'unknown-code', 'ramp-too-steep'],
  },
  {
    design: lake(
      'Marl Landing',
      [BANK, EDGE, [4, 0.45], [8, 0.75], [12, 1], [16, 1.1]],
      { bottom: 'clay', ...wind(9, 300) },
      { sections: 5, pad: 'mud-pad-14', extras: { 'anchor-post': 2 } },
    ),
    words: 'Clay, wide pads because clay gives, two posts because clay holds them. Good.',
    // 26 kPa under the 72 of clay. Wind 91 N a section; clay holds by cohesion 6.2 kPa·0.126 m² or half of what presses: 250 N a section
    // light. Over: 91·1.4 = 127 Nm against 260. H_s 0.09 m, crest 0.08 under 0.27 of frame.
    expect: 'fine',
    because: [],
    never: [
      'foot-sinks',
      'dock-slides',
      'goes-over',
      'crest-reaches-frame',
      'post-too-short',
      'buckles',
      'auger-on-rock',
    ],
  },
]
