/**
 * The frames that are run through CalculiX.
 */
import type {
  End6,
  Fixed6,
  FrameLoad,
  FrameModel,
  FrameNode,
  Vec3,
} from '../../../../rules/structure/index.ts'
import { BRACE, LEG, RAIL, type Section, SLENDER, SLENDER_FLAT, SLENDER_PIPE, sectionOf } from './sections.ts'

export interface CalculixMember {
  readonly from: number
  readonly to: number
  readonly section: Section
  readonly up?: Vec3
  /** Its `to` end turns freely on the node, twist included. */
  readonly ball?: boolean
}

export interface CalculixFrame {
  readonly name: string
  readonly nodes: readonly FrameNode[]
  readonly members: readonly CalculixMember[]
  readonly loads: readonly FrameLoad[]
  /** Members so thin for their length that shear does not show: compared to 0.1 %, others to 0.5 %. */
  readonly slender: boolean
  /**
   * `pressed`: its factor under the downward part of its loads is compared, to 1 %. `bent`: that part bends it too
   * (see `pressing`), so only the factor with the moments' part is compared. `no`: little in it is pressed.
   */
  readonly buckles: 'pressed' | 'bent' | 'no'
}

const BALL: End6 = ['rigid', 'rigid', 'rigid', 'free', 'free', 'free']
const ALL: Fixed6 = [true, true, true, true, true, true]
const PIN: Fixed6 = [true, true, true, false, false, true]

/** The same frame for our own solver. */
export const frameModel = ({ nodes, members, loads }: CalculixFrame): FrameModel => ({
  nodes,
  members: members.map(({ from, to, section, up, ball }) => ({
    from,
    to,
    ...sectionOf(section),
    ...(up ? { up } : {}),
    ...(ball ? { ends: { to: BALL } } : {}),
  })),
  loads,
})

/**
 * The downward part of a frame's loads. Only under loads that press in the main do the two programs answer the
 * same question: CalculiX's solids also feel what bending moments and twist do to buckling, `buckling` only axial
 * force. With all of these frames' loads, sideways ones too, the factors are up to 28 % apart; moments.ts shows that
 * this is the reason.
 */
export const pressing = ({ loads }: Pick<CalculixFrame, 'loads'>): FrameLoad[] =>
  loads
    .filter(({ force }) => force[2] !== 0)
    .map(({ node, force }) => ({ node, force: [0, 0, force[2], 0, 0, 0] }))

const at = (x: number, y: number, z: number, fixed?: Fixed6): FrameNode => ({
  x,
  y,
  z,
  ...(fixed ? { fixed } : {}),
})

const force = (node: number, x: number, y: number, z: number): FrameLoad => ({
  node,
  force: [x, y, z, 0, 0, 0],
})

/** A chain of members through nodes, one after another. */
const chain = (section: Section, ...nodes: number[]): CalculixMember[] =>
  nodes.slice(1).map((to, i) => ({ from: nodes[i]!, to, section }))

/** Two legs and a beam in the x–z plane; free to leave it. */
const portal = (
  name: string,
  foot: Fixed6,
  right: number,
  leg: Section,
  beam: Section,
  slender: boolean,
) => ({
  name,
  nodes: [at(0, 0, 0, foot), at(0, 0, 2), at(1.6, 0, 2), at(1.6, 0, 2 - right, foot)],
  members: [...chain(leg, 0, 1), ...chain(beam, 1, 2), ...chain(leg, 3, 2)],
  slender,
})

/** Four legs under a rectangle of rails. Nodes 0–3 feet, 4–7 corners. */
function table(leg: Section, rail: Section, splay: number, foot: Fixed6) {
  const corners = [
    [0, 0],
    [2.4, 0],
    [2.4, 1.2],
    [0, 1.2],
  ] as const
  return {
    nodes: [
      ...corners.map(([x, y]) => at(x + (x > 0 ? splay : -splay), y + (y > 0 ? splay : -splay), 0, foot)),
      ...corners.map(([x, y]) => at(x, y, 2)),
    ],
    members: [...[0, 1, 2, 3].flatMap((i) => chain(leg, i, i + 4)), ...chain(rail, 4, 5, 6, 7, 4)],
  }
}

const down = (nodes: readonly number[], push: Vec3, weight: number): FrameLoad[] =>
  nodes.map((node) => force(node, push[0], push[1], push[2] - weight))

export const CALCULIX_FRAMES: readonly CalculixFrame[] = [
  {
    name: 'skew-cantilever',
    nodes: [at(0, 0, 0, ALL), at(0.8, 1.2, 2.4)],
    members: chain(SLENDER, 0, 1),
    loads: [force(1, 10, -25, -15)],
    slender: true,
    buckles: 'no',
  },
  {
    name: 'flat-cantilever-turned-on-its-axis',
    nodes: [at(0, 0, 0, ALL), at(2, 1, 0)],
    members: [{ from: 0, to: 1, section: SLENDER_FLAT, up: [0.3, -0.6, 0.8] }],
    loads: [force(1, 4, -6, -20)],
    slender: true,
    buckles: 'no',
  },
  {
    name: 'right-angle-in-bending-and-twist',
    nodes: [at(0, 0, 0, ALL), at(2, 0, 0), at(2, 1.4, 0)],
    members: chain(SLENDER_PIPE, 0, 1, 2),
    loads: [force(2, 0, 0, -20)],
    slender: true,
    buckles: 'no',
  },
  {
    name: 'three-way-bent-pipe',
    nodes: [at(0, 0, 0, ALL), at(1.5, 0, 0), at(1.5, 1.2, 0), at(1.5, 1.2, 1.8)],
    members: chain(SLENDER_PIPE, 0, 1, 2, 3),
    loads: [force(3, 12, -8, -10)],
    slender: true,
    buckles: 'no',
  },
  {
    name: 'bent-pipe-between-two-walls',
    nodes: [at(0, 0, 0, ALL), at(1.5, 0, 0), at(1.5, 1.5, 0.4), at(3, 1.5, 0.9, ALL)],
    members: chain(SLENDER_PIPE, 0, 1, 2, 3),
    loads: [force(1, 0, 30, -120), force(2, 40, 0, -50)],
    slender: true,
    buckles: 'no',
  },
  {
    ...portal('portal-on-fixed-feet', ALL, 2, SLENDER, SLENDER, true),
    loads: [force(1, 15, 4, -60), force(2, 0, 4, -60)],
    buckles: 'pressed',
  },
  {
    ...portal('portal-on-pinned-feet', PIN, 2, SLENDER, SLENDER_FLAT, true),
    nodes: [
      at(0, 0, 0, PIN),
      at(0, 0, 2, [false, true, false, false, false, false]),
      at(1.6, 0, 2, [false, true, false, false, false, false]),
      at(1.6, 0, 0, PIN),
    ],
    loads: [force(1, 8, 0, -50), force(2, 0, 0, -50)],
    buckles: 'pressed',
  },
  {
    ...portal('portal-with-a-short-leg', ALL, 1.2, SLENDER, SLENDER, true),
    loads: [force(1, 20, 0, -70), force(2, 5, 6, -40)],
    buckles: 'pressed',
  },
  {
    ...portal('dock-portal-on-fixed-feet', ALL, 2, LEG, RAIL, false),
    loads: [force(1, 300, 0, -900), force(2, 0, 100, -900)],
    buckles: 'pressed',
  },
  {
    name: 'two-bays',
    nodes: [
      at(0, 0, 0, ALL),
      at(0, 0, 2),
      at(1.8, 0, 2),
      at(1.8, 0, 0, ALL),
      at(3.4, 0, 2),
      at(3.4, 0, 0, ALL),
    ],
    members: [...chain(SLENDER, 0, 1, 2, 4, 5), ...chain(SLENDER, 2, 3)],
    loads: [force(1, 25, 5, -40), force(2, 0, 5, -90), force(4, 0, 5, -40)],
    slender: true,
    buckles: 'pressed',
  },
  {
    name: 'two-stories',
    nodes: [at(0, 0, 0, ALL), at(0, 0, 1.7), at(0, 0, 3.4), at(2, 0, 3.4), at(2, 0, 1.7), at(2, 0, 0, ALL)],
    members: [...chain(SLENDER, 0, 1, 2, 3, 4, 5), ...chain(SLENDER, 1, 4)],
    loads: [force(1, 10, 2, -40), force(2, 15, 2, -50), force(3, 0, 2, -50), force(4, 0, 2, -40)],
    slender: true,
    buckles: 'pressed',
  },
  {
    name: 'ladder-lying-down',
    nodes: [0, 1, 2, 3, 4].flatMap((i) => [
      at(i * 1.5, 0, 0, i === 0 ? ALL : undefined),
      at(i * 1.5, 1.5, 0, i === 0 ? ALL : undefined),
    ]),
    members: [
      ...chain(SLENDER, 0, 2, 4, 6, 8),
      ...chain(SLENDER, 1, 3, 5, 7, 9),
      ...[1, 2, 3, 4].flatMap((i) => chain(SLENDER, 2 * i, 2 * i + 1)),
    ],
    loads: [force(8, 0, 30, -3), force(9, 0, 0, -2)],
    slender: true,
    buckles: 'no',
  },
  {
    name: 'grid-on-its-edges',
    nodes: [0, 1, 2, 3].flatMap((i) =>
      [0, 1, 2, 3].map((j) =>
        at(i * 1.6, j * 1.6, 0, (i === 0 || i === 3) && j > 0 && j < 3 ? ALL : undefined),
      ),
    ),
    members: [0, 1, 2, 3].flatMap((i) => [
      ...chain(SLENDER_PIPE, 4 * i, 4 * i + 1, 4 * i + 2, 4 * i + 3),
      ...chain(SLENDER_PIPE, i, i + 4, i + 8, i + 12),
    ]),
    loads: [force(5, 0, 0, -80), force(10, 10, 0, -40), force(15, 0, 0, -10)],
    slender: true,
    buckles: 'no',
  },
  {
    name: 'arch-of-straights',
    nodes: [0, 1, 2, 3, 4, 5, 6].map((i) => {
      const a = (Math.PI * i) / 6
      return at(2.5 - 2.5 * Math.cos(a), 0, 2.5 * Math.sin(a), i % 6 === 0 ? ALL : undefined)
    }),
    members: chain(SLENDER, 0, 1, 2, 3, 4, 5, 6),
    loads: [force(3, 4, 3, -30), force(2, 0, 0, -20), force(4, 0, 0, -20)],
    slender: true,
    buckles: 'no',
  },
  {
    name: 'table-pushed-and-twisted',
    ...table(SLENDER, SLENDER, 0, ALL),
    loads: [...down([4, 5, 6, 7], [0, 0, 0], 60), force(4, 15, 10, 0), force(6, 0, 25, 0)],
    slender: true,
    buckles: 'pressed',
  },
  {
    name: 'table-with-splayed-legs',
    ...table(SLENDER_PIPE, SLENDER, 0.3, ALL),
    loads: [...down([4, 5, 6, 7], [3, 2, 0], 50), force(5, 0, 20, 0)],
    slender: true,
    buckles: 'pressed',
  },
  {
    name: 'dock-section-without-braces',
    ...table(LEG, RAIL, 0, ALL),
    loads: [...down([4, 5, 6, 7], [20, 60, 0], 900), force(6, 0, 400, 0)],
    slender: false,
    buckles: 'pressed',
  },
  {
    name: 'braced-pair-of-legs',
    nodes: [at(0, 0, 0, ALL), at(0, 0, 2), at(1.6, 0, 2), at(1.6, 0, 0, ALL)],
    members: [...chain(SLENDER, 0, 1, 2, 3), { from: 0, to: 2, section: BRACE }],
    loads: [force(1, 60, 3, -60), force(2, 0, 3, -60)],
    slender: true,
    buckles: 'pressed',
  },
  {
    name: 'dock-section-with-braces-across',
    ...table(LEG, RAIL, 0, ALL),
    members: [
      ...table(LEG, RAIL, 0, ALL).members,
      { from: 0, to: 7, section: BRACE },
      { from: 1, to: 6, section: BRACE },
    ],
    loads: [...down([4, 5, 6, 7], [20, 60, 0], 900), force(6, 0, 400, 0)],
    slender: false,
    buckles: 'pressed',
  },
  {
    name: 'tripod-of-bars-on-a-mast',
    nodes: [
      at(0, 0, 0, ALL),
      at(0, 0, 2.4),
      at(1.5, 0, 0, ALL),
      at(-0.9, 1.2, 0, ALL),
      at(-0.9, -1.2, 0, ALL),
      at(0.3, 0, 3.6),
    ],
    members: [
      ...chain(SLENDER, 0, 1, 5),
      // Stout: CalculiX's trusses bow under their own Euler load, our bars do not.
      ...[2, 3, 4].map((from) => ({ from, to: 1, section: BRACE })),
    ],
    loads: [force(5, 5, 8, -30)],
    slender: true,
    buckles: 'bent',
  },
  {
    name: 'two-sections-on-ball-joints',
    nodes: [
      at(0, 0, 0, ALL),
      at(0, 1.2, 0, ALL),
      at(0, 0, 1.8),
      at(0, 1.2, 1.8),
      at(2.4, 0, 1.8),
      at(2.4, 1.2, 1.8),
      at(2.4, 0, 0, ALL),
      at(2.4, 1.2, 0, ALL),
      at(4.2, 0, 1.8),
      at(4.2, 1.2, 1.8),
      at(4.2, 0, 0, ALL),
      at(4.2, 1.2, 0, ALL),
    ],
    members: [
      ...[0, 1].flatMap((i) => [...chain(SLENDER, i, i + 2, i + 4), ...chain(SLENDER, i + 6, i + 4)]),
      ...chain(SLENDER, 2, 3),
      ...chain(SLENDER, 4, 5),
      ...chain(SLENDER, 8, 9),
      ...[0, 1].flatMap((i) => chain(SLENDER, i + 10, i + 8)),
      { from: 8, to: 4, section: SLENDER, ball: true },
      { from: 9, to: 5, section: SLENDER, ball: true },
    ],
    loads: [...down([2, 3, 4, 5, 8, 9], [3, 2, 0], 40), force(9, 0, 15, 0)],
    slender: true,
    buckles: 'pressed',
  },
  {
    name: 'irregular-space-frame',
    nodes: [
      at(0, 0, 0, ALL),
      at(2.1, 0.2, -0.1, ALL),
      at(0.3, 2.2, 0.2, ALL),
      at(0.2, 0.1, 1.9),
      at(2, 0.4, 2.2),
      at(0.5, 1.9, 1.8),
      at(1.1, 1, 3.5),
    ],
    members: [
      ...chain(SLENDER_PIPE, 0, 3, 4, 1),
      ...chain(SLENDER_PIPE, 2, 5, 3),
      ...chain(SLENDER_FLAT, 4, 5, 6),
      ...chain(SLENDER_FLAT, 3, 6, 4),
    ],
    loads: [force(6, 20, -10, -80), { node: 5, force: [0, 15, -20, 4, -3, 2] }],
    slender: true,
    buckles: 'bent',
  },
  {
    name: 'column-clamped-and-free',
    nodes: [at(0, 0, 0, ALL), at(0, 0, 2)],
    members: [{ from: 0, to: 1, section: SLENDER_FLAT }],
    loads: [force(1, 1, 1, -50)],
    slender: true,
    buckles: 'pressed',
  },
]
