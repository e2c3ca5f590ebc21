/** Puts a plan on the water: where each section lies, and which cannot be reached. */
import type { Frame } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import type { Edge, Role } from '../dock.ts'
import {
  cosOf,
  footprintAt,
  outlineAt,
  ownCorner,
  type Rectangle,
  type Size,
  type Stance,
  sideLength,
  sinOf,
} from './footprint.ts'
import type { Outline } from './outline.ts'
import type { Planned } from './plan.ts'

export interface PlacedSection {
  readonly id: string
  readonly index: number
  readonly role: Role
  readonly frame: Frame
  /** Middle of its start edge, in plan. */
  readonly x: number
  readonly y: number
  /** Degrees, from 0 to less than 360; quarter turns but for what hangs behind a corner piece. */
  readonly heading: number
  /** Cosine and sine of the heading, exact for quarter turns. */
  readonly c: number
  readonly s: number
  /** The section that it hangs on; null for the ramp and the standing section. */
  readonly host: PlacedSection | null
  readonly plan: Planned
  /** Its frame's own edges: all sections of a frame share them. */
  readonly edges: OwnEdges
}

/** A side of a section: from its start corner (start and end edges: the left corner) along `d` for `length`; `n` points outward. */
export interface EdgeLine {
  readonly x: number
  readonly y: number
  readonly dx: number
  readonly dy: number
  readonly nx: number
  readonly ny: number
  readonly length: number
}

/** Which way an edge of a frame looks, degrees from its own x axis. */
function edgeHeading({ turn = 0 }: Size, edge: Edge): number {
  switch (edge) {
    case 'start':
      return 180
    case 'end':
      return turn
    case 'left':
      return 90 + turn / 2
    case 'right':
      return 270 + turn / 2
  }
}

export function ownEdge(frame: Size, edge: Edge): EdgeLine {
  const across = edge === 'start' || edge === 'end'
  const [x, y] = ownCorner(frame, edge === 'right' ? 0 : edge === 'end' ? 2 : 1)
  const looks = edgeHeading(frame, edge)
  const nx = cosOf(looks)
  const ny = sinOf(looks)
  const length = across ? frame.width : sideLength(frame, edge)
  // From its start corner on: of end and left edges what looks outward is on the left of that way, of the others on the right.
  const outLeft = edge === 'end' || edge === 'left'
  return { x, y, dx: outLeft ? ny : 0 - ny, dy: outLeft ? 0 - nx : nx, nx, ny, length }
}

type OwnEdges = Readonly<Record<Edge, EdgeLine>>

/** The four edges of each frame: a long dock asks for them at every joint. */
const edgesOfFrames = ({ catalog }: Shop): ReadonlyMap<Frame, OwnEdges> =>
  new Map(
    catalog.frames.map((frame) => [
      frame,
      {
        start: ownEdge(frame, 'start'),
        end: ownEdge(frame, 'end'),
        left: ownEdge(frame, 'left'),
        right: ownEdge(frame, 'right'),
      },
    ]),
  )

export const edgeOf = (p: PlacedSection, edge: Edge): EdgeLine => inPlan(p, p.edges[edge])

/** An edge of a section that lies so. */
export function inPlan(p: Stance, own: EdgeLine): EdgeLine {
  const { c, s } = p
  return {
    x: p.x + c * own.x - s * own.y,
    y: p.y + s * own.x + c * own.y,
    dx: c * own.dx - s * own.dy,
    dy: s * own.dx + c * own.dy,
    nx: c * own.nx - s * own.ny,
    ny: s * own.nx + c * own.ny,
    length: own.length,
  }
}

/** What a plan begins with, known before it is placed: the standing section, and the ramp with its center line. */
export interface ShoreEnd {
  readonly standingIndex: number
  readonly standing: Frame
  readonly rampIndex: number
  /** Null without one, or of a frame that the catalog does not have. */
  readonly ramp: Frame | null
  readonly rampY: number
}

/** Null where nothing stands: an unknown frame, or a plan without a root. */
export function shoreEndOf(plan: readonly Planned[], shop: Shop): ShoreEnd | null {
  const root = plan.findIndex((item) => item.on === null)
  if (root < 0) return null
  const hasRamp = plan[root]!.ramp
  const standingIndex = hasRamp ? plan.findIndex((item) => item.on === plan[root]!.id) : root
  const standing = standingIndex < 0 ? undefined : shop.frames.get(plan[standingIndex]!.frame)
  if (!standing) return null
  const ramp = hasRamp ? (shop.frames.get(plan[root]!.frame) ?? null) : null
  // No gap at the hinge; `along` runs from the left corner of the ramp's end edge.
  const rampY = ramp ? standing.width / 2 + plan[standingIndex]!.along - ramp.width / 2 : 0
  return { standingIndex, standing, rampIndex: hasRamp ? root : -1, ramp, rampY }
}

/** Who hangs on whom, as linked lists in the plan's order: no list a section. */
function childrenOf(plan: readonly Planned[]): { first: Int32Array; next: Int32Array } {
  const first = new Int32Array(plan.length).fill(-1)
  const next = new Int32Array(plan.length).fill(-1)
  for (let i = plan.length - 1; i >= 0; i--) {
    const { host } = plan[i]!
    if (host < 0) continue
    next[i] = first[host]!
    first[host] = i
  }
  return { first, next }
}

/** Where a section lies that hangs there: its mating edge looks against its host's, a joint's gap from it. */
export function hungOn(
  host: PlacedSection,
  item: Pick<Planned, 'edge' | 'with' | 'along'>,
  frame: Frame,
  own: EdgeLine,
  gap: number,
): Stance & { readonly heading: number } {
  const on = edgeOf(host, item.edge)
  const turned = host.heading + edgeHeading(host.frame, item.edge) + 180 - edgeHeading(frame, item.with)
  const heading = ((turned % 360) + 360) % 360
  const c = cosOf(heading)
  const s = sinOf(heading)
  const mid = item.along + own.length / 2
  const mx = on.x + on.dx * mid + on.nx * gap
  const my = on.y + on.dy * mid + on.ny * gap
  const ox = own.x + (own.dx * own.length) / 2
  const oy = own.y + (own.dy * own.length) / 2
  return { x: mx - (c * ox - s * oy), y: my - (s * ox + c * oy), c, s, heading }
}

export interface Layout {
  /** In the plan's order. */
  readonly placed: readonly PlacedSection[]
  readonly ramp: PlacedSection | null
  readonly standing: PlacedSection | null
  /** Sections whose host is missing, or that hang in a circle. */
  readonly unreachable: readonly string[]
  /** Sections of a frame that the catalog does not have. */
  readonly unknownFrames: readonly { readonly id: string; readonly frame: string }[]
  /** In the order of work: standing section, ramp, then outward. */
  readonly workOrder: readonly PlacedSection[]
}

/**
 * `start`: x of the standing section's start edge (with a ramp: the hinge axis). The standing section lies on the center line,
 * heading lakeward.
 */
export function place(plan: readonly Planned[], shop: Shop, start: number): Layout {
  const gap = shop.rules.jointGap
  const children = childrenOf(plan)
  const edgesOf = shop.once(edgesOfFrames)
  const results: (PlacedSection | undefined)[] = new Array(plan.length)
  const workOrder: PlacedSection[] = []
  const add = (
    i: number,
    frame: Frame,
    role: Role,
    x: number,
    y: number,
    heading: number,
    host: PlacedSection | null,
  ): PlacedSection => {
    const item = plan[i]!
    const c = cosOf(heading)
    const s = sinOf(heading)
    const edges = edgesOf.get(frame)!
    const placed = { id: item.id, index: i, role, frame, x, y, heading, c, s, host, plan: item, edges }
    results[i] = placed
    workOrder.push(placed)
    return placed
  }

  const shoreEnd = shoreEndOf(plan, shop)
  let ramp: PlacedSection | null = null
  let standing: PlacedSection | null = null
  if (shoreEnd) {
    standing = add(shoreEnd.standingIndex, shoreEnd.standing, 'standing', start, 0, 0, null)
    if (shoreEnd.ramp)
      ramp = add(
        shoreEnd.rampIndex,
        shoreEnd.ramp,
        'ramp',
        start - shoreEnd.ramp.length,
        shoreEnd.rampY,
        0,
        null,
      )
  }
  for (let q = 0; q < workOrder.length; q++) {
    const host = workOrder[q]!
    if (host.role === 'ramp') continue
    for (let i = children.first[host.index]!; i >= 0; i = children.next[i]!) {
      const item = plan[i]!
      const frame = shop.frames.get(item.frame)
      if (results[i] || !frame) continue
      const { x, y, heading } = hungOn(host, item, frame, edgesOf.get(frame)![item.with], gap)
      add(i, frame, 'following', x, y, heading, host)
    }
  }
  const unknown = plan.filter((item) => !shop.frames.has(item.frame))
  return {
    placed: results.filter((p) => p !== undefined),
    ramp,
    standing,
    unreachable: plan.filter((item, i) => !results[i] && shop.frames.has(item.frame)).map((item) => item.id),
    unknownFrames: unknown.map(({ id, frame }) => ({ id, frame })),
    workOrder,
  }
}

export const edgeLength = (p: PlacedSection, edge: Edge): number => p.edges[edge].length

/** The rectangle around what a section covers in plan, and what it covers. */
export const footprint = (p: PlacedSection): Rectangle => footprintAt(p, p.frame)
export const outline = (p: PlacedSection): Outline => outlineAt(p, p.frame)
