/**
 * The ground in the picture. Under and beside the dock, as far as the strip shows it, it is `bedAt` and nothing else. Beyond that, where
 * nobody measured, it is scenery: the shore bends lakeward into a cove and the bank rolls off into low land.
 */
import { type BedMesh, bedColumns, bedRows, type Extent, groundMesh } from '../../geometry/index.ts'
import type { Bed, BottomKind, Design } from '../../rules/index.ts'

export interface Land {
  /** Elevation that is drawn, m. */
  at(x: number, y: number): number
  readonly mesh: BedMesh
  /** Linear color of each vertex, and how stony: share and size of stones, m. */
  readonly tints: Float32Array
  readonly stones: Float32Array
  /** The bottom, where it is the same all over. */
  readonly bottom: BottomKind | null
  /** Offsets between which the ground is as measured, m. */
  readonly y0: number
  readonly y1: number
  /** Linear color of the bottom at a place. */
  tintAt(x: number, y: number): readonly [number, number, number]
}

/** How far the picture goes, m. */
const FAR = { shore: 90, lake: 170, side: 170 } as const
/** Bottoms: linear color; share of stones and their size, m. Looks only. */
const BOTTOMS: Readonly<Record<BottomKind, readonly [number, number, number, number, number]>> = {
  sand: [0.6, 0.475, 0.29, 0, 0.1],
  gravel: [0.36, 0.335, 0.29, 0.85, 0.075],
  rock: [0.25, 0.25, 0.245, 1, 0.6],
  clay: [0.36, 0.25, 0.165, 0, 0.1],
  muck: [0.125, 0.11, 0.075, 0, 0.1],
}

/**
 * `extent`: what is shown as measured, at least from `x0` on, m. `before`: of the same scene; arrays that would be the same are taken over,
 * so that nothing is sent to the graphics card anew.
 */
export function makeLand(
  bed: Bed,
  extent: Extent,
  site: Design['site'],
  x0: number,
  before: Land | null = null,
): Land {
  const { y0, y1 } = extent
  const back = x0 - 0.5
  const cove = coveOf(site.shore?.kind === 'wall' ? 0 : 1)

  // What is the same all along a row of the mesh is worked out once for it: this is done anew at every move of a sounding.
  let row = Number.NaN
  let bend = 0
  let edge = 0
  let steep = 0
  const at = (x: number, y: number): number => {
    if (y !== row) {
      row = y
      const aside = Math.max(y0 - y, y - y1, 0)
      bend = aside > 0 ? cove(y, aside) : 0
      edge = bed.bedAt(back, y)
      steep = Math.min(0.5, Math.max(0, edge - bed.bedAt(back + 0.5, y)) / 0.5)
    }
    const along = x - bend
    const landward = back - along
    if (landward <= 0) return bed.bedAt(along, y)
    // The slope runs out within a few meters, then the land rolls.
    const run = 1 - Math.exp(-landward / 2.5)
    return edge + steep * 2.5 * run + rolling(along, y) * Math.min(1, landward / 25)
  }

  // A longer dock gets coarser columns, not more of them.
  const step = Math.max(bed.mode === 'line' ? 1 : 0.5, (extent.x1 + 2 - back) / MOST_STEPS)
  const xs = [
    ...graded(back, back - FAR.shore, 0.8, 1.3).reverse(),
    ...bedColumns(bed, back, extent.x1 + 2, step),
    ...graded(extent.x1 + 2, extent.x1 + 2 + FAR.lake, 0.9, 1.25),
  ]
  const ys = [
    ...graded(y0, y0 - FAR.side, 0.9, 1.14).reverse(),
    ...bedRows(bed, y0, y1, Math.max(0.6, (y1 - y0) / MOST_STEPS)),
    ...graded(y1, y1 + FAR.side, 0.9, 1.14),
  ]
  const tintAt: Land['tintAt'] = (x, y) => {
    const [r, g, b] = BOTTOMS[bed.bottomAt(x, y)]
    return [r, g, b]
  }
  const mesh = groundMesh(xs, ys, at, before?.mesh)
  return { at, y0, y1, mesh, tintAt, ...bottoms(mesh, bed, site, before) }
}

/** How far the shoreline at y lies lakeward of where it is measured, m: a cove, with a wandering edge. */
const coveOf =
  (size: number) =>
  (y: number, aside: number): number => {
    const bend = 30 * (1 - Math.exp(-(aside * aside) / 1100))
    const wander =
      Math.min(1, aside / 8) *
      (1.1 * Math.sin(y * 0.31 + 1) + 0.7 * Math.sin(y * 0.73) + 2 * Math.sin(y * 0.11))
    return size * (bend + wander)
  }

const rolling = (x: number, y: number): number =>
  1.1 +
  0.8 * Math.sin(x * 0.07 + y * 0.05) +
  0.35 * Math.sin(y * 0.13 - x * 0.04) +
  0.2 * Math.sin(x * 0.33 + y * 0.29)

/** Distances from `from` toward `to` in growing steps, without `from` itself. */
function graded(from: number, to: number, first: number, growth: number): number[] {
  const sign = Math.sign(to - from)
  const list: number[] = []
  let step = first
  for (let x = from + sign * step; (to - x) * sign > 0; x += sign * step) {
    list.push(x)
    step *= growth
  }
  list.push(to)
  return list
}

/** At most this many steps: a very long dock gets coarser ones. */
const MOST_STEPS = 160

/** What the bottom looks like at each vertex. */
function bottoms(
  { xs, ys }: BedMesh,
  bed: Bed,
  site: Design['site'],
  before: Land | null,
): Pick<Land, 'tints' | 'stones' | 'bottom'> {
  const vertices = xs.length * ys.length
  const isEven = site.soundings.every(({ bottom }) => bottom === undefined || bottom === site.bottom)
  const bottom = isEven ? site.bottom : null
  if (before && bottom !== null && before.bottom === bottom && before.tints.length === vertices * 3) {
    const { tints, stones } = before
    return { tints, stones, bottom }
  }
  const tints = new Float32Array(vertices * 3)
  const stones = new Float32Array(vertices * 2)
  let v = 0
  for (const y of ys)
    for (const x of xs) {
      const [r, g, b, share, size] = BOTTOMS[bed.bottomAt(x, y)]
      tints[3 * v] = r
      tints[3 * v + 1] = g
      tints[3 * v + 2] = b
      stones[2 * v] = share
      stones[2 * v + 1] = size
      v++
    }
  return { tints, stones, bottom }
}
