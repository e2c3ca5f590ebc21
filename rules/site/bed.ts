/**
 * The lake bed from soundings. `bedAt` is the only way to ask how deep it is.
 *
 * Soundings on one line: piecewise linear along the dock, extruded sideways, with the cross slope if given. Off the line: kriging
 * (`kriging.ts`), which is that on each line, with the cross slope as its trend. The water's edge is where x = 0 by definition: on one
 * line, where nothing was measured at or landward of it (and no wall stands there), the edge is a point of depth 0; off the line it is
 * 0 beside the line too, unless a sounding says otherwise. A wall: ground is at its height for x < 0.
 */
import type { BottomKind } from '../catalog/index.ts'
import type { Site, Sounding } from '../design/index.ts'
import { type Area, type AreaBed, makeArea } from './area.ts'
import { greatestOf } from './greatest.ts'
import type { Places } from './kriging.ts'
import { lineBreaks, makeLine, onLine, type SoundingLine } from './line.ts'
import { nearestOf } from './nearest.ts'
import { profileAt } from './profile.ts'
import { hullOf, type Sounded, sounded, withEdge } from './soundings.ts'
import type { Stretch } from './stretches.ts'
import { crossingsOf, type Triangulation } from './surface.ts'

/** The ground as far as it is known: between soundings and beyond. Places in m, x lakeward, y to the left; elevations over the survey day's water, m. */
export interface Bed {
  /** `line`: one line of soundings; `area`: kriged. */
  readonly mode: 'line' | 'area'
  /** In area mode: distances and offsets, ascending, between which the ground is bilinear. Beyond, end slopes go on. */
  readonly grid: { readonly xs: Float64Array; readonly ys: Float64Array } | null
  /** Of many soundings: between its edges something linear is added to that. */
  readonly triangulation: Triangulation | null
  /** Most landward and most lakeward place known (the added water's edge among them), and the offset of the line, m. */
  readonly firstX: number
  readonly lastX: number
  readonly lineY: number
  /** Elevation of the bottom, m. */
  bedAt(x: number, y: number): number
  /** Elevation of what a foot pad stands on: firm bottom where sounded, else the bottom, m. */
  firmAt(x: number, y: number): number
  /** For how far off it may be (`error-at.ts`). */
  readonly survey: Survey
  bottomAt(x: number, y: number): BottomKind
  /** Is the place within what was measured? In line mode: between first and last. */
  measured(x: number, y: number): boolean
  /**
   * Ascending distances from x0 to x1, both ends included, between which the ground along the dock is straight (nearly so in area mode).
   * `part`: of those in area mode only the ones there, with one more at either end: there may be half a million.
   */
  knots(x0: number, x1: number, part?: Stretch): number[]
  /** Beyond this distance no ground is as high as `z`: a bound, m. */
  reachOf(z: number): number
  /** Highest ground within a rectangle, m. */
  highest(x0: number, x1: number, y0: number, y1: number): number
  /** Offsets from y0 to y1 along which `highest` looks. */
  rows(y0: number, y1: number): number[]
  /** It looks every so many m, or closer, along each; 0: nothing is overlooked. */
  readonly looks: number
  /** Ascending distances from x0 to x1, both ends included, between which the ground along a row is straight; landward of the first place hollow side down. */
  straight(y: number, x0: number, x1: number): number[]
}

/** What a bed is made from. */
export type Survey = { readonly error: number; readonly wall: boolean; readonly top: number } & (
  | { readonly line: SoundingLine }
  | { readonly area: Area; readonly places: Places; readonly values: Float64Array }
)

/** Sampling step over what is triangulated, m. */
const STEP = 0.25

/** The ground of a site: straight between the soundings of one line, kriged where they are off it. Takes any site that `parseDesign` gave. */
export function makeBed(site: Site): Bed {
  const wall = site.shore?.kind === 'wall' ? site.shore.height : null
  const top = site.shore?.kind === 'bank' ? site.shore.height : Number.POSITIVE_INFINITY
  const given = wall === null ? site.soundings : site.soundings.filter((s) => s.distance >= 0)
  const points = sounded(given.length > 0 ? given : [{ distance: 0, offset: 0, depth: 0 }])
  const edged = wall === null && points.x[0]! > 0 ? withEdge(points) : points
  const bottomAt = makeBottom(site, given, edged === points ? null : points.meanY)
  const shore: Shore = { wall, top, slope: site.crossSlope ?? 0, error: site.soundingError, bottomAt }
  return onLine(edged) ? lineBed(edged, shore) : areaBed(points, edged, shore)
}

interface Shore {
  /** Heights of the wall, or of the bank's top (else Infinity), m. */
  readonly wall: number | null
  readonly top: number
  readonly slope: number
  readonly error: number
  readonly bottomAt: Bed['bottomAt']
}

function lineBed(points: Sounded, { wall, top, slope, error, bottomAt }: Shore): Bed {
  const line = makeLine(points, top, wall !== null)
  const lineY = points.meanY
  const bedAt = beside(wall, (x, y) => profileAt(line.bottom, x) - slope * (y - lineY))
  const { x } = line.bottom
  const [firstX, lastX] = [x[0]!, x.at(-1)!]
  const breaks = lineBreaks(line.bottom)
  if (wall !== null) breaks.push(-1e-7, 0)
  breaks.sort((a, b) => a - b)
  let crest: ((from: number, to: number) => number) | null = null
  return {
    mode: 'line',
    grid: null,
    triangulation: null,
    firstX,
    lastX,
    lineY,
    bedAt,
    firmAt: beside(wall, (x, y) => profileAt(line.firm, x) - slope * (y - lineY)),
    survey: { line, error, wall: wall !== null, top },
    bottomAt,
    measured: (x) => x >= firstX - 1e-6 && x <= lastX + 1e-6,
    knots: (x0, x1) => [x0, ...within(breaks, x0, x1), x1],
    reachOf: () => lastX,
    highest: (x0, x1, y0, y1) => {
      const most = Math.max(bedAt(x0, y0), bedAt(x0, y1), bedAt(x1, y0), bedAt(x1, y1))
      const [from, to] = runWithin(breaks, x0, x1)
      if (to - from > FEW && wall === null) {
        // Beside the line all is tilted alike: the highest of the line is the highest of each row.
        crest ??= greatestOf(Float64Array.from(breaks, (x) => profileAt(line.bottom, x)))
        const high = crest(from, to)
        return Math.max(most, high - slope * (y0 - lineY), high - slope * (y1 - lineY))
      }
      let high = most
      for (let i = from; i < to; i++) high = Math.max(high, bedAt(breaks[i]!, y0), bedAt(breaks[i]!, y1))
      return high
    },
    rows: (y0, y1) => [y0, y1],
    looks: 0,
    straight: (_, x0, x1) => [x0, ...within(breaks, x0, x1), x1],
  }
}

/** So many places in a row are looked at one by one. */
const FEW = 16

function areaBed(points: Sounded, edged: Sounded, shore: Shore): Bed {
  const { wall, top, slope, error, bottomAt } = shore
  const lineY = points.meanY
  const level = (z: Float64Array): Float64Array => z.map((v, i) => v + slope * (points.y[i]! - lineY))
  const soft = points.firm.some((z, i) => z !== points.bottom[i])
  const values = [level(points.bottom), ...(soft ? [level(points.firm)] : [])]
  const area = makeArea(points, values, wall !== null, top)
  const { surface, beds } = area
  const tilted = (bed: AreaBed): Bed['bedAt'] =>
    beside(wall, slope === 0 ? bed.at : (x, y) => bed.at(x, y) - slope * (y - lineY))
  const bedAt = tilted(beds[0]!)
  const { xs, ys } = beds[0]!.table
  const [firstX, lastX] = [xs[0]!, xs.at(-1)!]
  const breaks = ascending([...xs, ...(wall === null ? [] : [-1e-7, 0])])
  return {
    mode: 'area',
    grid: { xs, ys },
    triangulation: surface?.triangulation ?? null,
    firstX,
    lastX,
    lineY,
    bedAt,
    firmAt: tilted(beds[1] ?? beds[0]!),
    survey: { area, places: points, values: values[0]!, error, wall: wall !== null, top },
    bottomAt,
    measured: hullOf(edged),
    knots: (x0, x1, part = [x0, x1]) => {
      // The highest of several places side by side, which is what is asked for, is straight between these but nearly.
      const n = Math.max(1, Math.ceil((x1 - x0) / (STEP / 5)))
      const step = (x1 - x0) / n
      const number = (x: number, more: number): number =>
        step > 0 ? Math.min(n, Math.max(0, Math.floor((x - x0) / step) + more)) : 0
      const [first, last] =
        part[0] <= x0 && part[1] >= x1 ? [0, n] : [number(part[0], -1), number(part[1], 2)]
      const row = Array.from({ length: last - first + 1 }, (_, i) => x0 + ((x1 - x0) * (first + i)) / n)
      return ascending([...row, ...within(breaks, row[0]!, row.at(-1)!)])
    },
    reachOf: (z) => (slope === 0 ? Math.min(lastX, beds[0]!.reachOf(z)) : lastX),
    rows: (y0, y1) => (surface ? spaced(y0, y1) : [y0, ...within(ys, y0, y1), y1]),
    looks: surface ? STEP : 0,
    straight: (y, x0, x1) => {
      const all = [x0, ...within(breaks, x0, x1), x1]
      if (!surface) return all
      return ascending([...all, ...within(crossingsOf(surface.triangulation, y), x0, x1)])
    },
    highest: (x0, x1, y0, y1) => {
      if (surface) return highestNear(bedAt, points, [x0, x1, y0, y1])
      return highestOf(bedAt, [x0, ...within(breaks, x0, x1), x1], [y0, ...within(ys, y0, y1), y1])
    },
  }
}

const ascending = (list: readonly number[]): number[] => [...new Set(list)].sort((a, b) => a - b)

const beside = (wall: number | null, lake: Bed['bedAt']): Bed['bedAt'] =>
  wall === null ? lake : (x, y) => (x < 0 ? wall : lake(x, y))

/** Members of a sorted list strictly between two bounds. */
function within(sorted: ArrayLike<number>, x0: number, x1: number): number[] {
  const [from, to] = runWithin(sorted, x0, x1)
  const inner: number[] = []
  for (let i = from; i < to; i++) inner.push(sorted[i]!)
  return inner
}

/** Their places in the list: the first, and the one after the last. */
function runWithin(sorted: ArrayLike<number>, x0: number, x1: number): [number, number] {
  /** The first that `before` does not hold of. */
  const first = (before: (value: number) => boolean): number => {
    let low = 0
    let high = sorted.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (before(sorted[middle]!)) low = middle + 1
      else high = middle
    }
    return low
  }
  const from = first((value) => value <= x0)
  return [
    from,
    Math.max(
      from,
      first((value) => value < x1),
    ),
  ]
}

/** The bottom of the nearest sounding, where that one states its own; else the site's. */
function makeBottom(site: Site, given: readonly Sounding[], edgeY: number | null): Bed['bottomAt'] {
  if (!given.some((s) => s.bottom !== undefined && s.bottom !== site.bottom)) return () => site.bottom
  const nearest = nearestOf(
    Float64Array.from(given, (s) => s.distance),
    Float64Array.from(given, (s) => s.offset),
  )
  return (x, y) => {
    const edge = edgeY === null ? Number.POSITIVE_INFINITY : x ** 2 + (edgeY - y) ** 2
    return given[nearest(x, y, edge)]?.bottom ?? site.bottom
  }
}

/** Bilinear ground is highest at the corners of what it is bilinear over. */
function highestOf(bedAt: Bed['bedAt'], xs: readonly number[], ys: readonly number[]): number {
  let most = Number.NEGATIVE_INFINITY
  for (const x of xs) for (const y of ys) most = Math.max(most, bedAt(x, y))
  return most
}

/** Looked at every 0.25 m, and at the soundings. */
function highestNear(
  bedAt: Bed['bedAt'],
  { x, y }: Sounded,
  [x0, x1, y0, y1]: readonly [number, number, number, number],
): number {
  let most = highestOf(bedAt, spaced(x0, x1), spaced(y0, y1))
  const [from, to] = runWithin(x, x0, x1)
  for (let i = from; i < to; i++) if (y[i]! > y0 && y[i]! < y1) most = Math.max(most, bedAt(x[i]!, y[i]!))
  return most
}

function spaced(from: number, to: number): number[] {
  const n = Math.max(1, Math.ceil((to - from) / STEP))
  return Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n)
}
