/**
 * Laws of a bed made from soundings, as figures that are 0 (or at most what the test says) where the law holds. They take any model, so
 * that they can be seen to fail on a broken one.
 */
import Delaunator from 'delaunator'
import type { Site, Sounding } from '../../../rules/design/index.ts'
import { type Bed, makeBed } from '../../../rules/index.ts'

export type Model = (site: Site) => Pick<Bed, 'bedAt'>

const XS = Array.from({ length: 29 }, (_, i) => -2.9 + 0.71 * i)
const YS = [-6, -4.3, -2, -1.1, -0.4, 0, 0.2, 1, 2, 3.7, 5.6]

/** Most of something over places between first and last sounding, and to both sides. */
const most = (of: (x: number, y: number) => number): number =>
  XS.reduce((a, x) => YS.reduce((b, y) => Math.max(b, of(x, y)), a), 0)

export const unlike = (a: Pick<Bed, 'bedAt'>, b: Pick<Bed, 'bedAt'>): number =>
  most((x, y) => Math.abs(a.bedAt(x, y) - b.bedAt(x, y)))

/** How far any sounding is missed, m. */
export const missed = (model: Model, site: Site): number => {
  const bed = model(site)
  return Math.max(...site.soundings.map((s) => Math.abs(bed.bedAt(s.distance, s.offset) + s.depth)))
}

/** Steepest change over a tenth of a millimeter along and aside, next to soundings and anywhere. */
export const steepest = (model: Model, site: Site): number => {
  const { bedAt } = model(site)
  const step = 1e-4
  const steep = (x: number, y: number): number =>
    Math.max(
      Math.abs(bedAt(x + step, y) - bedAt(x - step, y)),
      Math.abs(bedAt(x, y + step) - bedAt(x, y - step)),
    ) /
    (2 * step)
  return Math.max(most(steep), ...site.soundings.map((s) => steep(s.distance, s.offset)))
}

const mirror = (s: Sounding): Sounding => ({ ...s, offset: 0 - s.offset })
/** How far mirrored soundings are from giving the mirrored bed, m. */
export const unmirrored = (model: Model, site: Site): number => {
  const other = { ...site, soundings: site.soundings.map(mirror), crossSlope: 0 - (site.crossSlope ?? 0) }
  const [a, b] = [model(site), model(other)]
  return most((x, y) => Math.abs(a.bedAt(x, y) - b.bedAt(x, -y)))
}

/** How far the same soundings in another order are from giving the same bed, m. */
export const disordered = (model: Model, site: Site): number =>
  unlike(model(site), model({ ...site, soundings: [...site.soundings].reverse() }))

/** How much more than it surprises one more sounding moves the bed anywhere between the first and the last, m. */
export const overmoved = (model: Model, site: Site, more: Sounding): number => {
  const [before, after] = [model(site), model({ ...site, soundings: [...site.soundings, more] })]
  const surprise = Math.abs(before.bedAt(more.distance, more.offset) + more.depth)
  return unlike(before, after) - surprise
}

/** How much farther the bed is from every known place than the steepest slope between two soundings would have it, m. */
export const oversteep = (model: Model, site: Site): number => {
  const { bedAt } = model(site)
  let slope = 0
  for (const a of site.soundings)
    for (const b of site.soundings)
      if (a !== b)
        slope = Math.max(
          slope,
          Math.abs(a.depth - b.depth) / Math.hypot(a.distance - b.distance, a.offset - b.offset),
        )
  return most((x, y) => {
    const z = bedAt(x, y)
    const over = (s: Sounding): number =>
      Math.abs(z + s.depth) - slope * (Math.abs(s.distance - x) + Math.abs(s.offset - y))
    return Math.min(Math.abs(z) - slope * Math.abs(x), ...site.soundings.map(over))
  })
}

/** What part of the soundings' range the bed leaves it by. */
export const outOfRange = (model: Model, site: Site): number => {
  const { bedAt } = model(site)
  const all = [0, ...site.soundings.map((s) => 0 - s.depth)]
  const [low, high] = [Math.min(...all), Math.max(...all)]
  return most((x, y) => Math.max(bedAt(x, y) - high, low - bedAt(x, y))) / (high - low)
}

/** Delaunay triangles as they stood here once: 0 is not known beside the line, and each new corner turns edges round it. */
export const triangulated: Model = ({ soundings }) => {
  const points = soundings.map((s) => [s.distance, s.offset] as const)
  const { triangles } = Delaunator.from(points)
  return {
    bedAt(x, y) {
      for (let t = 0; t < triangles.length; t += 3) {
        const [i, k, m] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
        const [[ax, ay], [bx, by], [cx, cy]] = [points[i]!, points[k]!, points[m]!]
        const all = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
        const u = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / all
        const v = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / all
        if (u >= 0 && v >= 0 && u + v <= 1)
          return -((1 - u - v) * soundings[i]!.depth + u * soundings[k]!.depth + v * soundings[m]!.depth)
      }
      return 0
    },
  }
}

/** The engine's own, spoiled. */
export const spoiled =
  (spoil: (z: number, x: number, y: number, site: Site) => number): Model =>
  (site) => {
    const bed = makeBed(site)
    return { bedAt: (x, y) => spoil(bed.bedAt(x, y), x, y, site) }
  }
