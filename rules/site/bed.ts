/**
 * The lake bed from soundings. `bedAt` is the only way to ask how deep it is.
 *
 * Soundings on one line: piecewise linear along the dock, extruded sideways, with the cross slope if given. Off the line:
 * triangulated. The water's edge is where x = 0 by definition, so where nothing was measured at or landward of it (and no wall
 * stands there) the edge itself is a point of depth 0. A wall: ground is at its height for x < 0.
 */
import type { BottomKind } from '../catalog/index.ts'
import type { Site, Sounding } from '../design/index.ts'
import { makeProfile, type Profile, profileAt } from './profile.ts'
import { makeSurface, type Triangulation } from './surface.ts'

export interface Bed {
  /** `line`: one line of soundings; `area`: triangulated. */
  readonly mode: 'line' | 'area'
  /** In area mode: between its edges the ground is flat. */
  readonly triangulation: Triangulation | null
  /** Most landward and most lakeward place known (the added water's edge among them), and the offset of the line, m. */
  readonly firstX: number
  readonly lastX: number
  readonly lineY: number
  /** Elevation of the bottom, m. */
  bedAt(x: number, y: number): number
  /** Elevation of what a foot pad stands on: firm bottom where sounded, else the bottom, m. */
  firmAt(x: number, y: number): number
  bottomAt(x: number, y: number): BottomKind
  /** Is the place within what was measured? In line mode: between first and last. */
  measured(x: number, y: number): boolean
  /** Ascending distances from x0 to x1, both ends included, between which the ground along the dock is straight (nearly so in area mode). */
  knots(x0: number, x1: number): number[]
  /** Beyond this distance no ground is as high as `z`: a bound, m. */
  reachOf(z: number): number
  /** Highest ground within a rectangle, m. */
  highest(x0: number, x1: number, y0: number, y1: number): number
}

/** Soundings this near to one line count as on it, m. */
const ON_LINE = 0.05
/** Sampling step in area mode, m. */
const STEP = 0.25

export function makeBed(site: Site): Bed {
  const wall = site.shore?.kind === 'wall' ? site.shore.height : null
  const top = site.shore?.kind === 'bank' ? site.shore.height : Number.POSITIVE_INFINITY
  const points = withEdge(site, wall !== null)
  const depth = (s: Sounding): number => -s.depth
  const firm = (s: Sounding): number => -(s.firm ?? s.depth)
  const anyFirm = points.some((s) => s.firm !== undefined)
  const xs = points.map((s) => s.distance)
  const ys = points.map((s) => s.offset)
  const lineY = ys.reduce((sum, y) => sum + y, 0) / ys.length

  const surface = onLine(points) ? null : makeSurface(xs, ys, points.map(depth), top, wall !== null)
  let ground: (x: number, y: number) => number
  let hard: (x: number, y: number) => number
  let profile: Profile | null = null
  if (surface) {
    ground = surface.at
    const firmSurface = anyFirm ? makeSurface(xs, ys, points.map(firm), top, wall !== null) : null
    hard = firmSurface ? firmSurface.at : ground
  } else {
    const line = lineProfile(points, depth, top, wall !== null)
    const firmLine = anyFirm ? lineProfile(points, firm, top, wall !== null) : line
    const slope = site.crossSlope ?? 0
    ground = (x, y) => profileAt(line, x) - slope * (y - lineY)
    hard = (x, y) => profileAt(firmLine, x) - slope * (y - lineY)
    profile = line
  }
  const bedAt = wall === null ? ground : (x: number, y: number) => (x < 0 ? wall : ground(x, y))
  const firmAt = wall === null ? hard : (x: number, y: number) => (x < 0 ? wall : hard(x, y))

  const sortedX = profile ? profile.x : [...new Set(xs)].sort((a, b) => a - b)
  const firstX = sortedX[0]!
  const lastX = sortedX.at(-1)!
  // Where the bank's slope, going on, comes to its top: a break of the profile that no sounding stands at.
  const breaks = [...sortedX]
  if (profile && Number.isFinite(top) && profile.slopeLand < 0)
    breaks.push(firstX + (profile.top - profile.z[0]!) / profile.slopeLand)
  if (wall !== null) breaks.push(-1e-7, 0)
  breaks.sort((a, b) => a - b)

  const knots = (x0: number, x1: number): number[] => {
    const inner = within(breaks, x0, x1)
    if (!surface) return [x0, ...inner, x1]
    const n = Math.max(1, Math.ceil((x1 - x0) / (STEP / 5)))
    const grid = Array.from({ length: n + 1 }, (_, i) => x0 + ((x1 - x0) * i) / n)
    return [...new Set([...grid, ...inner])].sort((a, b) => a - b)
  }
  return {
    mode: surface ? 'area' : 'line',
    triangulation: surface?.triangulation ?? null,
    firstX,
    lastX,
    lineY,
    bedAt,
    firmAt,
    bottomAt: makeBottom(site, points),
    measured: surface ? surface.inside : (x) => x >= firstX - 1e-6 && x <= lastX + 1e-6,
    knots,
    reachOf: surface ? (z) => Math.min(lastX, surface.reachOf(z)) : () => lastX,
    highest: surface
      ? (x0, x1, y0, y1) => highestOfSurface(bedAt, points, [x0, x1, y0, y1])
      : (x0, x1, y0, y1) => {
          let most = Math.max(bedAt(x0, y0), bedAt(x0, y1), bedAt(x1, y0), bedAt(x1, y1))
          for (const x of within(breaks, x0, x1)) most = Math.max(most, bedAt(x, y0), bedAt(x, y1))
          return most
        },
  }
}

/** The soundings, with the water's edge where nothing was measured at or landward of it. */
function withEdge(site: Site, wall: boolean): readonly Sounding[] {
  const points = wall ? site.soundings.filter((s) => s.distance >= 0) : site.soundings
  if (points.length === 0) return [{ distance: 0, offset: 0, depth: 0 }]
  if (wall || points.some((s) => s.distance <= 0)) return points
  const y = points.reduce((sum, s) => sum + s.offset, 0) / points.length
  return [{ distance: 0, offset: y, depth: 0 }, ...points]
}

function onLine(points: readonly Sounding[]): boolean {
  let a = points[0]!
  let b = points[0]!
  for (const s of points) {
    if (s.distance < a.distance || (s.distance === a.distance && s.offset < a.offset)) a = s
    if (s.distance > b.distance || (s.distance === b.distance && s.offset > b.offset)) b = s
  }
  const dx = b.distance - a.distance
  const dy = b.offset - a.offset
  const long = Math.hypot(dx, dy)
  if (long === 0) return true
  return points.every(
    (s) => Math.abs((s.distance - a.distance) * dy - (s.offset - a.offset) * dx) / long <= ON_LINE,
  )
}

/** Soundings at one distance (a line along the shore) count with their mean. */
function lineProfile(
  points: readonly Sounding[],
  z: (s: Sounding) => number,
  top: number,
  wall: boolean,
): Profile {
  const sorted = [...points].sort((a, b) => a.distance - b.distance)
  const x: number[] = []
  const mean: number[] = []
  for (let i = 0; i < sorted.length; ) {
    let k = i
    let sum = 0
    while (k < sorted.length && sorted[k]!.distance === sorted[i]!.distance) sum += z(sorted[k++]!)
    x.push(sorted[i]!.distance)
    mean.push(sum / (k - i))
    i = k
  }
  return makeProfile(x, mean, top, wall)
}

/** Members of a sorted list strictly between two bounds. */
function within(sorted: readonly number[], x0: number, x1: number): number[] {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle]! <= x0) low = middle + 1
    else high = middle
  }
  const inner: number[] = []
  for (let i = low; i < sorted.length && sorted[i]! < x1; i++) inner.push(sorted[i]!)
  return inner
}

/** The bottom of the nearest sounding, where that one states its own; else the site's. */
function makeBottom(site: Site, points: readonly Sounding[]): Bed['bottomAt'] {
  if (!points.some((s) => s.bottom !== undefined && s.bottom !== site.bottom)) return () => site.bottom
  return (x, y) => {
    let best = Number.POSITIVE_INFINITY
    let kind = site.bottom
    for (const s of points) {
      const d = (s.distance - x) ** 2 + (s.offset - y) ** 2
      if (d < best) {
        best = d
        kind = s.bottom ?? site.bottom
      }
    }
    return kind
  }
}

function highestOfSurface(
  bedAt: Bed['bedAt'],
  points: readonly Sounding[],
  [x0, x1, y0, y1]: readonly [number, number, number, number],
): number {
  const nx = Math.max(1, Math.ceil((x1 - x0) / STEP))
  const ny = Math.max(1, Math.ceil((y1 - y0) / STEP))
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i <= nx; i++)
    for (let k = 0; k <= ny; k++)
      most = Math.max(most, bedAt(x0 + ((x1 - x0) * i) / nx, y0 + ((y1 - y0) * k) / ny))
  // A peak between samples is a sounding: a triangulated surface is highest at its corners.
  for (const s of points)
    if (s.distance > x0 && s.distance < x1 && s.offset > y0 && s.offset < y1)
      most = Math.max(most, bedAt(s.distance, s.offset))
  return most
}
