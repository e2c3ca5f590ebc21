/** What pushes a dock from a side for a moment: who shoves, a boat that comes alongside, a crowd at the end, somebody at the edge. */
import { loadNode, respond, type State, type StateLayout } from '../second-order.ts'
import { PUSH, pushLoad, TOWARD } from './basic-loads.ts'
import { berth, bump, bumperAt } from './boat.ts'
import type { DockFrame } from './frame.ts'
import { caseId } from './load-cases.ts'
import { crowdLoads, edgeLoads, type LoadedSide } from './people.ts'
import type { Sway } from './sway.ts'

export const sidesOf = (
  states: StateLayout,
  frame: DockFrame,
  { plain, sway, lean }: { readonly plain: State; readonly sway: Sway; readonly lean: number },
): LoadedSide[] => [
  ...shoveLoads(states, frame, sway),
  ...bumpLoads(states, frame, plain),
  ...crowdLoads(states, frame, lean),
  ...edgeLoads(states, frame),
]

/** The push at the corners that give most, each way, with the weight of who pushes. */
function shoveLoads(states: StateLayout, frame: DockFrame, sway: Sway): LoadedSide[] {
  return (['left', 'right', 'shore', 'lake'] as const).flatMap((toward) => {
    const [x, y] = TOWARD[toward]
    return (x === 0 ? sway.softAcross : sway.softAlong).map((node) => {
      const load = pushLoad(states, node, PUSH * x, PUSH * y)
      // Whoever shoves stands on that section, in its middle.
      const section = frame.corners.find((corners) => corners?.includes(node)) ?? []
      for (const corner of section) loadNode(load, corner, [0, 0, -PUSH / section.length])
      return { name: caseId('shove', toward), toward, outside: false, load }
    })
  })
}

/** A boat that comes alongside pushes its berth away from itself, for a moment. */
function bumpLoads(states: StateLayout, frame: DockFrame, plain: State): LoadedSide[] {
  const { boat } = frame.kit.design.dock
  const nodes = berth(frame)
  if (!boat || boat.mass === 0 || nodes.length === 0) return []
  const toward = boat.side === 'left' ? 'right' : 'left'
  const sign = TOWARD[toward][1]
  const node = nodes.at(-1)!
  const give = respond(plain, pushLoad(states, node, 0, 1).onNodes)[node * 6 + 1]!
  const { energy, force } = bump(boat.mass, give, bumperAt(frame))
  const load = pushLoad(states, node, 0, sign * force)
  return [{ name: caseId('boat', toward), toward, outside: true, bump: { energy, force }, load }]
}
