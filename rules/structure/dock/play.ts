/**
 * How far a deck moves before its legs resist: each can lean by what its sleeve leaves loose. What leans least holds the rest.
 *
 * Along the dock all sections move as one, so the shortest leg counts, and nothing leans where a lengthwise brace runs that way. Across, a
 * section is held by its own legs, and one of a pair with a brace does not lean that way at all.
 */
import type { Analysis } from './analysis.ts'
import type { DockFrame } from './frame.ts'

export interface Play {
  /** m */
  readonly along: number
  readonly across: number
}

/** Of the whole dock along, and across of the section that gives most. */
export function playOf(frame: DockFrame, { lean, sway }: Pick<Analysis, 'lean' | 'sway'>): Play {
  const { nodes, legs, corners, kit } = frame
  const runsAlong = ({ pair: { pair } }: (typeof frame.braces)[number]): boolean =>
    pair.along !== undefined && Math.abs(pair.legs[1].x - pair.legs[0].x) * 2 > pair.spacing
  const lengthwise = frame.braces.some(runsAlong)
  const braced = new Set(frame.braces.filter((one) => !runsAlong(one)).flatMap(({ pair }) => pair.pair.legs))
  const least = (own: typeof legs): number =>
    own.reduce(
      (low, { foot, top }) => Math.min(low, nodes[top]!.z - nodes[foot]!.z),
      Number.POSITIVE_INFINITY,
    )
  const soft = corners.findIndex((four) => four?.includes(sway.nodeAcross))
  const own = legs.filter(({ leg }) => leg.section === kit.layout.placed[soft])
  const high = own.length === 0 || own.some(({ leg }) => braced.has(leg)) ? 0 : least(own)
  return { along: legs.length === 0 || lengthwise ? 0 : lean * least(legs), across: lean * high }
}
