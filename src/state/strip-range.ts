/** The range that the section strip shows. */
import type { Project } from '../../rules/index.ts'
import { berthsOf, hullBox, mooredOf } from '../../rules/layout/berth.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'

export interface StripRange {
  /** Distances at the left and the right edge, m. */
  readonly x0: number
  readonly x1: number
  /** Elevations of the lowest and highest thing shown, m. */
  readonly z0: number
  readonly z1: number
}

/** Room beyond the outermost thing shown, as a share of the whole and at least, m. */
const SHARE = 0.05
const LEAST = 0.7
/** Never less than this across, m: a single sounding still makes a picture. */
const NARROWEST = 8
/** Soundings are shown as far beyond the dock as this, or as the dock is long, m. */
const BEYOND = 8

/** All of the dock, the boats at it lakeward, the soundings near it, the water's edge, with some room around. */
export function stripRange({ dock, design, bed }: Project): StripRange {
  const covered = footprintOfAll(dock.sections)
  let x0 = Math.min(0, covered?.x0 ?? 0)
  let x1 = Math.max(0, covered?.x1 ?? 0)
  for (const berth of berthsOf(design.dock, mooredOf(dock.sections))) x1 = Math.max(x1, hullBox(berth).x1)
  const beyond = Math.max(BEYOND, x1 - x0)
  const near = design.site.soundings
    .map((s) => s.distance)
    .filter((x) => x >= x0 - beyond && x <= x1 + beyond)
  x0 = Math.min(x0, least(near))
  x1 = Math.max(x1, most(near))
  const room = Math.max(LEAST, (x1 - x0) * SHARE, (NARROWEST - (x1 - x0)) / 2)
  x0 -= room
  x1 += room

  const { levels } = design.site
  const deck = design.dock.deckHeight
  const ground = bed.knots(x0, x1).map((x) => bed.bedAt(x, bed.lineY))
  const heights = [levels.low, levels.high, 0, deck, ...ground]
  if (dock.waves) heights.push(Math.max(0, levels.high) + dock.waves.crestHigh)
  for (const leg of dock.legs) heights.push(leg.bed, deck + (leg.aboveDeck ?? 0))
  const z0 = least(heights)
  const z1 = most(heights)
  return { x0, x1, z0: z0 - Math.max(0.25, (z1 - z0) * 0.1), z1: z1 + Math.max(0.2, (z1 - z0) * 0.08) }
}

// Not Math.min(...list): 20,000 soundings would be too many arguments.
const least = (list: readonly number[]): number =>
  list.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
const most = (list: readonly number[]): number =>
  list.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
