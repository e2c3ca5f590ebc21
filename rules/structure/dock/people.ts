/**
 * People where they are worst: a crowd at the end of an empty dock, and somebody on a ladder at its outermost corner.
 *
 * A crowd on the outer half of the end section alone is left out: between its hooks and its legs people press on both, so that all of the
 * section full is the worse for each. On a dock of one section the crowd is D + L and its halves.
 */
import { LEVEL, lakewardEdge } from '../../layout/berth.ts'
import { areaOf, ownCorner } from '../../layout/footprint.ts'
import { berthSection, CORNERS, OWN_CORNERS, type PlacedSection } from '../../layout/index.ts'
import { cornerAxis } from '../../parts/corner-piece.ts'
import { type CaseLoad, loadNode, noLoad, type StateLayout } from '../second-order.ts'
import { LADDER_LOAD, LADDER_STANDOFF } from '../strength/index.ts'
import { liveLoad, livePressure } from './basic-loads.ts'
import type { SideLoad } from './combinations.ts'
import type { DockFrame } from './frame.ts'
import { caseId } from './load-cases.ts'
import { TOWARD, type Toward } from './ways.ts'

export type LoadedSide = SideLoad & { readonly load: CaseLoad }

/**
 * All on the section, or the sections, that reach farthest into the lake, or on the left or right half of the one most to that side; the rest
 * of the dock empty. What the crowd's own
 * weight pushes sideways by on legs that lean is in it, as softened as under dead load: D + L has the legs with all of theirs.
 *
 * @param lean of the frame
 */
export function crowdLoads(states: StateLayout, frame: DockFrame, lean: number): LoadedSide[] {
  const placed = frame.kit.layout.placed.filter((p) => p.role !== 'ramp')
  const reach = Math.max(...placed.map(lakewardEdge))
  const ends = placed.filter((p) => lakewardEdge(p) > reach - LEVEL)
  if (ends.length === placed.length) return []
  const crowd = (toward: Toward, on: readonly PlacedSection[], left: number, right: number): LoadedSide => {
    const load = liveLoad(states, frame, { left, right }, ({ section }) => on.includes(section))
    const [x, y] = TOWARD[toward]
    for (const { index, frame: size } of on) {
      const weight = ((left + right) / 2) * areaOf(size) * livePressure(frame)
      const sideways = (weight * lean) / 4
      for (const node of frame.corners[index]!) loadNode(load, node, [sideways * x, sideways * y, 0])
    }
    return { name: caseId('crowd', toward), toward, outside: true, load }
  }
  const most = (side: 'left' | 'right'): PlacedSection[] => [berthSection(placed, side)!]
  return [crowd('lake', ends, 1, 1), crowd('left', most('left'), 1, 0), crowd('right', most('right'), 0, 1)]
}

/** One person straight down outside of the outermost corner on each side. */
export function edgeLoads(states: StateLayout, frame: DockFrame): LoadedSide[] {
  return (['left', 'right'] as const).flatMap((side) => {
    const section = berthSection(frame.kit.layout.placed, side)
    if (!section) return []
    const { node, x, y } = outermost(frame, section, side === 'left' ? 1 : -1)
    const load = noLoad(states.layout)
    // r × F, F straight down.
    loadNode(load, node, [0, 0, -LADDER_LOAD], [-y * LADDER_LOAD, x * LADDER_LOAD, 0])
    return [{ name: caseId('edge', side), toward: side, outside: true, load }]
  })
}

/** A section's corner farthest into the lake on one side, and where a person hangs there from it, in plan, m. */
function outermost(
  frame: DockFrame,
  section: PlacedSection,
  sign: number,
): { node: number; x: number; y: number } {
  const nodes = frame.corners[section.index]!
  const at = (i: number) => frame.nodes[nodes[i]!]!
  const middle = nodes.reduce((sum, node) => sum + frame.nodes[node]!.y / 4, 0)
  const on = [0, 1, 2, 3].filter((i) => sign * (at(i).y - middle) > 0)
  const i = on.reduce((far, one) => (at(one).x > at(far).x ? one : far))
  // From the leg axis to the frame's own corner: start.left, start.right, end.left, end.right.
  const { along, across } = frame.kit.shop.catalog.sleeve
  let ownX = i < 2 ? -along : along
  let ownY = i % 2 === 0 ? across : -across
  if (section.frame.turn) {
    const [cx, cy] = ownCorner(section.frame, OWN_CORNERS[i]!)
    const [ax, ay] = cornerAxis(section.frame, CORNERS[i]!, { along, across })
    ownX = cx - ax
    ownY = cy - ay
  }
  const { c, s } = section
  return { node: nodes[i]!, x: c * ownX - s * ownY, y: s * ownX + c * ownY + sign * LADDER_STANDOFF }
}
