/**
 * The lake bed again, written apart from the engine: slow, short and plain.
 *
 * Soundings with one offset are a line: piecewise linear, extruded sideways, with the cross slope. Otherwise they are a surface
 * of Delaunay triangles. Where four soundings lie on one circle more than one triangulation is right, so a surface answers with
 * every elevation that is, and with none outside the soundings (the engine extrapolates there; no law of ours says how).
 */
import Delaunator from 'delaunator'
import type { BottomKind } from '../../../rules/catalog/schema.ts'
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

type Point = readonly [x: number, y: number, z: number]

const EXACT_LIMIT = 24

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
  const soundings = withEdge(site)
  // An edge that we would have to add could be added in more than one way: then we know nothing of the elevations.
  const known = soundings.length === site.soundings.length && site.shore?.kind !== 'wall'
  const points = (firm: boolean): Point[] =>
    soundings.map((s) => [s.distance, s.offset, -(firm ? (s.firm ?? s.depth) : s.depth)])
  const triangles = known ? trianglesOf(points(false)) : []
  return {
    line: false,
    at: (x, y, firm) => elevationsIn(triangles, points(firm), x, y),
    bottomsAt: (x, y) => nearestBottoms(site, (s) => Math.hypot(s.distance - x, s.offset - y)),
    breaks: [],
  }
}

/** Every triangle with nothing inside its circle; for many soundings one triangulation of them. */
function trianglesOf(points: readonly Point[]): [number, number, number][] {
  const found: [number, number, number][] = []
  if (points.length > EXACT_LIMIT) {
    const flat = new Delaunator(points.flatMap(([x, y]) => [x, y] as const)).triangles
    for (let i = 0; i < flat.length; i += 3) found.push([flat[i]!, flat[i + 1]!, flat[i + 2]!])
    return found
  }
  for (let i = 0; i < points.length; i++)
    for (let j = i + 1; j < points.length; j++)
      for (let k = j + 1; k < points.length; k++) if (isDelaunay(points, i, j, k)) found.push([i, j, k])
  return found
}

function isDelaunay(points: readonly Point[], i: number, j: number, k: number): boolean {
  const [ax, ay] = points[i]!
  const [bx, by] = points[j]!
  const [cx, cy] = points[k]!
  const d = 2 * ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax))
  if (Math.abs(d) < 1e-9) return false
  const b2 = (bx - ax) ** 2 + (by - ay) ** 2
  const c2 = (cx - ax) ** 2 + (cy - ay) ** 2
  const ux = ((cy - ay) * b2 - (by - ay) * c2) / d
  const uy = ((bx - ax) * c2 - (cx - ax) * b2) / d
  const r = Math.hypot(ux, uy)
  return points.every(
    ([x, y], m) => m === i || m === j || m === k || Math.hypot(x - ax - ux, y - ay - uy) > r * (1 - 1e-9),
  )
}

function elevationsIn(
  triangles: readonly [number, number, number][],
  points: readonly Point[],
  x: number,
  y: number,
): number[] {
  const found: number[] = []
  for (const [i, j, k] of triangles) {
    const [ax, ay, az] = points[i]!
    const [bx, by, bz] = points[j]!
    const [cx, cy, cz] = points[k]!
    const d = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    const u = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / d
    const v = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / d
    if (u >= -1e-9 && v >= -1e-9 && u + v <= 1 + 1e-9) found.push(az + u * (bz - az) + v * (cz - az))
  }
  return found
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
