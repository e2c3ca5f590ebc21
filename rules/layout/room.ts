/**
 * The water that a boat needs to come in and leave: a fairway of 1.5 boat lengths, as harbors and shops mostly leave (common practice, no
 * source). Off one of its ends that far and as wide as it is, or that wide beside it: one of the three that is free is enough. m
 */
import { lowLevel } from '../clearance/keel.ts'
import type { Design } from '../design/index.ts'
import type { SideLine } from '../design/schema.ts'
import { covered, type Measured, outlineClearOf } from '../limits/limits.ts'
import type { Bed } from '../site/index.ts'
import { obstacleOutline } from '../site/obstacles.ts'
import { type Berth, besideEdge, GAP } from './berth.ts'
import { highestUnder, type Outline, overlapOf } from './outline.ts'

/** Of the boat's length. Common practice, no source. */
export const FAIRWAY = 1.5
/** Nearer is a touch, m. */
const TOUCH = 1e-6

export type InTheWay = 'section' | 'obstacle' | 'shallow' | 'side'

export interface Lane {
  readonly outline: Outline
  /** What there is in it; null where it is free. */
  readonly by: InTheWay | null
}

export interface Water {
  readonly placed: readonly Measured[]
  readonly site: Pick<Design['site'], 'levels' | 'obstacles'>
  readonly bed: Bed
  readonly sides: readonly SideLine[]
}

/** The three ways, the lakeward one first; one that is beside the boat after its ends. */
export function lanesOf(berth: Berth, water: Water): Lane[] {
  const far = FAIRWAY * berth.boat.length
  const half = berth.boat.length / 2
  const outer = GAP + berth.boat.beam
  const { dx, dy, nx, ny } = berth.line
  const alongX = Math.abs(ny) > 0.5
  const ahead = besideEdge(berth, [half, half + far], [GAP, outer])
  const astern = besideEdge(berth, [-half - far, -half], [GAP, outer])
  const beside = besideEdge(berth, [-half, half], [outer, outer + far])
  const [out, back] = (alongX ? dx : dy) > 0 ? [ahead, astern] : [astern, ahead]
  const all = !alongX && nx > 0 ? [beside, out, back] : [out, beside, back]
  return all.map((outline) => ({ outline, by: inTheWay(outline, berth.boat.draught, water) }))
}

function inTheWay(outline: Outline, draught: number, { placed, site, bed, sides }: Water): InTheWay | null {
  if (placed.some((p) => overlapOf(outline, covered(p)) > TOUCH)) return 'section'
  const keel = lowLevel(site.levels) - draught
  const hit = (site.obstacles ?? []).some(
    (one) =>
      bed.bedAt(one.x, one.y) + one.height > keel + TOUCH && overlapOf(outline, obstacleOutline(one)) > TOUCH,
  )
  if (hit) return 'obstacle'
  if (highestUnder(bed, outline) > keel + TOUCH) return 'shallow'
  return sides.some((side) => outlineClearOf(side, outline) < -TOUCH) ? 'side' : null
}

/** Between the berth's edge and the nearest section across from it, where one is nearer than the boat and as much again, m. */
export function acrossFrom(berth: Berth, placed: readonly Measured[]): number | null {
  const { dx, dy, nx, ny } = berth.line
  const half = berth.boat.length / 2
  const gaps = placed.map(covered).flatMap((corners): number[] => {
    const along = corners.map(([x, y]) => (x - berth.x) * dx + (y - berth.y) * dy)
    if (Math.min(half - Math.min(...along), Math.max(...along) + half) <= TOUCH) return []
    const gap = Math.min(...corners.map(([x, y]) => (x - berth.x) * nx + (y - berth.y) * ny))
    return gap > TOUCH ? [gap] : []
  })
  return gaps.length > 0 ? Math.min(...gaps) : null
}
