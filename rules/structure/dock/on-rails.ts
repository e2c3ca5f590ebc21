/** Loads of a deck, brought onto the side rails that carry it. */
import { sectionProperties } from '../../catalog/section-properties.ts'
import { type CaseLoad, loadMember, loadNode, type StateLayout } from '../second-order.ts'
import type { DockFrame, RailInFrame } from './frame.ts'

const railsOf = (frame: DockFrame): readonly RailInFrame[] =>
  frame.rails.filter((rail) => rail.edge === 'left' || rail.edge === 'right')

/** Downward on the side rails, N for each meter of each rail by section; the deck's own half lies outside of the leg axes. */
export function onRails(
  { layout }: StateLayout,
  frame: DockFrame,
  load: CaseLoad,
  perRail: (rail: RailInFrame) => number,
  lever: (rail: RailInFrame) => number,
): void {
  for (const rail of railsOf(frame)) {
    const q = perRail(rail)
    if (q === 0) continue
    const outward = rail.edge === 'left' ? 1 : -1
    const { c, s } = rail.section
    const arm = lever(rail) * outward
    let span = 0
    for (const member of rail.members) {
      loadMember(layout, load, member, [0, 0, -q])
      span += layout.members.length[member]!
    }
    // Twist of the rail, brought to its ends: about the section's own x axis, down on the left turns to the left.
    const half = (q * span * arm) / 2
    for (const node of [rail.nodes[0]!, rail.nodes.at(-1)!])
      loadNode(load, node, [0, 0, 0], [-half * c, -half * s, 0])
  }
}

/** The length between the leg axes carries what lies on the whole frame. */
export const stretch = (frame: DockFrame, rail: RailInFrame): number => {
  const { along } = frame.kit.shop.catalog.sleeve
  return rail.section.frame.length / (rail.section.frame.length - 2 * along)
}

/** Where the middle of a half deck's load lies outside of the leg axis, m: the rail that takes it stands there. */
export const railLever = (frame: DockFrame, rail: RailInFrame): number =>
  frame.kit.shop.catalog.sleeve.across - sectionProperties(rail.stock).width / 2
