/**
 * Where a dock only touches: feet on the bed, the ramp's shore end on the bank, hooks in their brackets. Each presses one way and by
 * itself; the other way it holds nothing (feet, ramp), or up to what its lock or pin is stated to hold (hooks, a pinned ramp).
 *
 * A contact is the first end of a member: it is opened by moving that end against what it touches (`second-order.ts`, `shift`), so that
 * one factorization serves every case. What moving contacts does to all of them is asked column by column, and kept.
 */
import { addMoved, endForces, type Moved, type State, settler, shift } from '../second-order.ts'
import type { DockFrame } from './frame.ts'

export interface Contact {
  readonly kind: 'foot' | 'shore' | 'hook' | 'post'
  /** Its first end touches, at `node`. */
  readonly member: number
  readonly node: number
  /** What it holds before it comes off, N: 0 where it only presses. A post's: sideways, before the ground gives. */
  readonly holds: number
  /** How far it stands off before anything moves, m: a ramp's corner over a bank that falls to that side. */
  readonly gap: number
}

/** Directions of a contact by number: contact · 3 + 0, 1, 2 for up, x, y. */
const UP = 0
export const contactOf = (dof: number): number => (dof - (dof % 3)) / 3
export const isUp = (dof: number): boolean => dof % 3 === UP

/** Of an upright member's own axes, from its foot up: z, x, y of the dock. A hook lies level: its third axis is up. */
const UPRIGHT = { axis: [0, 1, 2], direction: [2, 0, 1] } as const
const LEVEL = { axis: [2, 0, 1], direction: [2, 0, 1] } as const
const axesOf = ({ kind }: Contact) => (kind === 'hook' ? LEVEL : UPRIGHT)

/** Twelve for each of `frame.judged`. */
export function judgedForces(
  state: State,
  frame: Pick<DockFrame, 'judged'>,
  movement: Float64Array,
  onMembers: Float64Array | null,
): Float64Array {
  const { judged } = frame
  const all = new Float64Array(judged.length * 12)
  for (let i = 0; i < judged.length; i++) endForces(state, judged[i]!, movement, onMembers, all, i * 12)
  return all
}

/** A state's contacts, three directions each. */
export interface Touch {
  readonly contacts: readonly Contact[]
  /** Of each direction, where its force stands among the judged members' forces. */
  readonly at: Int32Array
  /** A leg's stiffness along itself, N/m: what resists a movement by less than a small part of this is nothing but rounding. */
  readonly stiffness: number
  /** What it does to all contacts, three each, to move one of them by 1 in one direction. */
  column(dof: number): Float64Array
  /** Adds to the judged members' forces what it does to move contacts, three numbers each. */
  move(by: ArrayLike<number>, forces: Float64Array): void
}

export function touch(state: State, frame: Pick<DockFrame, 'contacts' | 'slot' | 'judged'>): Touch {
  const { contacts, slot } = frame
  const kept = new Map<number, Float64Array>()
  const ends = contacts.map(({ member }) => member)
  const order = contacts.map((one) => axesOf(one).axis)
  const moving = (dof: number, by: number): Moved => {
    const one = contacts[contactOf(dof)]!
    return { node: one.node, direction: axesOf(one).direction[dof % 3]!, by, members: [one.member] }
  }
  let settleOne: ReturnType<typeof settler> | null = null
  const first = contacts[0]?.member
  return {
    contacts,
    at: Int32Array.from({ length: contacts.length * 3 }, (_, dof) => {
      const i = contactOf(dof)
      return slot[ends[i]!]! * 12 + order[i]![dof % 3]!
    }),
    stiffness: first === undefined ? 0 : state.layout.members.axial[first]!,
    column(dof) {
      let column = kept.get(dof)
      if (!column) {
        settleOne ??= settler(state, ends)
        const own = settleOne(moving(dof, 1))
        column = own.map((_, i) => own[i - (i % 3) + order[contactOf(i)]![i % 3]!]!)
        kept.set(dof, column)
      }
      return column
    },
    move(by, forces) {
      const moves: Moved[] = []
      for (let dof = 0; dof < by.length; dof++) if (by[dof] !== 0) moves.push(moving(dof, by[dof]!))
      if (moves.length === 0) return
      const more = judgedForces(state, frame, shift(state, moves), null)
      for (let k = 0; k < forces.length; k++) forces[k]! += more[k]!
      for (const one of moves)
        for (const member of one.members) addMoved(state, member, one, forces, slot[member]! * 12)
    },
  }
}
