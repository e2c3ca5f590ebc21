/** Loads of a deck, brought onto the side rails that carry it. */
import { sectionProperties } from '../../catalog/section-properties.ts'
import { areaOf, cosOf, type Size, sideLength, sinOf } from '../../layout/footprint.ts'
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
    const { c, s } = alongSide(rail)
    const arm = lever(rail) * outward
    let span = 0
    for (const member of rail.members) {
      loadMember(layout, load, member, [0, 0, -q])
      span += layout.members.length[member]!
    }
    // Twist of the rail, brought to its ends: about its own line, down on the left turns to the left.
    const half = (q * span * arm) / 2
    for (const node of [rail.nodes[0]!, rail.nodes.at(-1)!])
      loadNode(load, node, [0, 0, 0], [-half * c, -half * s, 0])
  }
}

/** Which way a side rail lies: a corner piece's sides lie halfway between its edges. */
const alongSide = ({ section }: RailInFrame): { readonly c: number; readonly s: number } =>
  section.frame.turn
    ? {
        c: cosOf(section.heading + section.frame.turn / 2),
        s: sinOf(section.heading + section.frame.turn / 2),
      }
    : section

/** The length between the leg axes carries what lies on the whole frame. */
export const stretch = ({ kit, nodes }: DockFrame, rail: RailInFrame): number => {
  const { frame } = rail.section
  const { along } = kit.shop.catalog.sleeve
  if (!frame.turn) return frame.length / (frame.length - 2 * along)
  const [a, b] = [nodes[rail.nodes[0]!]!, nodes[rail.nodes.at(-1)!]!]
  return sideLength(frame, rail.edge === 'left' ? 'left' : 'right') / Math.hypot(b.x - a.x, b.y - a.y)
}

/**
 * What lies evenly on a whole deck, over this, is what a side rail carries of it for each of its meters: half of it each. Of a corner piece
 * the longer side carries more, as its middle lies nearer to that.
 */
export function spreadOver(frame: Size, edge: RailInFrame['edge']): number {
  if (!frame.turn) return 2 * frame.length
  const [left, right] = [sideLength(frame, 'left'), sideLength(frame, 'right')]
  const [own, other] = edge === 'left' ? [left, right] : [right, left]
  return (own * 3 * (own + other)) / (2 * own + other)
}

/** Deck that a side rail carries, for each of its meters: half of this, m. */
export const deckBeside = (frame: Size, edge: RailInFrame['edge']): number =>
  frame.turn ? (2 * areaOf(frame)) / spreadOver(frame, edge) : frame.width

/** Where the middle of a half deck's load lies outside of the leg axis, m: the rail that takes it stands there. */
export const railLever = (frame: DockFrame, rail: RailInFrame): number =>
  frame.kit.shop.catalog.sleeve.across - sectionProperties(rail.stock).width / 2
