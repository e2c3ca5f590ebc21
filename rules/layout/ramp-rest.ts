/**
 * The ramp: it swings about the hinge axis and comes down on the shore.
 *
 * In the vertical plane through the hinge axis P its lower shoreward edge runs on a circle about P, and its underside on a tangent
 * to a smaller one. Let down from above, the ramp stops at the first ground that either meets: where the circle enters the ground,
 * or at a crest of the ground (a wall's edge, the break of a bank) under it. Exact on a polyline.
 */
import type { Frame } from '../catalog/index.ts'
import type { Bed } from '../site/index.ts'

export interface RampContact {
  /** Where it touches: its lower shoreward edge, or the crest that carries it. */
  readonly x: number
  readonly z: number
  /** Radians, positive where the shore end is lower than the hinge end. */
  readonly tilt: number
  readonly onEdge: boolean
}

export interface RampShape {
  readonly length: number
  /** Hinge axis below the deck surface, and underside below the hinge axis, m. */
  readonly drop: number
  readonly under: number
}

export const rampShape = (frame: Frame, depth: number, drop: number): RampShape => ({
  length: frame.length,
  drop,
  under: depth - drop,
})

/** Ground along the ramp: the highest across its width, as a polyline from x0 to x1. */
export interface Ground {
  readonly x: readonly number[]
  readonly z: readonly number[]
  /** The ground itself, where the polyline only comes near it (soundings off one line); null where it is exact. */
  readonly at: ((x: number) => number) | null
  /** Of every BLOCK of stretches in a row, what they lie within. */
  readonly blocks: readonly Box[]
}

interface Box {
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
}

/** Stretches of ground that are passed over together where none of them can be met first. */
const BLOCK = 32

/** `y`, `width`: center line and width of the ramp. */
export function groundAlong(bed: Bed, x0: number, x1: number, y: number, width: number): Ground {
  const x = bed.knots(x0, x1)
  const at = (x: number): number => across(bed, x, y, width)
  const z = x.map(at)
  return { x, z, at: bed.mode === 'area' ? at : null, blocks: blocksOf(x, z) }
}

function blocksOf(x: readonly number[], z: readonly number[]): Box[] {
  const boxes: Box[] = []
  for (let i = 0; i < x.length; i += BLOCK) {
    const end = Math.min(i + BLOCK, x.length - 1)
    let [z0, z1] = [z[i]!, z[i]!]
    for (let k = i + 1; k <= end; k++) {
      z0 = Math.min(z0, z[k]!)
      z1 = Math.max(z1, z[k]!)
    }
    boxes.push({ x0: x[i]!, x1: x[end]!, z0, z1 })
  }
  return boxes
}

/** Highest ground across a width at one distance, m. */
export const across = (bed: Bed, x: number, y: number, width: number): number =>
  Math.max(bed.bedAt(x, y - width / 2), bed.bedAt(x, y), bed.bedAt(x, y + width / 2))

/** Ground this steep (run over rise, m over m) is a wall's face: an end that comes up against it rests on nothing. */
const FACE = 1e-3

/**
 * Where a ramp hinged at (hingeX, hingeZ) comes to rest; null where it meets no ground, only the face of a wall, or
 * ground so close to the hinge that it cannot be let down at all.
 * `ground` must reach from `hingeX - R` to `hingeX`.
 */
export function rampContact(
  shape: RampShape,
  hingeX: number,
  hingeZ: number,
  ground: Ground,
): RampContact | null {
  const { length, under } = shape
  const radius = Math.hypot(length, under)
  let best: (RampContact & { face: boolean; i: number }) | null = null
  const offer = (i: number, x: number, z: number, reach: number, face: boolean): void => {
    const along = hingeX - x
    if (along <= 0 || reach <= Math.abs(under)) return
    const tilt = Math.atan2(hingeZ - z, along) - Math.asin(under / reach)
    // Of several met at once the most landward.
    if (tilt < Math.PI / 2 && (best === null || tilt < best.tilt || (tilt === best.tilt && i < best.i)))
      best = { x, z, tilt, onEdge: reach < radius - 1e-6, face, i }
  }
  /** False where the ramp cannot be let down. */
  const meets = (i: number): boolean => {
    const x = ground.x[i]!
    const z = ground.z[i]!
    const reach = Math.hypot(hingeX - x, hingeZ - z)
    if (reach <= radius) offer(i, x, z, reach, false)
    if (i + 1 === ground.x.length) return true
    const dx = ground.x[i + 1]! - x
    const dz = ground.z[i + 1]! - z
    if (x < hingeX && distanceTo(x - hingeX, z - hingeZ, dx, dz) < under - 1e-6) return false
    const face = dx < Math.abs(dz) * FACE
    for (const t of circleCrossings(x - hingeX, z - hingeZ, dx, dz, radius)) {
      const [cx, cz] = ground.at
        ? onGround(ground.at, hingeX, hingeZ, radius, x + t * dx, z + t * dz)
        : [x + t * dx, z + t * dz]
      offer(i, cx, cz, radius, face)
    }
    return true
  }
  // The blocks that may be met first come first; where one cannot be met before what was found, none after it can.
  const order: { readonly least: number; readonly b: number }[] = []
  for (let b = firstBlock(ground.blocks, hingeX - radius - AROUND); b < ground.blocks.length; b++) {
    const box = ground.blocks[b]!
    if (box.x0 > hingeX + AROUND) break
    const least = leastTilt(box, shape, radius, hingeX, hingeZ)
    if (least < Math.PI / 2) order.push({ least, b })
  }
  order.sort((p, q) => p.least - q.least || p.b - q.b)
  for (const { least, b } of order) {
    if (best !== null && least > (best as RampContact).tilt + 1e-9) break
    const end = Math.min((b + 1) * BLOCK, ground.x.length)
    for (let i = b * BLOCK; i < end; i++) if (!meets(i)) return null
  }
  return found(best)
}

/** A place that is slid onto the ground moves by less, m. */
const AROUND = 0.03

/** The first block that reaches to `x`. */
function firstBlock(blocks: readonly Box[], x: number): number {
  let [low, high] = [0, blocks.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (blocks[middle]!.x1 < x) low = middle + 1
    else high = middle
  }
  return low
}

/** No ground in a box stops the ramp at less tilt, radians; Infinity where it is out of reach, -Infinity where it may be in the hinge's way. */
function leastTilt(
  { x0, x1, z0, z1 }: Box,
  { under }: RampShape,
  radius: number,
  hingeX: number,
  hingeZ: number,
): number {
  const dx = Math.max(0, x0 - AROUND - hingeX, hingeX - x1 - AROUND)
  const dz = Math.max(0, z0 - AROUND - hingeZ, hingeZ - z1 - AROUND)
  const reach = Math.sqrt(dx * dx + dz * dz)
  if (reach > radius) return Number.POSITIVE_INFINITY
  if (reach <= Math.max(0, under)) return Number.NEGATIVE_INFINITY
  const rise = hingeZ - z1 - AROUND
  const steep = Math.atan2(rise, rise > 0 ? hingeX - x0 + AROUND : Math.max(0, hingeX - x1 - AROUND))
  return steep - Math.asin(Math.max(0, under) / reach)
}

/** Slides a place on the circle, near the ground, along it onto the ground: bisection to well under 1e-9 m. */
function onGround(
  ground: (x: number) => number,
  hingeX: number,
  hingeZ: number,
  radius: number,
  nearX: number,
  nearZ: number,
): [number, number] {
  const angle = Math.atan2(nearZ - hingeZ, nearX - hingeX)
  const over = (a: number): number => hingeZ + radius * Math.sin(a) - ground(hingeX + radius * Math.cos(a))
  // A polyline of 5 cm steps is off by little: 2 cm either way holds the crossing, or none is there to find.
  let low = angle - 0.02 / radius
  let high = angle + 0.02 / radius
  const sign = Math.sign(over(low))
  if (sign === Math.sign(over(high))) return [nearX, nearZ]
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (Math.sign(over(middle)) === sign) low = middle
    else high = middle
  }
  const a = (low + high) / 2
  return [hingeX + radius * Math.cos(a), ground(hingeX + radius * Math.cos(a))]
}

/** A crest counts before a face, and a face counts as nothing. */
function found(best: (RampContact & { readonly face: boolean }) | null): RampContact | null {
  // Leaning back past the upright is no rest either.
  if (!best || best.face || best.tilt <= -Math.PI / 2) return null
  const { x, z, tilt, onEdge } = best
  return { x, z, tilt, onEdge }
}

/** From the origin to the segment p + t d, m. */
function distanceTo(px: number, pz: number, dx: number, dz: number): number {
  const t = Math.min(1, Math.max(0, -(px * dx + pz * dz) / (dx * dx + dz * dz)))
  return Math.hypot(px + t * dx, pz + t * dz)
}

/** Parameters in [0, 1] at which the segment p + t d crosses the circle about the origin. */
function circleCrossings(px: number, pz: number, dx: number, dz: number, radius: number): number[] {
  const a = dx * dx + dz * dz
  const b = px * dx + pz * dz
  const c = px * px + pz * pz - radius * radius
  const disc = b * b - a * c
  if (a === 0 || disc < 0) return []
  const root = Math.sqrt(disc)
  return [(-b - root) / a, (-b + root) / a].filter((t) => t >= 0 && t <= 1)
}

/** Own place of the ramp (a: shoreward of the hinge axis, b: above it) to the vertical plane. */
export function rampPoint(
  hingeX: number,
  hingeZ: number,
  tilt: number,
  a: number,
  b: number,
): [number, number] {
  const c = Math.cos(tilt)
  const s = Math.sin(tilt)
  return [hingeX - a * c - b * s, hingeZ - a * s + b * c]
}
