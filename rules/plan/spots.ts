/** Where along its edges a dock has room for one more section, and the places along an edge that a hand means: flush, middle, corner. */
import type { Frame } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import type { Edge } from '../dock.ts'
import { outlineAt, ownCorner } from '../layout/footprint.ts'
import { type EdgeLine, edgeLength, edgeOf, leastOverlap, type PlacedSection } from '../layout/index.ts'
import { boundsOf, type Outline, overlapOf } from '../layout/outline.ts'
import { hungOn, ownEdge } from '../layout/place.ts'
import { quantize, SLACK } from '../numbers.ts'
import { armOf, type Hanging, type Operation } from './operations.ts'
import type { PlanItem } from './schema.ts'
import type { Lying } from './troubles.ts'

/**
 * `flush`: corner at corner with the host's edge. `middle`: middles at middles. `corner`: in the inner corner that the host makes with a
 * section beside it, a joint's gap from that one, and so tied to it.
 */
export interface Spot {
  readonly at: 'flush-start' | 'flush-end' | 'middle' | 'corner'
  readonly along: number
}

export const EDGES: readonly Edge[] = ['end', 'left', 'right', 'start']

/** How far a frame reaches out from one of its edges, m. */
function depthOf(frame: Frame, mate: Edge): number {
  const { x, y, nx, ny } = ownEdge(frame, mate)
  return Math.max(
    ...[0, 1, 2, 3].map((i) => {
      const [px, py] = ownCorner(frame, i)
      return (x - px) * nx + (y - py) * ny
    }),
  )
}

/** What a section would cover, hung there; where the host lies. */
const coverOf = (host: PlacedSection, to: Omit<Hanging, 'on'>, frame: Frame, gap: number): Outline =>
  outlineAt(hungOn(host, to, frame, ownEdge(frame, to.with), gap), frame)

/** What another covers, in an edge's own measures: along it, and outward. */
function seenFrom({ x, y, dx, dy, nx, ny }: EdgeLine, cover: Outline) {
  const along = cover.map(([px, py]) => (px - x) * dx + (py - y) * dy)
  const off = cover.map(([px, py]) => (px - x) * nx + (py - y) * ny)
  return {
    along: [Math.min(...along), Math.max(...along)] as const,
    off: [Math.min(...off), Math.max(...off)] as const,
  }
}

export interface Room {
  /**
   * The places along an edge where a section of that frame lies clear of all others and its hooks find enough of the edge, in order
   * along it; the one that is meant first where nothing is said comes out of `meant`.
   */
  spots(on: string, edge: Edge, mate: Edge, frame: Frame): readonly Spot[]
  /** All such places, clear or not: what a section snaps to while it is slid. */
  snaps(on: string, edge: Edge, mate: Edge, frame: Frame): readonly Spot[]
}

/** @param without sections that are as if they were not there: an arm that is being moved */
export function roomOf({ layout }: Lying, shop: Shop, without: readonly string[] = []): Room {
  const gap = shop.rules.jointGap
  const least = leastOverlap(shop)
  const gone = new Set(without)
  const there = layout.placed.filter(({ id }) => !gone.has(id))
  const byId = new Map(there.map((p) => [p.id, p]))
  const covers = there.map((p) => outlineAt(p, p.frame))
  const boxes = covers.map(boundsOf)
  const longest = Math.max(
    ...shop.catalog.frames.map((frame) => Math.max(depthOf(frame, 'start'), depthOf(frame, 'left'))),
  )
  const near = new Map<PlacedSection, readonly Outline[]>()
  /** What anything hung on a section could meet: a long dock is not looked through at each of its edges. */
  const around = (host: PlacedSection): readonly Outline[] => {
    const known = near.get(host)
    if (known) return known
    const own = boundsOf(outlineAt(host, host.frame))
    const reach = longest + 2 * gap
    const found = covers.filter((_, i) => {
      const c = boxes[i]!
      return (
        there[i] !== host &&
        c.x0 < own.x1 + reach &&
        c.x1 > own.x0 - reach &&
        c.y0 < own.y1 + reach &&
        c.y1 > own.y0 - reach
      )
    })
    near.set(host, found)
    return found
  }
  const snaps = (on: string, edge: Edge, mate: Edge, frame: Frame): Spot[] => {
    const host = byId.get(on)
    if (!host || host.role === 'ramp') return []
    // A run goes on from the edge of a corner piece that turns it; its sides look askew to all else.
    if (host.frame.turn && (edge === 'left' || edge === 'right')) return []
    const whole = edgeLength(host, edge)
    const { length } = ownEdge(frame, mate)
    const out = depthOf(frame, mate)
    const found: Spot[] = []
    const add = (at: Spot['at'], raw: number): void => {
      const along = quantize(raw)
      const shared = Math.min(whole, along + length) - Math.max(0, along)
      if (shared < least - SLACK || found.some((spot) => Math.abs(spot.along - along) < 1e-4)) return
      found.push({ at, along })
    }
    add('flush-start', 0)
    add('flush-end', whole - length)
    add('middle', (whole - length) / 2)
    const line = edgeOf(host, edge)
    for (const cover of around(host)) {
      const {
        along: [from, to],
        off: [near, far],
      } = seenFrom(line, cover)
      if (far <= gap + SLACK || near >= gap + out - SLACK) continue
      add('corner', to + gap)
      add('corner', from - gap - length)
    }
    return found.sort((p, q) => p.along - q.along)
  }
  return {
    snaps,
    spots: (on, edge, mate, frame) =>
      snaps(on, edge, mate, frame).filter(({ along }) => {
        const host = byId.get(on)!
        const cover = coverOf(host, { edge, with: mate, along }, frame, gap)
        return around(host).every((other) => overlapOf(cover, other) <= SLACK)
      }),
  }
}

/** Of several the one that is meant where nobody says: along a side the farthest out, so that an end makes an L; else flush at the start. */
export function meant(spots: readonly Spot[], edge: Edge): Spot | null {
  const wanted = edge === 'left' || edge === 'right' ? 'flush-end' : 'flush-start'
  return spots.find(({ at }) => at === wanted) ?? spots.find(({ at }) => at === 'middle') ?? spots[0] ?? null
}

/** The snap within reach of a place, or that place itself. */
export function snapped(snaps: readonly Spot[], along: number, within: number): number {
  let best: Spot | null = null
  for (const spot of snaps)
    if (Math.abs(spot.along - along) <= Math.abs((best ?? spot).along - along)) best = spot
  return best && Math.abs(best.along - along) <= within ? best.along : quantize(along)
}

/** A quarter turn further on the same edge: start, left, end, right. Flush stays flush and middle middle; else the middle stays where it is. */
export function turned(lying: Lying, id: string): Operation | null {
  const placed = lying.layout.placed.find((p) => p.id === id)
  if (!placed?.host) return null
  const { edge, with: mate, along } = placed.plan
  const next = ({ start: 'left', left: 'end', end: 'right', right: 'start' } as const)[mate]
  const whole = edgeLength(placed.host, edge)
  const was = ownEdge(placed.frame, mate).length
  const will = ownEdge(placed.frame, next).length
  const near = (a: number): boolean => Math.abs(a - along) < 1e-4
  const to = near(0) ? 0 : near(whole - was) ? whole - will : along + (was - will) / 2
  return { kind: 'hang', id, on: placed.host.id, edge, with: next, along: quantize(to) }
}

/** Where a section hangs. Null for the ramp and for the one that stands first. */
export function hangingOf(lying: Lying, id: string): Hanging | null {
  const placed = lying.layout.placed.find((p) => p.id === id)
  if (!placed?.host) return null
  const { edge, with: mate, along } = placed.plan
  return { on: placed.host.id, edge, with: mate, along }
}

/** Sections that go with one when it goes, itself not counted. */
export const hangsOn = (plan: readonly PlanItem[], id: string): readonly string[] =>
  armOf(plan, id).filter((one) => one !== id)
