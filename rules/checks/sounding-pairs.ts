import type { Sounding } from '../design/index.ts'
import type { Kit } from '../kit.ts'

export interface SoundingPair {
  readonly a: Sounding
  readonly b: Sounding
  /** In plan, m. */
  readonly apart: number
}

/** More than this are not all compared with each other: a drag must not wait. */
const ALL = 150

/** Corners of the bed's triangles as soundings: two checks ask. */
const cornersOfTriangles = ({ bed }: Kit): readonly Sounding[] => {
  const { x, y } = bed.triangulation!
  // In the order of their distances: each is looked for from where the one before was found.
  return Array.from(x, (distance, i) => ({
    distance,
    offset: y[i]!,
    depth: 0 - bed.bedAt(distance, y[i]!),
  }))
}

/** Soundings at most so far from each other, m; of many only neighbors: along a triangle's edge, or next to each other along the dock. */
export function soundingPairs(kit: Kit, most: number): SoundingPair[] {
  const { design, bed } = kit
  const { soundings } = design.site
  const out: SoundingPair[] = []
  const add = (a: Sounding, b: Sounding): void => {
    const apart = Math.hypot(a.distance - b.distance, a.offset - b.offset)
    if (apart > 0 && apart <= most) out.push({ a, b, apart })
  }
  if (soundings.length <= ALL) {
    soundings.forEach((a, i) => {
      for (let k = i + 1; k < soundings.length; k++) add(a, soundings[k]!)
    })
    return out
  }
  if (!bed.triangulation) {
    const sorted = [...soundings].sort((a, b) => a.distance - b.distance || a.offset - b.offset)
    for (let i = 1; i < sorted.length; i++) add(sorted[i - 1]!, sorted[i]!)
    return out
  }
  const { x, y, triangles, halfedges } = bed.triangulation
  const places = kit.once(cornersOfTriangles)
  const sounding = (i: number): Sounding => places[i]!
  for (let e = 0; e < triangles.length; e++) {
    if (halfedges[e]! > e) continue
    const [i, k] = [triangles[e]!, triangles[e % 3 === 2 ? e - 2 : e + 1]!]
    if (Math.hypot(x[i]! - x[k]!, y[i]! - y[k]!) <= most) add(sounding(i), sounding(k))
  }
  return out
}

/** By how much two soundings differ beyond what both being off explains: 3 standard errors of the difference, m. */
export const beyondError = ({ a, b }: SoundingPair, soundingError: number): number =>
  Math.abs(a.depth - b.depth) - 3 * Math.SQRT2 * soundingError
