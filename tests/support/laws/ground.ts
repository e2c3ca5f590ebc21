/**
 * The lake bed again, written apart from the engine: slow, short and plain.
 *
 * Soundings with one offset are a line: piecewise linear, extruded sideways, with the cross slope. Otherwise each place is told from all
 * soundings by kriging, with the covariance that the guide states and Gauss's elimination: no table, no Cholesky, no order of soundings.
 * Landward of the first and lakeward of the last it answers with nothing (the engine extrapolates there; no law of ours says how).
 */
import type { BottomKind } from '../../../rules/catalog/bottom.ts'
import type { Site, Sounding } from '../../../rules/design/schema.ts'

export interface Ground {
  readonly line: boolean
  /** Elevations that are right at a place; none where nothing is known. `firm`: of what a pad stands on. */
  readonly at: (x: number, y: number, firm: boolean) => number[]
  /** Bottoms that are right at a place: two where two soundings are equally near. */
  readonly bottomsAt: (x: number, y: number) => BottomKind[]
  /** Places along the line where its slope changes. */
  readonly breaks: readonly number[]
}

/** More than this the engine does not krige one by one. */
const MOST = 150

export function groundOf(site: Site): Ground {
  const line = site.soundings.every((s) => Math.abs(s.offset - site.soundings[0]!.offset) < 1e-6)
  return line ? lineGround(site) : surfaceGround(site)
}

/** The soundings that make the bed: with the water's edge where none is on the shore; before a wall only what lies lakeward of it. */
function withEdge(site: Site): Sounding[] {
  const before = site.soundings.filter((s) => s.distance >= 0)
  if (site.shore?.kind === 'wall' && before.length > 0) return before
  const dry = site.soundings.some((s) => s.distance <= 0)
  if (dry || site.shore?.kind === 'wall') return [...site.soundings]
  return [{ distance: 0, offset: site.soundings[0]!.offset, depth: 0 }, ...site.soundings]
}

function lineGround(site: Site): Ground {
  const soundings = withEdge(site).sort((a, b) => a.distance - b.distance)
  const offset = soundings[0]!.offset
  const z = (s: Sounding, firm: boolean) => -(firm ? (s.firm ?? s.depth) : s.depth)

  const along = (x: number, firm: boolean): number => {
    const first = soundings[0]!
    const last = soundings.at(-1)!
    if (x <= first.distance) {
      const next = soundings[1]
      // Before a wall there is no bank for a slope to go on with: level.
      if (next === undefined || site.shore?.kind === 'wall') return z(first, firm)
      const slope = (z(next, firm) - z(first, firm)) / (next.distance - first.distance)
      return z(first, firm) + slope * (x - first.distance)
    }
    if (x >= last.distance) {
      const previous = soundings.at(-2)
      if (previous === undefined) return z(last, firm)
      const slope = (z(last, firm) - z(previous, firm)) / (last.distance - previous.distance)
      return z(last, firm) + Math.min(slope, 0) * (x - last.distance)
    }
    const i = soundings.findIndex((s) => s.distance >= x)
    const a = soundings[i - 1]!
    const b = soundings[i]!
    const t = (x - a.distance) / (b.distance - a.distance)
    return z(a, firm) + t * (z(b, firm) - z(a, firm))
  }

  /** A wall's top is level, whatever the bed does sideways. A bank keeps its slope up to its height, or to what was sounded higher. */
  const at = (x: number, y: number, firm: boolean): number => {
    const { shore } = site
    if (shore?.kind === 'wall' && x < 0) return shore.height
    const first = soundings[0]!
    const top =
      shore?.kind === 'bank' && x < first.distance ? Math.max(shore.height, z(first, firm)) : Infinity
    return Math.min(along(x, firm), top) - (site.crossSlope ?? 0) * (y - offset)
  }

  /** The foot of a wall, or where a bank has reached its height. */
  const shoreBreaks = (): number[] => {
    const [first, next] = soundings
    if (site.shore?.kind === 'wall') return [0]
    if (site.shore === undefined || first === undefined || next === undefined) return []
    const slope = (z(next, false) - z(first, false)) / (next.distance - first.distance)
    return slope < 0 ? [first.distance + Math.min(0, (site.shore.height - z(first, false)) / slope)] : []
  }

  return {
    line: true,
    at: (x, y, firm) => [at(x, y, firm)],
    bottomsAt: (x) => nearestBottoms(site, (s) => Math.abs(s.distance - x)),
    breaks: [...soundings.map((s) => s.distance), ...shoreBreaks()].sort((a, b) => a - b),
  }
}

function surfaceGround(site: Site): Ground {
  const wall = site.shore?.kind === 'wall'
  const soundings = site.soundings.filter((s) => !wall || s.distance >= 0)
  const meanY = soundings.reduce((sum, s) => sum + s.offset, 0) / soundings.length
  const tilt = (y: number) => (site.crossSlope ?? 0) * (y - meanY)
  const level = (s: Sounding, firm: boolean) => -(firm ? (s.firm ?? s.depth) : s.depth) + tilt(s.offset)
  const denied = soundings.some((s) => s.distance === 0 && Math.abs(level(s, false)) > 0.1)
  const alike = (a: Place, b: Place) => covariance(a, b, !wall && !denied)
  const places = soundings.map((s): Place => [s.distance, s.offset])
  const xs = places.map(([x]) => x)
  const known = (x: number) =>
    soundings.length <= MOST &&
    x >= Math.min(0, ...xs) &&
    x <= Math.max(0, ...xs) &&
    (!wall || x >= Math.min(...xs))
  const matrix = known(Math.max(...xs)) ? places.map((a) => places.map((b) => alike(a, b))) : []
  const weights = [false, true].map((firm) =>
    eliminated(
      matrix,
      soundings.map((s) => level(s, firm)),
    ),
  )
  const told = (x: number, y: number, firm: boolean) =>
    places.reduce((sum, place, i) => sum + alike([x, y], place) * weights[firm ? 1 : 0]![i]!, 0) - tilt(y)
  return {
    line: false,
    at: (x, y, firm) => (wall && x < 0 ? [site.shore!.height] : known(x) ? [told(x, y, firm)] : []),
    bottomsAt: (x, y) => nearestBottoms(site, (s) => Math.hypot(s.distance - x, s.offset - y)),
    breaks: [],
  }
}

type Place = readonly [x: number, y: number]

/** As `public/guide/rules.md` states it, in units of the roughness. */
function covariance([ax, ay]: Place, [bx, by]: Place, edgeKnown: boolean): number {
  const together = (a: number, b: number) => (a * b > 0 ? Math.min(Math.abs(a), Math.abs(b)) : 0)
  // The first tenth of a meter off the dock's line counts for a part of itself.
  const off = (y: number, part: number) =>
    Math.sign(y) * (part * Math.min(0.1, Math.abs(y)) + Math.max(0, Math.abs(y) - 0.1))
  const along = 1 + together(off(ay, 0.3), off(by, 0.3)) / 30
  const edge = edgeKnown ? 0.01 + together(off(ay, 0.01), off(by, 0.01)) / 3 : 500 + along
  return ax * bx > 0 ? edge + together(ax, bx) * along + 15 * ax * bx : edge
}

/** Gauss's elimination with the largest pivot of each column. */
function eliminated(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!])
  const n = rows.length
  for (let k = 0; k < n; k++) {
    let best = k
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i
    const [pivot, other] = [rows[best]!, rows[k]!]
    rows[k] = pivot
    rows[best] = other
    for (let i = k + 1; i < n; i++) {
      const part = rows[i]![k]! / pivot[k]!
      for (let c = k; c <= n; c++) rows[i]![c] = rows[i]![c]! - part * pivot[c]!
    }
  }
  const out = new Array<number>(n).fill(0)
  for (let k = n - 1; k >= 0; k--) {
    let sum = rows[k]![n]!
    for (let c = k + 1; c < n; c++) sum -= rows[k]![c]! * out[c]!
    out[k] = sum / rows[k]![k]!
  }
  return out
}

/** The bottom of the nearest sounding, or the site's where that one states none; several where more than one is nearest. */
function nearestBottoms(site: Site, distance: (s: Sounding) => number): BottomKind[] {
  const wall = site.shore?.kind === 'wall'
  const points = wall ? site.soundings.filter((s) => s.distance >= 0) : [...site.soundings]
  const y = points.reduce((sum, s) => sum + s.offset, 0) / Math.max(1, points.length)
  if (!wall && points.every((s) => s.distance > 0)) points.push({ distance: 0, offset: y, depth: 0 })
  if (points.length === 0) return [site.bottom]
  const least = Math.min(...points.map(distance))
  return points.filter((s) => distance(s) <= least + 2e-6).map((s) => s.bottom ?? site.bottom)
}
