/** From what a hand does on the plan to the operation that it means. */
import type { Shop } from '../../rules/catalog-index.ts'
import { edgeOf, type PlacedSection } from '../../rules/layout/index.ts'
import { quantize } from '../../rules/numbers.ts'
import { armOf, type Hanging, type Operation } from '../../rules/plan/operations.ts'
import { EDGES, roomOf, snapped } from '../../rules/plan/spots.ts'
import type { Lying } from '../../rules/plan/troubles.ts'

/** A dragged section comes to rest at a place that it snaps to within this, m. */
const SNAP = 0.16
/** By so much its own edge is nearer than it is: a section that is slid does not jump to the next one, m. */
const OWN = 0.4
/** By so much an edge with no room on it is farther than it is, m. */
const FULL = 1.2

/** Where an arm hangs when its first section is dragged so far, m in plan: on the nearest edge, its own first. */
export function dragged(lying: Lying, id: string, dx: number, dy: number, shop: Shop): Operation | null {
  const p = lying.layout.placed.find((one) => one.id === id)
  if (!p?.host) return null
  const arm = new Set(armOf(lying.plan, id))
  const room = roomOf(lying, shop, [...arm])
  const mate = p.plan.with
  const own = edgeOf(p, mate)
  const mx = own.x + (own.dx * own.length) / 2 + dx
  const my = own.y + (own.dy * own.length) / 2 + dy
  let best: { host: PlacedSection; edge: Hanging['edge']; t: number } | null = null
  let nearest = Number.POSITIVE_INFINITY
  for (const host of lying.layout.placed) {
    if (host.role === 'ramp' || arm.has(host.id)) continue
    for (const edge of EDGES) {
      const line = edgeOf(host, edge)
      const t = (mx - line.x) * line.dx + (my - line.y) * line.dy
      const n = (mx - line.x) * line.nx + (my - line.y) * line.ny
      const past = Math.max(0, -t, t - line.length)
      const isOwn = host === p.host && edge === p.plan.edge
      // Off the end of an edge counts more than off its line: there hooks find nothing.
      const away = Math.hypot(2 * past, n) - (isOwn ? OWN : 0)
      // Only what could win is asked for its room.
      if (away >= nearest) continue
      const full = !isOwn && room.spots(host.id, edge, mate, p.frame).length === 0
      if (away + (full ? FULL : 0) >= nearest) continue
      nearest = away + (full ? FULL : 0)
      best = { host, edge, t }
    }
  }
  if (!best) return null
  const { host, edge, t } = best
  const along = snapped(room.snaps(host.id, edge, mate, p.frame), t - own.length / 2, SNAP)
  return { kind: 'hang', id, on: host.id, edge, with: mate, along }
}

/**
 * Where a section that hangs so comes by one arrow key: the next place that it snaps to that way along its edge, or `by` meters on. Null across
 * the edge, and where there is none that way.
 * @param way in plan: x lakeward, y to the left
 */
export function stepped(
  lying: Lying,
  id: string,
  from: Hanging,
  way: { readonly x: number; readonly y: number },
  shop: Shop,
  by: number | null,
): Operation | null {
  const p = lying.layout.placed.find((one) => one.id === id)
  const host = lying.layout.placed.find((one) => one.id === from.on)
  if (!p || !host) return null
  const line = edgeOf(host, from.edge)
  const along = line.dx * way.x + line.dy * way.y
  if (Math.abs(along) < 0.5) return null
  const sign = Math.sign(along)
  const hang = (to: number): Operation => ({ kind: 'hang', id, ...from, along: quantize(to) })
  if (by !== null) return hang(from.along + sign * by)
  const snaps = roomOf(lying, shop, armOf(lying.plan, id)).snaps(from.on, from.edge, from.with, p.frame)
  const ahead = snaps
    .map((spot) => sign * (spot.along - from.along))
    .filter((away) => away > 1e-4)
    .sort((a, b) => a - b)[0]
  return ahead === undefined ? null : hang(from.along + sign * ahead)
}
