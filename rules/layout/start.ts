/** Where the dock begins: x of the first standing section's start edge, by rule (common practice) or as given. */
import type { Frame } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import { atLeast, SLACK } from '../numbers.ts'
import type { Bed } from '../site/index.ts'
import { merged, type Stretch, stretchesOver } from '../site/stretches.ts'
import { footprintAt } from './footprint.ts'
import type { ShoreEnd } from './place.ts'
import {
  across,
  groundAlong,
  type RampContact,
  type RampShape,
  rampContact,
  rampPoint,
  rampShape,
} from './ramp-rest.ts'

export interface Start {
  readonly x: number
  readonly by: 'given' | 'ramp' | 'frame'
  /** False where the rule found no place and the dock begins at the water's edge for want of one. */
  readonly found: boolean
}

/** How far landward of the last sounding a bank is followed, m. */
const LANDWARD = 60

/**
 * With a ramp: the most lakeward step at which its shoreward end touches ground higher than the high level by the catalog's
 * margin; on a wall, with the catalog's bearing behind the edge. Without one: the most shoreward step, at most a section's length landward of the water's edge, at which the frame clears
 * bed and bank by the catalog's clearance. No such step: the water's edge, `found` false. Ground that is too high throughout is passed
 * in one step, so that soundings out to 20 km cost no more than those near the shore.
 */
export function findStart(design: Design, shop: Shop, bed: Bed, { ramp, rampY, standing }: ShoreEnd): Start {
  const given = design.dock.start
  if (given !== null) return { x: given, by: 'given', found: true }
  if (ramp) {
    const x = besideBank(design, shop, bed, ramp, rampY)
    return { x: x ?? 0, by: 'ramp', found: x !== null }
  }
  const x = firstClear(bed, standing, design.dock.deckHeight - shop.shape(standing).lowest, shop)
  return { x: x ?? 0, by: 'frame', found: x !== null }
}

/** So many steps are tried before what is surely too high is sought out, to be passed in one. */
const NEAR = 100
/** So many are tried in all. Where so many fail one by one, the ground comes and goes over the height at every pace for 200 m. */
const MOST = 4000
/** What rounding may be off: a place, m, and a height, m. */
const OFF = 1e-6
const UNSURE = 1e-10

const AT_START = { x: 0, y: 0, c: 1, s: 0 } as const

/** The most shoreward step at which a frame with its underside at `under` clears the ground; null where there is none. */
function firstClear(bed: Bed, frame: Frame, under: number, { rules }: Shop): number | null {
  const { startStep: step, frameToBed } = rules
  const round = (k: number): number => Math.round(k * step * 1e7) / 1e7
  const { x1: length, y0, y1 } = footprintAt(AT_START, frame)
  const first = Math.ceil(-length / step)
  const last = Math.ceil((bed.lastX + length) / step)
  let passed: Stretch[] | null = null
  let next = 0
  for (let k = first, tried = 0; k <= last && tried < MOST; k++) {
    const x = round(k)
    if (tried === NEAR)
      passed ??= tooHigh(bed, [x, round(last) + length], [y0, y1], length, under - frameToBed)
    if (passed) {
      while (next < passed.length && passed[next]![0] <= x + length) next++
      const over = passed[next - 1]
      if (over && over[1] >= x) {
        k = Math.max(k, Math.floor(over[1] / step) - 1)
        continue
      }
    }
    tried++
    if (atLeast(under - bed.highest(x, x + length, y0, y1), frameToBed)) return x
  }
  return null
}

/** Where a frame so long finds ground over a height wherever it lies on it, m: what is over it only between two looks is not among them. */
function tooHigh(bed: Bed, [from, to]: Stretch, [y0, y1]: Stretch, length: number, most: number): Stretch[] {
  const least = bed.looks > 0 ? length / Math.ceil(length / bed.looks) : 0
  const rows = bed
    .rows(y0, y1)
    .map((y) => stretchesOver(bed.straight(y, from, to), (x) => bed.bedAt(x, y), most + SLACK + UNSURE))
  return merged(rows.map((row) => row.filter(([a, b]) => b - a > least + 4 * OFF))).map(([a, b]) => [
    a + OFF,
    b - OFF,
  ])
}

function besideBank(design: Design, shop: Shop, bed: Bed, ramp: Frame, y: number): number | null {
  const { startStep: step, startMargin } = shop.rules
  const least = design.site.levels.high + startMargin
  const shape = rampShape(ramp, shop.shape(ramp).depth, shop.catalog.hinge.drop)
  const radius = Math.hypot(shape.length, shape.under)
  const hingeZ = design.dock.deckHeight - shape.drop
  const dry = mostLakewardDry(bed, y, ramp.width, least)
  if (dry === null) return null
  const far = dry + radius
  // One polyline serves every step: from the landmost reach to the lakeward end of the search.
  const ground = groundAlong(bed, dry - 3 * radius, far, y, ramp.width)
  for (let k = Math.floor(far / step) + 1; k * step >= dry - radius; k--) {
    const x = Math.round(k * step * 1e7) / 1e7
    const contact = rampContact(shape, x, hingeZ, ground)
    if (
      contact &&
      atLeast(contact.z, least) &&
      atLeast(bearing(design, shape, x, hingeZ, contact), shop.rules.rampBearing)
    )
      return x
  }
  return null
}

/** How much of the ramp lies on a wall's top, behind its edge, m; Infinity on a bank. */
export const bearing = (
  design: Design,
  shape: RampShape,
  hingeX: number,
  hingeZ: number,
  { tilt }: RampContact,
): number =>
  design.site.shore?.kind === 'wall'
    ? -rampPoint(hingeX, hingeZ, tilt, shape.length, -shape.under)[0]
    : Number.POSITIVE_INFINITY

/** The most lakeward place along the ramp's line where the ground is at least `least` high; null if none. */
function mostLakewardDry(bed: Bed, y: number, width: number, least: number): number | null {
  const from = bed.firstX - LANDWARD
  const to = Math.max(from, bed.mode === 'area' ? bed.reachOf(least) : bed.lastX)
  // From the lake inward, looking no farther than the first dry place: soundings may go on far out, the shore does not.
  const dryIn = (x: readonly number[]): number | null => {
    let beyond = x.length - 1
    for (let i = x.length - 1; i >= 0; i--) {
      const z = across(bed, x[i]!, y, width)
      if (atLeast(z, least)) {
        const drop = z - across(bed, x[beyond]!, y, width)
        return x[i]! + (drop > 0 ? Math.min(1, (z - least) / drop) : 0) * (x[beyond]! - x[i]!)
      }
      beyond = i
    }
    return null
  }
  if (bed.mode === 'line' || to - from < LONG) return dryIn(bed.knots(from, to))
  // What may be dry, and all that lies landward of the first sounding.
  const shore = Math.min(to, bed.firstX + OFF)
  const dry = merged([
    [[from, shore]],
    ...[y - width / 2, y, y + width / 2].map((row) =>
      stretchesOver(bed.straight(row, shore, to), (x) => bed.bedAt(x, row), least - SLACK - UNSURE),
    ),
  ])
  // Piece by piece: the first place of a bank of 10 km is most likely dry.
  for (const [a, b] of dry.reverse())
    for (let end = b; end >= a; end -= LONG) {
      const found = dryIn(bed.knots(from, to, [Math.max(a, end - LONG) - OFF, end + OFF]))
      if (found !== null) return found
    }
  return null
}

/** Over a shorter way every place is looked at at once, m. */
const LONG = 200
