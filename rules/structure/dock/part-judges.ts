/** Who judges legs and rails of a dock's frame: one for each, in their order. */
import type { DockFrame } from './frame.ts'
import { type MemberJudge, memberJudge } from './member-use.ts'

const memberLength = ({ nodes, members }: DockFrame, member: number): number => {
  const { from, to } = members[member]!
  const a = nodes[from]!
  const b = nodes[to]!
  return Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z)
}

export const legJudges = (frame: DockFrame): MemberJudge[] =>
  frame.legs.map(({ leg, members }) =>
    memberJudge(
      frame.kit.shop,
      leg.stock!.stock,
      members.map((m) => {
        const length = memberLength(frame, m)
        return { at: frame.slot[m]!, length, held: length }
      }),
      'none',
    ),
  )

export const railJudges = (frame: DockFrame): MemberJudge[] =>
  frame.rails.map((rail) => {
    const { frame: size } = rail.section
    const side = rail.edge === 'left' || rail.edge === 'right'
    const held = side ? size.length / (size.cross.count + 1) : size.width
    return memberJudge(
      frame.kit.shop,
      side ? size.rail : size.ends,
      rail.members.map((m) => ({ at: frame.slot[m]!, length: memberLength(frame, m), held })),
      'ends',
    )
  })
