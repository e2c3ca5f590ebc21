/**
 * A ramp that comes down steeply swings its lower corner at the hinge under the dock, toward the legs of the standing section.
 *
 * Seen from the side a ramp's frame is rectangles turned by its tilt and a leg an upright one; across the dock each has its width.
 */

import { sectionProperties } from '../catalog/section-properties.ts'
import type { Shop } from '../catalog-index.ts'
import { frameBody, type Piece } from './bodies.ts'
import type { Pose } from './emit-part.ts'
import type { PlacedLeg } from './legs.ts'

/** Overlapping by less is touching, m. */
const TOUCHING = 1e-4

/** Middle and half sizes of a piece of stock in its part's own frame, m: pieces of a frame lie along its axes. */
interface Block {
  readonly middle: readonly [number, number, number]
  readonly half: readonly [number, number, number]
}

function blockOf({ stock, from, to, up }: Piece): Block {
  const { width, height } = sectionProperties(stock)
  const half = (k: 0 | 1 | 2): number => {
    const along = Math.abs(to[k] - from[k])
    return along > 0 ? along / 2 : Math.abs(up[k]) > 0.5 ? height / 2 : width / 2
  }
  return {
    middle: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2],
    half: [half(0), half(1), half(2)],
  }
}

/** Legs that the frame of a ramp, as it lies, runs into. A leg without a length counts up to the deck. */
export function legsInRamp(
  { placed, x, y, z, tilt }: Pose,
  legs: readonly PlacedLeg[],
  deck: number,
  shop: Shop,
): PlacedLeg[] {
  const c = Math.cos(tilt)
  const s = Math.sin(tilt)
  const blocks = frameBody(shop.catalog, placed.frame).map(blockOf)
  return legs.filter((leg) => {
    if (Math.abs(leg.x - x) > placed.frame.length + 1 || Math.abs(leg.y - y) > placed.frame.width)
      return false
    const half = legHalf(leg, shop)
    const bottom = leg.bed + leg.pad.sole
    const tall = (leg.stock ? leg.stock.length : deck - bottom) / 2
    return blocks.some(({ middle: [mx, my, mz], half: [hx, hy, hz] }) => {
      if (Math.abs(y + my - leg.y) > hy + half - TOUCHING) return false
      // From the block's middle to the leg's, and the same along and square to the ramp.
      const dx = leg.x - (x + mx * c - mz * s)
      const dz = bottom + tall - (z + mx * s + mz * c)
      const [ac, as] = [Math.abs(c), Math.abs(s)]
      return (
        Math.abs(dx) < half + hx * ac + hz * as - TOUCHING &&
        Math.abs(dz) < tall + hx * as + hz * ac - TOUCHING &&
        Math.abs(dx * c + dz * s) < hx + half * ac + tall * as - TOUCHING &&
        Math.abs(dz * c - dx * s) < hz + half * as + tall * ac - TOUCHING
      )
    })
  })
}

function legHalf({ stock }: PlacedLeg, { catalog, legs }: Shop): number {
  const { width, height } = sectionProperties(catalog.stock[(stock ?? legs.at(-1)!).stock]!)
  return Math.max(width, height) / 2
}
