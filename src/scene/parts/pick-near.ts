/** What a finger means: the part seen nearest to it, for a finger is wide and a leg is thin. */
import { inDock } from '../../../geometry/projection.ts'
import type { Placement, Vec3 } from '../../../rules/index.ts'
import type { Item } from './parts.ts'
import { pick, type Ray } from './pick.ts'

export interface Finger {
  /** The ray through a point of the screen so far off the finger's own, px. */
  ray(dx: number, dy: number): Ray
  /** How far off the finger a place of the lake is seen, px; null behind the eye. */
  off(place: Vec3): { readonly dx: number; readonly dy: number } | null
  /** How far around it is looked, px. */
  readonly reach: number
  /** A leg or brace this near goes before the deck that lies under the finger, px. */
  readonly thin: number
}

/** From ring to ring and along a ring, px. */
const STEP = 4
/** Longer than this, m, a part is asked for by itself: leg, brace, post. */
const LONG = 0.5
/** Places along such a part: from afar it is thinner than a step. */
const ALONG = [0.02, 0.25, 0.5, 0.75, 0.98]

/**
 * Only what is seen is met: each ray ends at the first part, so what lies behind the deck is none of it. The nearest wins, where the deck and
 * what belongs to it count as `thin` farther off than they are.
 */
export function pickNear(finger: Finger, items: readonly Item[]): Placement | null {
  const near = around(finger, items)
  let best: { placement: Placement; off: number } | null = null
  const ask = (dx: number, dy: number): void => {
    const hit = pick(finger.ray(dx, dy), near)
    if (!hit) return
    const off = Math.hypot(dx, dy) + (isDeck(hit.placement) ? finger.thin : 0)
    if (!best || off < best.off) best = { placement: hit.placement, off }
  }
  const hopeful = (off: number): boolean =>
    off <= finger.reach && off < (best?.off ?? Number.POSITIVE_INFINITY)
  for (const item of near) {
    if (isDeck(item.placement)) continue
    for (const place of placesAlong(item)) {
      const seen = finger.off(place)
      if (seen && hopeful(Math.hypot(seen.dx, seen.dy))) ask(seen.dx, seen.dy)
    }
  }
  for (let r = 0; hopeful(r); r += STEP) {
    const n = r === 0 ? 1 : Math.ceil((2 * Math.PI * r) / STEP)
    for (let k = 0; k < n; k++) ask(r * Math.cos((2 * Math.PI * k) / n), r * Math.sin((2 * Math.PI * k) / n))
  }
  return (best as { placement: Placement } | null)?.placement ?? null
}

const isDeck = ({ of, section }: Placement): boolean => of === section

/** Along the middle of its longest side. */
function placesAlong({ placement, shape: { box } }: Item): Vec3[] {
  const long = [0, 1, 2].map((k) => box[k + 3]! - box[k]!)
  const most = Math.max(...long)
  if (most < LONG) return []
  const axis = long.indexOf(most)
  return ALONG.map((t) => {
    const own = [0, 1, 2].map((k) => box[k]! + long[k]! * (k === axis ? t : 0.5)) as [number, number, number]
    return inDock(placement, own)
  })
}

/** The parts that any of the rays can meet: of a long dock few. */
function around({ ray, reach }: Finger, items: readonly Item[]): readonly Item[] {
  const { from, along } = ray(0, 0)
  const spread = Math.tan(Math.max(...[ray(reach, 0), ray(0, reach)].map((edge) => angle(along, edge.along))))
  return items.filter(({ placement: { at }, shape: { box } }) => {
    const [x, y, z] = [0, 1, 2].map((k) => Math.max(-box[k]!, box[k + 3]!)) as [number, number, number]
    const radius = Math.hypot(x, y, z)
    const to: Vec3 = [at[0] - from[0], at[1] - from[1], at[2] - from[2]]
    const far = dot(to, along)
    const off = Math.sqrt(Math.max(0, dot(to, to) - far * far))
    return far > -radius && off < radius + (far + radius) * spread * 1.1
  })
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const angle = (a: Vec3, b: Vec3): number => Math.acos(Math.min(1, dot(a, b)))
