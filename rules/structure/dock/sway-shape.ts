/**
 * The shape that a dock takes under a person's shove: how every corner, foot, clamp and leg end moves and turns, so that it can be
 * drawn. The same push, at the same corner and on the same frame as the sway of the Structure (`swayOf`); nothing here is exaggerated.
 *
 * Frame of reference: the dock's (x lakeward, y left, z up), m and rad. Small movements: they are proportional to the push.
 */
import { type Kit, poseOf } from '../../kit.ts'
import { factorState, layOutStates, respond } from '../second-order.ts'
import { PUSH, pushLoad } from './basic-loads.ts'
import { AS_BUILT, type DockFrame, dockFrame } from './frame.ts'
import { whyNotJudged } from './not-judged.ts'
import { sleeveStiffness } from './sleeve.ts'
import { swayOf } from './sway.ts'

/** Movement, then turn about the three axes. */
export type Move = readonly [x: number, y: number, z: number, rx: number, ry: number, rz: number]

export interface SwayingSection {
  readonly section: string
  /** Where its corners are in its own frame, m: along from its start edge (start, end), across from its middle line (left is +, right −). */
  readonly along: readonly [number, number]
  readonly across: number
  /** Elevation of the plane that moves so, m: mid height of the rails; of a ramp at its start and end corners. */
  readonly z: readonly [start: number, end: number]
  /** start.left, start.right, end.left, end.right */
  readonly corners: readonly [Move, Move, Move, Move]
  /** Of a corner piece, where these are in its own frame, along and across, m. */
  readonly places?: readonly (readonly [along: number, across: number])[]
}

/** A point of a leg's axis with its movement; between two of them it bends as a beam does. */
export interface LegPoint {
  readonly z: number
  readonly move: Move
}

export interface SwayingLeg {
  readonly leg: string
  readonly x: number
  readonly y: number
  /** From the foot up: foot, the clamps of its braces where it has any, the middle of the sleeve. */
  readonly points: readonly LegPoint[]
}

export interface SwayingBrace {
  readonly pair: string
  readonly low: Move
  readonly high: Move
}

export type Way = 'across' | 'along'

export interface SwayShape {
  readonly way: Way
  readonly braces: boolean
  /** N, at the corner that gives most. */
  readonly push: number
  /** How far that corner moves the way it is pushed, m: `swayAcross`, `swayAlong`, or the same without braces. */
  readonly most: number
  readonly sections: readonly SwayingSection[]
  readonly legs: readonly SwayingLeg[]
  /** None where they are left out. */
  readonly braceEnds: readonly SwayingBrace[]
}

/**
 * Null where the dock cannot be judged, or where nothing of it can be pushed.
 * Throws UnstableFrameError where it can move without resistance.
 */
export function swayShape(
  kit: Kit,
  { braces, way = 'across' }: { readonly braces: boolean; readonly way?: Way },
): SwayShape | null {
  if (whyNotJudged(kit)) return null
  const frame = dockFrame(kit, { ...AS_BUILT, braces })
  const states = layOutStates(frame)
  const plain = factorState(states, null)
  const sway = swayOf(states, frame, plain)
  const node = way === 'across' ? sway.nodeAcross : sway.nodeAlong
  if (node < 0) return null
  const [x, y] = way === 'across' ? [0, PUSH] : [PUSH, 0]
  const movement = respond(plain, pushLoad(states, node, x, y).onNodes)
  const at = (of: number): Move => [0, 1, 2, 3, 4, 5].map((k) => movement[of * 6 + k]!) as unknown as Move
  return {
    way,
    braces,
    push: PUSH,
    most: way === 'across' ? sway.across : sway.along,
    sections: sectionsOf(frame, at),
    legs: legsOf(frame, at),
    braceEnds: frame.braces.map(({ pair, member }) => ({
      pair: pair.pair.id,
      low: at(frame.members[member]!.from),
      high: at(frame.members[member]!.to),
    })),
  }
}

function sectionsOf({ kit, corners, nodes }: DockFrame, at: (node: number) => Move): SwayingSection[] {
  return kit.layout.placed.map((placed) => {
    const own = corners[placed.index]!
    const pose = poseOf(placed, kit)
    const c = Math.cos(pose.tilt)
    const local = (node: number): readonly [along: number, across: number] => {
      const { x, y } = nodes[node]!
      const [dx, dy] = [x - pose.x, y - pose.y]
      // A tilted ramp's own length is longer than it is in plan; the half of a rail's height that leans with it is left out.
      return [(placed.c * dx + placed.s * dy) / c, placed.c * dy - placed.s * dx]
    }
    const [first, across] = local(own[0])
    return {
      section: placed.id,
      along: [first, local(own[2])[0]] as const,
      across,
      z: [nodes[own[0]]!.z, nodes[own[2]]!.z] as const,
      corners: own.map(at) as unknown as SwayingSection['corners'],
      ...(placed.frame.turn && { places: own.map(local) }),
    }
  })
}

/**
 * A leg's upper end turns less or more than its corner: the sleeve gives. By the leg's own stiffness between the point below and there
 * (Euler-Bernoulli, no load along it), in each upright plane: k (corner − end) = M(end).
 */
function legsOf(frame: DockFrame, at: (node: number) => Move): SwayingLeg[] {
  const spring = sleeveStiffness(frame.kit.shop)
  return frame.legs.map(({ leg, members }) => {
    const points: LegPoint[] = members.map((member) => {
      const node = frame.members[member]!.from
      return { z: frame.nodes[node]!.z, move: at(node) }
    })
    const last = frame.members[members.at(-1)!]!
    const top = frame.nodes[last.to]!
    const corner = at(last.to)
    const below = points.at(-1)!
    // One member from the foot: the foot turns freely, and so does it in the drawing (its own movement is of that node).
    const length = top.z - below.z
    const turned = (stiffness: number, drift: number, turnBelow: number, turnCorner: number): number => {
      // M = EI/L (4 φ + 2 φ₀ − 6 δ/L); the sleeve gives k (φc − φ).
      const k = stiffness / length
      return (spring * turnCorner + k * ((6 * drift) / length - 2 * turnBelow)) / (spring + 4 * k)
    }
    const b = below.move
    // About y: x moves by +ry·z; about x: y moves by −rx·z.
    const ry = turned(last.E * last.Iz, corner[0] - b[0], b[4], corner[4])
    const rx = -turned(last.E * last.Iy, corner[1] - b[1], -b[3], -corner[3])
    points.push({ z: top.z, move: [corner[0], corner[1], corner[2], rx, ry, corner[5]] })
    return { leg: leg.id, x: leg.x, y: leg.y, points }
  })
}
