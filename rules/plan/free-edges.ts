/** Free edges as they are offered: where one more section would hang, or the arm that is being moved. */
import type { Frame } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import { type EdgeLine, edgeOf } from '../layout/index.ts'
import { ownEdge } from '../layout/place.ts'
import { armOf, freshId, type Hanging, type Operation } from './operations.ts'
import { EDGES, meant, roomOf } from './spots.ts'
import { type Lying, spokenOf } from './troubles.ts'

export interface FreeEdge {
  readonly hanging: Hanging
  readonly line: EdgeLine
  /** In the middle of what the two edges would share, in plan with the first section's start at 0, m. */
  readonly x: number
  readonly y: number
  /** Which way the edge looks, for one who looks at the lake. */
  readonly way: 'lake' | 'shore' | 'left' | 'right'
}

export interface Offer {
  /** Of new sections: their frame, and by which edge they are hung. */
  readonly frame: Frame
  readonly by: Hung
  /** The section whose arm is to be hung elsewhere. */
  readonly moving: string | null
}

/** By the section that it is an edge of. */
export function freeEdges(
  lying: Lying,
  shop: Shop,
  { frame: newFrame, by, moving }: Offer,
): ReadonlyMap<string, readonly FreeEdge[]> {
  const moved = lying.layout.placed.find(({ id }) => id === moving)
  const room = roomOf(lying, shop, moved ? armOf(lying.plan, moved.id) : [])
  const frame = moved?.frame ?? newFrame
  return new Map(
    lying.layout.placed.map((section) => [
      section.id,
      EDGES.flatMap((edge): FreeEdge[] => {
        const mate = moved ? moved.plan.with : mateFor(edge, by)
        const spot = meant(room.spots(section.id, edge, mate, frame), edge)
        if (!spot) return []
        const line = edgeOf(section, edge)
        const own = ownEdge(frame, mate).length
        const mid = (Math.max(0, spot.along) + Math.min(line.length, spot.along + own)) / 2
        const hanging = { on: section.id, edge, with: mate, along: spot.along }
        return [{ hanging, line, x: line.x + line.dx * mid, y: line.y + line.dy * mid, way: wayOf(line) }]
      }),
    ]),
  )
}

/**
 * `out`: standing out, by its start. `beside`: lying along, by a side, so that it looks the way its host does where it can. `end`: by its end,
 * as a corner piece is that turns to the right.
 */
export type Hung = 'out' | 'beside' | 'end'

const mateFor = (edge: Hanging['edge'], by: Hung): Hanging['edge'] =>
  by === 'out' ? 'start' : by === 'end' ? 'end' : edge === 'right' ? 'left' : 'right'

const wayOf = ({ nx, ny }: EdgeLine): FreeEdge['way'] =>
  nx > 0.5 ? 'lake' : nx < -0.5 ? 'shore' : ny > 0 ? 'left' : 'right'

/** One more section there. */
export const addAt = (
  { plan }: Lying,
  design: Design,
  hanging: Hanging,
  frame: string = design.dock.frame,
): Operation & { readonly kind: 'add' } => ({
  kind: 'add',
  arm: [
    {
      at: plan.length,
      item: {
        id: freshId(plan, spokenOf(design)),
        ...hanging,
        ...(frame !== design.dock.frame && { frame }),
      },
    },
  ],
})
