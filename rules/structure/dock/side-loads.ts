/** What pushes a dock from a side for a moment: who shoves, a boat that comes alongside, a crowd at the end, somebody at the edge. */

import { lying } from '../../layout/berth.ts'
import { loadNode, respond, type State, type StateLayout } from '../second-order.ts'
import { PUSH, pushLoad, TOWARD } from './basic-loads.ts'
import { bump, bumperAt, tiedTo } from './boat.ts'
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

const ALL_WAYS = ['left', 'right', 'shore', 'lake'] as const

/** The push at the corners that give most, each way, with the weight of who pushes. */
function shoveLoads(states: StateLayout, frame: DockFrame, sway: Sway): LoadedSide[] {
  return ALL_WAYS.flatMap((toward) => {
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

/**
 * A boat that comes alongside pushes its berth away from itself, for a moment: one boat at a time, each a load of its own, so that every part
 * has the worst of them.
 */
const bumpLoads = (states: StateLayout, frame: DockFrame, plain: State): LoadedSide[] =>
  lying(frame.kit).flatMap((berth) => {
    const { mass } = berth.boat
    if (mass === 0) return []
    const { nx, ny } = berth.line
    const toward = ALL_WAYS.find((way) => TOWARD[way][0] * nx + TOWARD[way][1] * ny < -0.5)!
    const [x, y] = TOWARD[toward]
    // Along a side at the corner farther out; of an end's two corners neither is, and each is tried.
    const corners = tiedTo(frame, berth)
    const hit = berth.edge === 'start' || berth.edge === 'end' ? corners : corners.slice(-1)
    return hit.map((node) => {
      const away = respond(plain, pushLoad(states, node, Math.abs(x), Math.abs(y)).onNodes)
      const give = away[node * 6 + (y === 0 ? 0 : 1)]!
      const { energy, force } = bump(mass, give, bumperAt(frame, berth))
      const load = pushLoad(states, node, x * force, y * force)
      return { name: caseId('boat', toward), toward, outside: true, bump: { energy, force }, load }
    })
  })
