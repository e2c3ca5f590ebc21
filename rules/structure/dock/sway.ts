/** How far a dock gives under a push at its outer corners. */
import { respond, type State, type StateLayout } from '../second-order.ts'
import { PUSH, pushLoad } from './basic-loads.ts'
import type { DockFrame } from './frame.ts'

/** Sections whose corners are tried with a push. */
const MOST_OUTER = 4

/** Outermost corners: of sections that carry no other one, the last of them in the list. */
export function outerCorners(frame: DockFrame): readonly number[] {
  const { joints, layout } = frame.kit
  const carrying = new Set(joints.all.filter((j) => j.kind === 'hook').map((j) => j.host.index))
  return layout.placed
    .filter((p) => p.role !== 'ramp' && !carrying.has(p.index))
    .slice(-MOST_OUTER)
    .flatMap((p) => frame.corners[p.index]!)
}

/** How far the softest outer corner gives under the push, along the dock's axes, without axial forces. */
export interface Sway {
  /** m */
  readonly along: number
  readonly across: number
  readonly nodeAlong: number
  readonly nodeAcross: number
  /** All that give as much, one for each line along which a push acts: a dock that is alike on both sides is pushed on both. */
  readonly softAlong: readonly number[]
  readonly softAcross: readonly number[]
}

/** Of the softest corner's give: what gives so much is as soft. */
const AS_SOFT = 0.98

export function swayOf(states: StateLayout, frame: DockFrame, plain: State): Sway {
  const { nodes } = frame
  const outer = outerCorners(frame)
  const softest = (direction: 0 | 1) => {
    const gives = outer.map((node) => {
      const push = direction === 0 ? pushLoad(states, node, PUSH, 0) : pushLoad(states, node, 0, PUSH)
      return respond(plain, push.onNodes)[node * 6 + direction]!
    })
    const most = gives.reduce((high, give) => Math.max(high, give), 0)
    const line = direction === 0 ? 'y' : 'x'
    const soft: number[] = []
    outer.forEach((node, i) => {
      const alike = soft.some((other) => Math.abs(nodes[other]![line] - nodes[node]![line]) < 1e-3)
      if (most > 0 && gives[i]! >= AS_SOFT * most && !alike) soft.push(node)
    })
    return { most, node: most > 0 ? outer[gives.indexOf(most)]! : -1, soft }
  }
  const along = softest(0)
  const across = softest(1)
  return {
    along: along.most,
    across: across.most,
    nodeAlong: along.node,
    nodeAcross: across.node,
    softAlong: along.soft,
    softAcross: across.soft,
  }
}
