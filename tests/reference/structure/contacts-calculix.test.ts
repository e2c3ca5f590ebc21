/**
 * One-sided contacts against CalculiX's gaps (Debian package calculix-ccx): by its stored results, run anew by
 * `npm run test:deep` where `ccx` is installed. Which contacts bear, what each bears, and where all nodes go.
 *
 * Forces to 1 % and movements to 0.5 % of the largest. CalculiX's gap gives by 1e-12 m for each newton and, open, pulls by
 * 1e-3 N: nothing beside that. What large movements add (its gaps need them) is the most of what is left: 0.4 % of the plank's.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { judgedForces, touch } from '../../../rules/structure/dock/contacts.ts'
import type { DockFrame } from '../../../rules/structure/dock/frame.ts'
import { letGo } from '../../../rules/structure/dock/lift-off.ts'
import {
  factorState,
  layOutStates,
  loadNode,
  type Moved,
  noLoad,
  respond,
  settle,
} from '../../../rules/structure/second-order.ts'
import { frameModel } from './calculix/frames.ts'
import { ccxRunNow } from './calculix/run-ccx.ts'
import { TOUCHING, type TouchingFrame } from './contacts-calculix/frames.ts'
import {
  contactDeck,
  deckOf,
  RESULTS,
  type Result,
  type Results,
  runTouching,
} from './contacts-calculix/results.ts'

const stored: Results = JSON.parse(readFileSync(RESULTS, 'utf8'))
const version = ccxRunNow()
const used =
  version === undefined ? `stored results of ${stored.program}` : `calculix-ccx ${version}, run now`
const FORCES = 1e-2
const MOVEMENTS = 5e-3

interface Solved extends Result {
  readonly lifted: readonly number[]
  readonly sideways: readonly number[]
  readonly stands: boolean
}

function ours(touching: TouchingFrame): Solved {
  const { nodes, members, loads } = frameModel(touching)
  const { contacts } = touching
  const judged = Int32Array.from(members, (_, i) => i)
  const frame = { nodes, members, contacts, judged, slot: judged } as unknown as DockFrame
  const states = layOutStates(frame)
  const state = factorState(states, null)
  const load = noLoad(states.layout)
  for (const { node, force } of loads)
    loadNode(load, node, [force[0], force[1], force[2]], [force[3], force[4], force[5]])
  const movement = respond(state, load.onNodes)
  const forces = judgedForces(state, frame, movement, null)
  const engine = touch(state, frame)
  const by = contacts.flatMap(({ gap }) => [-gap, 0, 0])
  engine.move(by, forces)
  const standing = letGo(
    {
      ...engine,
      move(more, into) {
        by.forEach((_, dof) => {
          by[dof]! += more[dof]!
        })
        engine.move(more, into)
      },
    },
    forces,
  )
  const moves = by.map((way, dof): Moved => {
    const { node, member } = contacts[(dof - (dof % 3)) / 3]!
    return { node, direction: [2, 0, 1][dof % 3]!, by: way, members: [member] }
  })
  const settled = settle(
    state,
    moves.filter((move) => move.by !== 0),
  )
  return {
    ...standing,
    displacements: nodes.map((_, n) => [0, 1, 2].map((k) => movement[n * 6 + k]! + settled[n * 6 + k]!)),
    bears: contacts.map((_, i) => forces[engine.at[i * 3]!]!),
  }
}

/** The greatest difference, a part of the greatest of `theirs`. */
function apart(own: Result, theirs: Result, what: keyof Result): number {
  const a = own[what].flat()
  const b = theirs[what].flat()
  const most = Math.max(...b.map(Math.abs))
  return Math.max(...b.map((value, i) => Math.abs(a[i]! - value))) / most
}

describe(`contacts and CalculiX's gaps (${used})`, () => {
  for (const frame of TOUCHING) {
    const theirs = version === undefined ? stored.frames[frame.name]! : runTouching(frame)

    it(`agree: ${frame.name}`, () => {
      const own = ours(frame)
      expect(own.stands).toBe(true)
      expect(own.lifted).toEqual(frame.off)
      expect([...own.sideways].sort((a, b) => a - b)).toEqual(
        frame.loose.flatMap((i) => [i * 3 + 1, i * 3 + 2]),
      )
      // Off by both: it bears nothing there either, and stands clear of the ground.
      frame.contacts.forEach(({ node, gap }, i) => {
        const clear = theirs.displacements[node]![2]! + gap
        if (frame.off.includes(i)) expect(clear).toBeGreaterThan(1e-5)
        else expect(theirs.bears[i]).toBeGreaterThan(1)
      })
      expect(apart(own, theirs, 'bears')).toBeLessThanOrEqual(FORCES)
      expect(apart(own, theirs, 'displacements')).toBeLessThanOrEqual(MOVEMENTS)
    })

    // One that is off holds as well as it presses; one that bears stands no lower than the others.
    const wrong = frame.off.length > 0 ? { holds: 1e9 } : { gap: 0 }
    it(`would not agree with ${JSON.stringify(wrong)}: ${frame.name}`, () => {
      const own = ours({ ...frame, contacts: frame.contacts.map((one) => ({ ...one, ...wrong })) })
      // Of the table's forces no more than 0.06 · 800 of 600 N.
      expect(apart(own, theirs, 'bears')).toBeGreaterThan(3 * FORCES)
      expect(apart(own, theirs, 'displacements')).toBeGreaterThan(10 * MOVEMENTS)
    })
  }

  it('is stored with the decks that are written now', () => {
    for (const frame of TOUCHING) expect(readFileSync(deckOf(frame), 'utf8')).toBe(contactDeck(frame))
  })
})
