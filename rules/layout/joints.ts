/**
 * Joints: which section carries which, at which hooks; further edges that touch are tied; sections that overlap are told.
 *
 * One carrying rule for every shape (common practice): a corner is carried if it lies within the catalog's overhang of a hook of
 * its section's own carrying joint, measured in plan. A tie keeps level and carries nothing.
 */
import type { Corner, Edge } from '../dock.ts'
import { atLeast, SLACK } from '../numbers.ts'
import type { Shop } from '../shop.ts'
import { type EdgeLine, edgeOf, footprint, type Layout, type Placed, type Rectangle } from './place.ts'

export interface Hook {
  /** On the carrying edge, in plan. */
  readonly x: number
  readonly y: number
}

export interface PlacedJoint {
  readonly id: string
  readonly kind: 'hinge' | 'hook' | 'tie'
  /** The carrying (or first) section, and its edge. */
  readonly host: Placed
  readonly edge: Edge
  readonly guest: Placed
  readonly guestEdge: Edge
  /** Outward from the host's edge. */
  readonly nx: number
  readonly ny: number
  /** Overlap of the two edges, along the host's edge from its start corner, m. */
  readonly from: number
  readonly to: number
  /** Hooks of a carrying joint, tie places of a tie. */
  readonly hooks: readonly Hook[]
}

export interface Joints {
  /** Carrying joints in the sections' order, then ties. */
  readonly all: readonly PlacedJoint[]
  /** Corners of a section that stand on legs, by its index; none for a ramp. */
  readonly legCorners: readonly (readonly Corner[])[]
  readonly overlapping: readonly (readonly [string, string])[]
  /** Followers that meet too little of their host's edge for a pair of hooks. */
  readonly short: readonly PlacedJoint[]
}

export const CORNERS: readonly Corner[] = ['start.left', 'start.right', 'end.left', 'end.right']

/** Every choice of corners, by the bits of its number: a thousand sections alike share one. */
const CORNER_SETS: readonly (readonly Corner[])[] = Array.from({ length: 16 }, (_, mask) =>
  CORNERS.filter((_, i) => mask & (1 << i)),
)

/** Whether the i-th of `CORNERS` lies within the overhang of a hook. */
function isCarried(p: Placed, i: number, hooks: readonly Hook[], overhang: number): boolean {
  const ownX = i < 2 ? 0 : p.frame.length
  const ownY = i % 2 === 0 ? p.frame.width / 2 : -p.frame.width / 2
  const x = p.x + p.c * ownX - p.s * ownY
  const y = p.y + p.s * ownX + p.c * ownY
  for (const hook of hooks)
    if (Math.sqrt((hook.x - x) * (hook.x - x) + (hook.y - y) * (hook.y - y)) <= overhang + SLACK) return true
  return false
}

export const jointId = (a: Placed, b: Placed): string =>
  a.index < b.index ? `${a.id}~${b.id}` : `${b.id}~${a.id}`

export function join(layout: Layout, shop: Shop): Joints {
  const { overhang, tieOverlap } = shop.rules
  const all: PlacedJoint[] = []
  const short: PlacedJoint[] = []
  const legCorners: (readonly Corner[])[] = []

  for (const p of layout.placed) {
    if (p.role === 'ramp') continue
    if (p.role === 'standing') {
      legCorners[p.index] = CORNERS
      if (layout.ramp) {
        const joint = meet('hinge', layout.ramp, 'end', p, 'start', shop)
        all.push(joint)
      }
      continue
    }
    const host = layout.byId.get(p.on!)!
    const joint = meet('hook', host, p.plan.edge, p, p.plan.with, shop)
    all.push(joint)
    if (!atLeast(joint.to - joint.from, leastOverlap(shop))) short.push(joint)
    let mask = 0
    for (let i = 0; i < CORNERS.length; i++) if (!isCarried(p, i, joint.hooks, overhang)) mask |= 1 << i
    legCorners[p.index] = CORNER_SETS[mask]!
  }

  const overlapping: [string, string][] = []
  const gap = shop.rules.jointGap
  neighbors(layout.placed, gap, (a, b) => {
    const ra = footprint(a)
    const rb = footprint(b)
    if (
      Math.min(ra.x1, rb.x1) - Math.max(ra.x0, rb.x0) > SLACK &&
      Math.min(ra.y1, rb.y1) - Math.max(ra.y0, rb.y0) > SLACK
    ) {
      overlapping.push([a.id, b.id])
      return
    }
    if (a.role === 'ramp' || b.role === 'ramp' || a.on === b.id || b.on === a.id) return
    const edges = facing(a, b, ra, rb, gap)
    if (!edges) return
    const tie = meet('tie', a, edges[0], b, edges[1], shop)
    if (atLeast(tie.to - tie.from, tieOverlap)) all.push(tie)
  })
  return { all, legCorners, overlapping, short }
}

/** Least shared edge for two hooks set in from its ends, side by side at the closest, m. */
export const leastOverlap = ({ rules, catalog }: Shop): number =>
  2 * rules.hookInset + rules.bracketsPerHook * catalog.hooks.bracket.size[1]

const NO_HOOKS: readonly Hook[] = []
const hookAt = (on: EdgeLine, t: number): Hook => ({ x: on.x + on.dx * t, y: on.y + on.dy * t })

/** Two edges that face each other: their overlap, and a pair of hooks set in from its ends. */
function meet(
  kind: PlacedJoint['kind'],
  host: Placed,
  edge: Edge,
  guest: Placed,
  guestEdge: Edge,
  shop: Shop,
): PlacedJoint {
  const inset = shop.rules.hookInset
  const least = leastOverlap(shop)
  const on = edgeOf(host, edge)
  const own = edgeOf(guest, guestEdge)
  const a = (own.x - on.x) * on.dx + (own.y - on.y) * on.dy
  const b = a + own.length * (own.dx * on.dx + own.dy * on.dy)
  const from = Math.max(0, Math.min(a, b))
  const to = Math.min(on.length, Math.max(a, b))
  const overlap = to - from
  // Where the edges meet too little for the shop's inset the hooks sit at the quarters; a finding says so.
  const set = overlap >= least - SLACK ? inset : overlap / 4
  const hooks =
    overlap > SLACK && kind !== 'hinge' ? [hookAt(on, from + set), hookAt(on, to - set)] : NO_HOOKS
  return {
    id: jointId(host, guest),
    kind,
    host,
    edge,
    guest,
    guestEdge,
    nx: on.nx,
    ny: on.ny,
    from,
    to,
    hooks,
  }
}

/**
 * Pairs of sections whose footprints come within a joint gap, each once, the one that stands first in `placed` first.
 * A sweep along the dock's longer extent over flat lists: no object a section.
 */
function neighbors(placed: readonly Placed[], gap: number, visit: (a: Placed, b: Placed) => void): void {
  const n = placed.length
  const box = new Float64Array(4 * n)
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < n; i++) {
    const r = footprint(placed[i]!)
    box[4 * i] = r.x0
    box[4 * i + 1] = r.x1
    box[4 * i + 2] = r.y0
    box[4 * i + 3] = r.y1
    x0 = Math.min(x0, r.x0)
    x1 = Math.max(x1, r.x1)
    y0 = Math.min(y0, r.y0)
    y1 = Math.max(y1, r.y1)
  }
  const along = x1 - x0 >= y1 - y0 ? 0 : 2
  const across = 2 - along
  const reach = gap + 2e-3
  const order = new Int32Array(n)
    .map((_, i) => i)
    .sort((p, q) => box[4 * p + along]! - box[4 * q + along]! || p - q)
  const found: number[] = []
  for (let k = 0; k < n; k++) {
    const i = order[k]!
    const end = box[4 * i + along + 1]! + reach
    for (let m = k + 1; m < n && box[4 * order[m]! + along]! <= end; m++) {
      const j = order[m]!
      if (
        box[4 * j + across]! <= box[4 * i + across + 1]! + reach &&
        box[4 * i + across]! <= box[4 * j + across + 1]! + reach
      )
        found.push(i < j ? i * n + j : j * n + i)
    }
  }
  // By the later section, then the earlier: the order of the plan, whatever the sweep's.
  found.sort((p, q) => (p % n) - (q % n) || p - q)
  for (const pair of found) visit(placed[Math.floor(pair / n)]!, placed[pair % n]!)
}

/** The edges of two sections that face each other across the joint gap, or null. */
function facing(a: Placed, b: Placed, ra: Rectangle, rb: Rectangle, gap: number): [Edge, Edge] | null {
  const near = (d: number): boolean => Math.abs(d - gap) <= 1e-3
  if (near(rb.x0 - ra.x1)) return [edgeToward(a, 1, 0), edgeToward(b, -1, 0)]
  if (near(ra.x0 - rb.x1)) return [edgeToward(a, -1, 0), edgeToward(b, 1, 0)]
  if (near(rb.y0 - ra.y1)) return [edgeToward(a, 0, 1), edgeToward(b, 0, -1)]
  if (near(ra.y0 - rb.y1)) return [edgeToward(a, 0, -1), edgeToward(b, 0, 1)]
  return null
}

/** The edge whose outward direction is (nx, ny). */
function edgeToward(p: Placed, nx: number, ny: number): Edge {
  const x = p.c * nx + p.s * ny
  const y = -p.s * nx + p.c * ny
  return x > 0.5 ? 'end' : x < -0.5 ? 'start' : y > 0.5 ? 'left' : 'right'
}
