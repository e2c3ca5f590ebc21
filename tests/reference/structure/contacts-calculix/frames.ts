/** Frames that only touch the ground, as CalculiX can have them, and what is expected of each contact, by statics. */
import type { Contact } from '../../../../rules/structure/dock/contacts.ts'
import type { Fixed6, FrameLoad, FrameNode } from '../../../../rules/structure/index.ts'
import type { CalculixFrame, CalculixMember } from '../calculix/frames.ts'
import type { Section } from '../calculix/sections.ts'

export interface TouchingFrame extends CalculixFrame {
  /** Each the first end of an upright member; its node is held in the frame, upward too. */
  readonly contacts: readonly Contact[]
  /** Contacts that end up off the ground: by statics, written before anything is computed. */
  readonly off: readonly number[]
  /** Feet that hold nothing sideways: a rule beside the problem (lift-off.ts), which CalculiX is told. Those that are off, and those that pulled on the way. */
  readonly loose: readonly number[]
}

/** So stout that the loads here are under half a percent of what buckles it: CalculiX's gaps need its large movements. */
const LEG: Section = { kind: 'pipe', radius: 0.06, wall: 0.008 }
const TOP: Section = { kind: 'rectangle', deep: 0.1, wide: 0.1 }
const STIFF: Section = { kind: 'rectangle', deep: 0.2, wide: 0.2 }

const FOOT: Fixed6 = [true, true, true, false, false, false]
const SLIDES: Fixed6 = [false, false, true, false, false, false]
const CENTERED: Fixed6 = [true, true, false, false, false, true]
/** Of a plank's nodes: it does not roll at its first one, and stays where it is at its middle, so that it draws in alike from both ends. */
const UPRIGHT: Fixed6 = [false, true, false, true, false, false]
const IN_PLANE: Fixed6 = [false, true, false, false, false, false]
const STAYS: Fixed6 = [true, true, false, false, false, false]

const at = (x: number, y: number, z: number, fixed?: Fixed6): FrameNode => ({
  x,
  y,
  z,
  ...(fixed ? { fixed } : {}),
})
const chain = (section: Section, ...nodes: number[]): CalculixMember[] =>
  nodes.slice(1).map((to, i) => ({ from: nodes[i]!, to, section }))
const down = (node: number, weight: number): FrameLoad => ({ node, force: [0, 0, -weight, 0, 0, 0] })
const foot = (node: number, member: number, gap = 0): Contact => ({
  kind: 'foot',
  node,
  member,
  holds: 0,
  gap,
})

/**
 * Legs at the corners of 6 m by 6 m under two crossed beams, the load on one of them at 0.75 from the middle to the near leg. The crossing
 * beam is stiff and hardly sags, so the far leg would have to pull (−P·a·(ℓ² − a²)/(4·ℓ³) with a = ℓ/4: 0.06 of the load, less what the
 * crossing beam gives). Let go, the near leg takes 0.75 of the load, those beside 0.125 each (moments about the line between those beside).
 * Feet slide, the middle is held sideways: legs held at their feet would clamp the beams' ends in part, and none would pull.
 * Nodes 0–3 feet, 4–7 corners, 8 middle, 9 load.
 */
const table: TouchingFrame = {
  name: 'table-loaded-near-one-leg',
  nodes: [
    ...[0, 1].flatMap((top) =>
      [
        [6, 6],
        [0, 6],
        [0, 0],
        [6, 0],
      ].map(([x, y]) => at(x!, y!, top * 1.5, top ? undefined : SLIDES)),
    ),
    at(3, 3, 1.5, CENTERED),
    at(3 + 0.75 * 3, 3 + 0.75 * 3, 1.5),
  ],
  members: [
    ...[0, 1, 2, 3].flatMap((i) => chain(LEG, i, i + 4)),
    ...chain(TOP, 4, 9, 8, 6),
    ...chain(STIFF, 5, 8, 7),
  ],
  loads: [down(9, 800)],
  contacts: [0, 1, 2, 3].map((i) => ({ ...foot(i, i), kind: 'shore' })),
  off: [2],
  loose: [],
  slender: true,
  buckles: 'no',
}

/** Two spans of 6 m; the middle support 20 mm low. 48·EI/L³ is 16 N/mm: 200 N sag it by 12 mm, 800 N would by 49 mm. */
const plank = (word: string, load: number, off: readonly number[]): TouchingFrame => ({
  name: `plank-whose-middle-support-is-low-${word}`,
  nodes: [
    ...[0, 6, 12].map((x) => at(x, 0, 0, SLIDES)),
    ...[0, 6, 12].map((x) => at(x, 0, 0.3, [UPRIGHT, STAYS, IN_PLANE][x / 6])),
  ],
  members: [...[0, 1, 2].flatMap((i) => chain(TOP, i, i + 3)), ...chain(TOP, 3, 4, 5)],
  loads: [down(4, load)],
  contacts: [0, 1, 2].map((i) => ({ ...foot(i, i, i === 1 ? 0.02 : 0), kind: 'shore' })),
  off,
  loose: [],
  slender: true,
  buckles: 'no',
})

/**
 * Two sections of 3 m by 1.5 m, the second hung on the first by joints that turn freely; foot 0, under a shore corner with next to no load,
 * stands 20 mm over the bed. The hung section's weight keeps the other five down. Nodes: three feet to the left by x, three to the right, then their corners.
 */
const dock: TouchingFrame = {
  name: 'two-sections-with-a-foot-over-the-bed',
  nodes: [0, 1].flatMap((top) =>
    [0, 1.5].flatMap((y) => [0, 3, 6].map((x) => at(x, y, top * 1.5, top ? undefined : FOOT))),
  ),
  members: [
    ...[0, 1, 2, 3, 4, 5].flatMap((i) => chain(LEG, i, i + 6)),
    ...[6, 7, 8].flatMap((i) => chain(TOP, i, i + 3)),
    ...chain(TOP, 6, 7),
    ...chain(TOP, 9, 10),
    { from: 8, to: 7, section: TOP, ball: true },
    { from: 11, to: 10, section: TOP, ball: true },
  ],
  loads: [
    ...[7, 8, 9, 10, 11].map((node) => down(node, 200)),
    down(6, 20),
    { node: 11, force: [0, 30, 0, 0, 0, 0] },
  ],
  contacts: [0, 1, 2, 3, 4, 5].map((i) => foot(i, i, i === 0 ? 0.02 : 0)),
  off: [0],
  loose: [0],
  slender: true,
  buckles: 'no',
}

export const TOUCHING: readonly TouchingFrame[] = [
  table,
  plank('lightly-loaded', 200, [1]),
  plank('loaded-till-it-bears', 800, []),
  dock,
]
