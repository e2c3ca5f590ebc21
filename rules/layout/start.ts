/** Where the dock begins: x of the first standing section's start edge, by rule (common practice) or as given. */
import type { Frame } from '../catalog/index.ts'
import type { Design } from '../design/index.ts'
import { atLeast } from '../numbers.ts'
import {
  across,
  groundAlong,
  type RampContact,
  type RampShape,
  rampContact,
  rampPoint,
  rampShape,
} from '../parts/ramp.ts'
import type { Shop } from '../shop.ts'
import type { Bed } from '../site/index.ts'
import type { ShoreEnd } from './place.ts'

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
 * bed and bank by the catalog's clearance. No such step: the water's edge, `found` false.
 */
export function findStart(design: Design, shop: Shop, bed: Bed, { ramp, rampY, standing }: ShoreEnd): Start {
  const given = design.dock.start
  if (given !== null) return { x: given, by: 'given', found: true }
  const { startStep: step } = shop.rules
  const round = (k: number): number => Math.round(k * step * 1e7) / 1e7
  if (ramp) {
    const x = besideBank(design, shop, bed, ramp, rampY)
    return { x: x ?? 0, by: 'ramp', found: x !== null }
  }
  const under = design.dock.deckHeight - shop.shape(standing).lowest
  const half = standing.width / 2
  const last = Math.ceil((bed.lastX + standing.length) / step)
  for (let k = Math.ceil(-standing.length / step); k <= last; k++) {
    const x = round(k)
    if (atLeast(under - bed.highest(x, x + standing.length, -half, half), shop.rules.frameToBed))
      return { x, by: 'frame', found: true }
  }
  return { x: 0, by: 'frame', found: false }
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
  const x = bed.knots(from, to)
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
