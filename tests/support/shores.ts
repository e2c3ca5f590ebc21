/** A dozen ordinary shores (invented) that the demo shop can serve, and what an installer would expect on each. */
import { expect } from 'vitest'
import type { Design, Dock } from '../../rules/index.ts'
import { lake, type Spot } from './builders-docks/form.ts'

const shore = (
  name: string,
  spots: readonly Spot[],
  site: Readonly<Record<string, unknown>>,
  dock: Readonly<Record<string, unknown>>,
): Design => lake(name, spots, site, { sections: 5, ...dock })

const legsOf = (dock: Dock): number[] =>
  [...new Set(dock.legs.map((leg) => Math.round(leg.stock! / 0.3048)))].sort((a, b) => a - b)

export const SHORES: [Design, (dock: Dock) => void][] = [
  [
    shore(
      'gentle sand beach',
      [
        [-4, -0.6],
        [0, 0],
        [5, 0.35],
        [10, 0.7],
        [16, 1.1],
      ],
      {},
      { sections: 6 },
    ),
    (dock) => expect(legsOf(dock)).toEqual([3, 4, 5]),
  ],
  [
    shore(
      'steady slope of 1 in 10',
      [
        [-3, -0.7],
        [0, 0],
        [4, 0.4],
        [8, 0.8],
        [12, 1.2],
        [16, 1.6],
      ],
      {},
      { sections: 6 },
    ),
    (dock) => expect(legsOf(dock)[0]).toBe(3),
  ],
  [
    shore(
      'drop-off after a shelf',
      [
        [-3, -0.8],
        [0, 0],
        [4, 0.3],
        [7, 0.6],
        [9, 1.5],
        [12, 2],
      ],
      {},
      { sections: 4 },
    ),
    (dock) => expect(dock.ramp).not.toBeNull(),
  ],
  [
    shore(
      'low seawall, deck level with it',
      [
        [0, 0.4],
        [3, 0.6],
        [6, 0.8],
        [9, 1],
        [13, 1.2],
      ],
      { shore: { kind: 'wall', height: 0.45 } },
      { ramp: false, sections: 4 },
    ),
    (dock) => expect([dock.start, dock.ramp]).toEqual([0, null]),
  ],
  [
    shore(
      'seawall, ramp down to it',
      [
        [0, 0.5],
        [3, 0.7],
        [6, 0.8],
        [9, 1],
        [13, 1.2],
      ],
      { shore: { kind: 'wall', height: 0.4 } },
      { deckHeight: 0.7 },
    ),
    (dock) => expect(dock.ramp!.shoreZ).toBeCloseTo(0.4, 6),
  ],
  [
    shore(
      'gravel shore with a high bank',
      [
        [-2, -0.9],
        [0, 0],
        [3, 0.5],
        [6, 0.9],
        [9, 1.2],
        [13, 1.5],
      ],
      { bottom: 'gravel' },
      { deckHeight: 0.6 },
    ),
    (dock) => expect(dock.ramp!.slope).toBeLessThan(0.2),
  ],
  [
    shore(
      'muck over firm clay, mud pads',
      [
        [-3, -0.5],
        [0, 0],
        [4, 0.4, { firm: 0.55, bottom: 'muck' }],
        [8, 0.7, { firm: 1, bottom: 'muck' }],
        [13, 0.9, { firm: 1.2, bottom: 'muck' }],
      ],
      { bottom: 'clay' },
      { pad: 'mud-pad-14' },
    ),
    (dock) => expect(dock.parts.find((row) => row.code === 'mud-pad-14')!.quantity).toBe(dock.legs.length),
  ],
  [
    shore(
      'rock ledges',
      [
        [-3, -0.9],
        [0, 0],
        [3, 0.4],
        [6, 0.65],
        [9, 0.95],
        [13, 1.3],
      ],
      { bottom: 'rock' },
      {},
    ),
    (dock) => expect(dock.legs.length).toBe(10),
  ],
  [
    shore(
      'cross slope, deeper to the left',
      [
        [-3, -0.8],
        [0, 0],
        [4, 0.5],
        [8, 0.9],
        [12, 1.3],
      ],
      { crossSlope: 0.08 },
      { sections: 5 },
    ),
    (dock) => {
      for (const { brace, legs } of dock.pairs) if (brace) expect(brace.low).toBe(legs[0])
      expect(dock.pairs.some((pair) => pair.brace)).toBe(true)
    },
  ],
  [
    shore(
      'shallow bay, an L for the boat',
      [
        [-4, -0.6],
        [0, 0],
        [5, 0.4],
        [10, 0.7],
        [16, 0.9],
      ],
      {},
      { sections: 5, head: { shape: 'right', sections: 1 } },
    ),
    (dock) => expect(dock.sections.at(-1)).toMatchObject({ id: 'h1', heading: 270 }),
  ],
  [
    shore(
      'wide water, five foot frames and a tee',
      [
        [-3, -0.8],
        [0, 0],
        [4, 0.45],
        [8, 0.8],
        [13, 1.2],
      ],
      { wind: { speed: 14, fetch: 1500 } },
      { frame: '5x8', sections: 4, head: { shape: 'tee', sections: 2 } },
    ),
    (dock) => expect(dock.sections.map((s) => s.id)).toEqual(['s1', 's2', 's3', 's4', 'h1', 'h2']),
  ],
  [
    shore(
      'a sun deck beside the end, ten foot frames',
      [
        [-3, -0.7],
        [0, 0],
        [4, 0.35],
        [8, 0.6],
        [14, 0.75],
        [18, 0.8],
      ],
      {},
      { frame: '4x10', sections: 5, head: { shape: 'wide', sections: 2 } },
    ),
    (dock) => expect(dock.joints.filter((joint) => joint.kind === 'tie')).toHaveLength(1),
  ],
]
