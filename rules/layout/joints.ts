/**
 * Joints: which section carries which, at which hooks; further edges that touch are tied; sections that overlap are told.
 *
 * One carrying rule for every shape (common practice): a corner is carried if it lies within the catalog's overhang of a hook of
 * its section's own carrying joint, measured in plan. A tie keeps level and carries nothing.
 */

import type { Shop } from '../catalog-index.ts'
import type { Corner, Edge } from '../dock.ts'
import { atLeast, SLACK } from '../numbers.ts'
import { isSquare, ownCorner } from './footprint.ts'
import { overlapOf } from './outline.ts'
import { edgeOf, footprint, type Layout, outline, type PlacedSection } from './place.ts'

export interface Hook {
  /** On the carrying edge, in plan. */
  readonly x: number
  readonly y: number
}

export interface PlacedJoint {
  readonly id: string
  readonly kind: 'hinge' | 'hook' | 'tie'
  /** The carrying (or first) section, and its edge. */
  readonly host: PlacedSection
  readonly edge: Edge
  readonly guest: PlacedSection
  readonly guestEdge: Edge
  /** Overlap of the two edges, along the host's edge from its start corner, m. */
  readonly from: number
  readonly to: number
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

/** Of each of these its number among a frame's own corners. */
export const OWN_CORNERS = [1, 0, 2, 3] as const

/** Every choice of corners, by the bits of its number: a thousand sections alike share one. */
const CORNER_SETS: readonly (readonly Corner[])[] = Array.from({ length: 16 }, (_, mask) =>
  CORNERS.filter((_, i) => mask & (1 << i)),
)

/** The corners that no hook of a section's own carrying joint carries. */
function standingCorners(p: PlacedSection, joint: PlacedJoint, shop: Shop): readonly Corner[] {
  if (!hasHooks(joint)) return CORNERS
  const on = edgeOf(joint.host, joint.edge)
  const reach = shop.rules.overhang + SLACK
  const inset = insetOf(joint, shop)
  let mask = 0
  for (let i = 0; i < CORNERS.length; i++) {
    const [ownX, ownY] = ownCorner(p.frame, OWN_CORNERS[i]!)
    const x = p.x + p.c * ownX - p.s * ownY
    const y = p.y + p.s * ownX + p.c * ownY
    let carried = false
    for (let k = 0; k < 2; k++) {
      const t = k === 0 ? joint.from + inset : joint.to - inset
      const dx = on.x + on.dx * t - x
      const dy = on.y + on.dy * t - y
      if (Math.sqrt(dx * dx + dy * dy) <= reach) carried = true
    }
    if (!carried) mask |= 1 << i
  }
  return CORNER_SETS[mask]!
}

export function join(layout: Layout, shop: Shop): Joints {
  const all: PlacedJoint[] = []
  const short: PlacedJoint[] = []
  const legCorners: (readonly Corner[])[] = []

  for (const p of layout.placed) {
    if (p.role === 'ramp') continue
    if (p.role === 'standing') {
      legCorners[p.index] = CORNERS
      if (layout.ramp) all.push(meet('hinge', layout.ramp, 'end', p, 'start'))
      continue
    }
    const joint = meet('hook', p.host!, p.plan.edge, p, p.plan.with)
    all.push(joint)
    if (!atLeast(joint.to - joint.from, leastOverlap(shop))) short.push(joint)
    legCorners[p.index] = standingCorners(p, joint, shop)
  }

  const overlapping: [string, string][] = []
  const { jointGap: gap, tieOverlap } = shop.rules
  const n = layout.placed.length
  const box = footprints(layout.placed)
  // What lies askew covers less than the rectangle around it.
  const askew = layout.placed.map((p) => !isSquare(p, p.frame))
  const onEachOther = (i: number, k: number): boolean =>
    lieOnEachOther(box, i, k) &&
    (!(askew[i] || askew[k]) || overlapOf(outline(layout.placed[i]!), outline(layout.placed[k]!)) > SLACK)
  for (const pair of neighbors(box, gap, onEachOther)) {
    const [i, k] = [Math.floor(pair / n), pair % n]
    const a = layout.placed[i]!
    const b = layout.placed[k]!
    if (onEachOther(i, k)) {
      overlapping.push([a.id, b.id])
      continue
    }
    if (a.role === 'ramp' || b.role === 'ramp' || a.host === b || b.host === a) continue
    const edges =
      askew[i] || askew[k]
        ? facingAskew(a, b, gap)
        : facing(a, b, box.subarray(4 * i, 4 * i + 4), box.subarray(4 * k, 4 * k + 4), gap)
    if (!edges) continue
    const tie = meet('tie', a, edges[0], b, edges[1])
    if (atLeast(tie.to - tie.from, tieOverlap)) all.push(tie)
  }
  return { all, legCorners, overlapping, short }
}

/** Least shared edge for two hooks set in from its ends, side by side at the closest, m. */
export const leastOverlap = ({ rules, catalog }: Shop): number =>
  2 * rules.hookInset + rules.bracketsPerHook * catalog.hooks.bracket.size[1]

/** How far a joint's hooks are set in from the ends of what its edges share, m. */
const insetOf = ({ from, to }: PlacedJoint, shop: Shop): number =>
  // Where the edges meet too little for the shop's inset the hooks sit at the quarters; a finding says so.
  to - from >= leastOverlap(shop) - SLACK ? shop.rules.hookInset : (to - from) / 4

/** Where the edges do not meet there is nothing to hook. */
export const hasHooks = ({ kind, from, to }: PlacedJoint): boolean => kind !== 'hinge' && to - from > SLACK

/** A pair of hooks of a carrying joint, tie places of a tie, in plan; none at a hinge or where the edges do not meet. */
export function hooksOf(joint: PlacedJoint, shop: Shop): readonly Hook[] {
  if (!hasHooks(joint)) return []
  const { from, to } = joint
  const on = edgeOf(joint.host, joint.edge)
  const inset = insetOf(joint, shop)
  return [from + inset, to - inset].map((t) => ({ x: on.x + on.dx * t, y: on.y + on.dy * t }))
}

/** Two edges that face each other: what they share. */
function meet(
  kind: PlacedJoint['kind'],
  host: PlacedSection,
  edge: Edge,
  guest: PlacedSection,
  guestEdge: Edge,
): PlacedJoint {
  const on = edgeOf(host, edge)
  const own = edgeOf(guest, guestEdge)
  const a = (own.x - on.x) * on.dx + (own.y - on.y) * on.dy
  const b = a + own.length * (own.dx * on.dx + own.dy * on.dy)
  const from = Math.max(0, Math.min(a, b))
  const to = Math.min(on.length, Math.max(a, b))
  // A section may stand in the plan before the one that carries it: the carrying one is named first.
  return { id: `${host.id}~${guest.id}`, kind, host, edge, guest, guestEdge, from, to }
}

/** Of each section in a row: least and greatest x, least and greatest y of what it covers. */
function footprints(placed: readonly PlacedSection[]): Float64Array {
  const box = new Float64Array(4 * placed.length)
  for (let i = 0; i < placed.length; i++) {
    const r = footprint(placed[i]!)
    box[4 * i] = r.x0
    box[4 * i + 1] = r.x1
    box[4 * i + 2] = r.y0
    box[4 * i + 3] = r.y1
  }
  return box
}

/** By how much two footprints overlap along x (`axis` 0) or y (2), m; negative where they are apart. */
const overlap = (box: Float64Array, i: number, k: number, axis: 0 | 2): number =>
  Math.min(box[4 * i + axis + 1]!, box[4 * k + axis + 1]!) - Math.max(box[4 * i + axis]!, box[4 * k + axis]!)

const lieOnEachOther = (box: Float64Array, i: number, k: number): boolean =>
  overlap(box, i, k, 0) > SLACK && overlap(box, i, k, 2) > SLACK

/** Of things that lie on each other so many pairs are told: of thousands in one heap there are millions, and one is enough to stop. */
export const MOST_PAIRS = 1000
/** So many sections lie beside one at most, unless they lie on each other: more are not tied to it. */
const MOST_BESIDE = 64

/**
 * Pairs of sections whose footprints come within a joint gap, each once, as `earlier * n + later`: by the later one, then the
 * earlier. A sweep along the dock's longer extent over flat lists: no object a section. Bounded, for a heap of sections has as many as
 * the square of their number.
 */
function neighbors(box: Float64Array, gap: number, onEachOther: (i: number, k: number) => boolean): number[] {
  const n = box.length / 4
  const low = [Infinity, Infinity]
  const high = [-Infinity, -Infinity]
  for (let i = 0; i < box.length; i += 2) {
    const axis = (i >> 1) & 1
    low[axis] = Math.min(low[axis]!, box[i]!)
    high[axis] = Math.max(high[axis]!, box[i + 1]!)
  }
  const along = high[0]! - low[0]! >= high[1]! - low[1]! ? 0 : 2
  const across = 2 - along
  const reach = gap + 2e-3
  const order = sweepOrder(box, along)
  const found: number[] = []
  const beside = new Uint8Array(n)
  let heaped = 0
  for (let k = 0; k < n; k++) {
    const i = order[k]!
    const end = box[4 * i + along + 1]! + reach
    for (let m = k + 1; m < n && box[4 * order[m]! + along]! <= end; m++) {
      const j = order[m]!
      if (
        box[4 * j + across]! <= box[4 * i + across + 1]! + reach &&
        box[4 * i + across]! <= box[4 * j + across + 1]! + reach
      ) {
        if (onEachOther(i, j)) {
          if (heaped++ >= MOST_PAIRS) continue
        } else {
          if (beside[i]! >= MOST_BESIDE || beside[j]! >= MOST_BESIDE) continue
          beside[i]!++
          beside[j]!++
        }
        found.push(i < j ? i * n + j : j * n + i)
      }
    }
  }
  // The order of the plan, whatever the sweep's.
  return found.sort((p, q) => (p % n) - (q % n) || p - q)
}

/** Places in `box` by where they begin along an axis. A straight run stands in that order as it is. */
function sweepOrder(box: Float64Array, along: number): Int32Array {
  const order = new Int32Array(box.length / 4)
  const begin = (i: number): number => box[4 * i + along]!
  let sorted = true
  for (let i = 1; i < order.length; i++) {
    order[i] = i
    if (begin(i) < begin(i - 1)) sorted = false
  }
  return sorted ? order : order.sort((p, q) => begin(p) - begin(q) || p - q)
}

/** The edges of two sections that face each other across the joint gap, or null; `p` and `q` their footprints as above. */
function facing(
  a: PlacedSection,
  b: PlacedSection,
  p: Float64Array,
  q: Float64Array,
  gap: number,
): [Edge, Edge] | null {
  const near = (from: number, to: number): boolean => Math.abs(to - from - gap) <= 1e-3
  if (near(p[1]!, q[0]!)) return [edgeToward(a, 1, 0), edgeToward(b, -1, 0)]
  if (near(q[1]!, p[0]!)) return [edgeToward(a, -1, 0), edgeToward(b, 1, 0)]
  if (near(p[3]!, q[2]!)) return [edgeToward(a, 0, 1), edgeToward(b, 0, -1)]
  if (near(q[3]!, p[2]!)) return [edgeToward(a, 0, -1), edgeToward(b, 0, 1)]
  return null
}

/** The same of sections that do not lie square: any two edges that look at each other, a joint's gap apart. */
function facingAskew(a: PlacedSection, b: PlacedSection, gap: number): [Edge, Edge] | null {
  for (const edge of EDGES)
    for (const other of EDGES) {
      const [on, own] = [edgeOf(a, edge), edgeOf(b, other)]
      if (on.nx * own.nx + on.ny * own.ny > -1 + 1e-9) continue
      const off = (own.x - on.x) * on.nx + (own.y - on.y) * on.ny
      const { from, to } = meet('tie', a, edge, b, other)
      if (Math.abs(off - gap) <= 1e-3 && to > from) return [edge, other]
    }
  return null
}

const EDGES: readonly Edge[] = ['end', 'start', 'left', 'right']

/** The edge whose outward direction is (nx, ny). */
function edgeToward(p: PlacedSection, nx: number, ny: number): Edge {
  const x = p.c * nx + p.s * ny
  const y = -p.s * nx + p.c * ny
  return x > 0.5 ? 'end' : x < -0.5 ? 'start' : y > 0.5 ? 'left' : 'right'
}
