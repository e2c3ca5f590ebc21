/**
 * How a section lies in plan, m: its own places in the dock's plan, its corners, what it covers. Asked by rules, drawings and screens alike,
 * so that it is worked out in one way. The Dock publishes what all of it follows from (a section's place, heading, length, width, and the
 * turn of a corner piece) and nothing twice.
 *
 * A corner piece has two edges as wide as any section's, its end edge turned to the left of its start edge by `turn` degrees; its left side
 * is `length` long, its right side as much longer as that takes. Mirrored about the line between the middles of its sides it is the same.
 */
import type { Section } from '../dock.ts'
import type { Outline, Place } from './outline.ts'

/** In plan. */
export interface Rectangle {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

/** A place and a heading by its cosine and sine. */
export interface Stance {
  readonly x: number
  readonly y: number
  readonly c: number
  readonly s: number
}

/** What a frame measures in plan. */
export interface Size {
  readonly length: number
  readonly width: number
  /** Of a corner piece, degrees. */
  readonly turn?: number | undefined
}

type Lying = Pick<Section, 'x' | 'y' | 'heading' | 'length' | 'width' | 'turn'>

const COS = [1, 0, -1, 0] as const
const SIN = [0, 1, 0, -1] as const

/** Exact for quarter turns. @param heading degrees */
export function cosOf(heading: number): number {
  const quarter = heading / 90
  return Number.isInteger(quarter) ? COS[quarter & 3]! : Math.cos((heading * Math.PI) / 180)
}
export function sinOf(heading: number): number {
  const quarter = heading / 90
  return Number.isInteger(quarter) ? SIN[quarter & 3]! : Math.sin((heading * Math.PI) / 180)
}

/** Where a section of the Dock lies. */
export const stanceOf = ({ x, y, heading }: Pick<Section, 'x' | 'y' | 'heading'>): Stance => ({
  x,
  y,
  c: cosOf(heading),
  s: sinOf(heading),
})

/** Own coordinates (along from the middle of the start edge, across to the left) to the dock's plan. */
export const toPlan = (p: Stance, along: number, across: number): [x: number, y: number] => [
  p.x + p.c * along - p.s * across,
  p.y + p.s * along + p.c * across,
]

/** A corner in a frame's own coordinates: 0 start right, 1 start left, 2 end left, 3 end right. */
export function ownCorner({ length, width, turn }: Size, i: number): Place {
  const half = width / 2
  if (i === 0) return [0, -half]
  if (i === 1) return [0, half]
  if (!turn) return [length, i === 2 ? half : -half]
  const x = length * cosOf(turn / 2)
  const y = half + length * sinOf(turn / 2)
  return i === 2 ? [x, y] : [x + width * sinOf(turn), y - width * cosOf(turn)]
}

/** Length of a frame's left or right side, m. */
export const sideLength = ({ length, width, turn }: Size, side: 'left' | 'right'): number =>
  turn && side === 'right' ? length + 2 * width * sinOf(turn / 2) : length

/** What a frame covers, m2. */
export const areaOf = (size: Size): number =>
  size.turn
    ? ((size.length + sideLength(size, 'right')) / 2) * size.width * cosOf(size.turn / 2)
    : size.length * size.width

/** The middle of what it covers, in its own coordinates. */
export function centerOf(size: Size): Place {
  const { length, turn } = size
  if (!turn) return [length / 2, 0]
  // Of a trapezoid: from its longer side inward, on the line between the middles of both.
  const right = sideLength(size, 'right')
  const share = (right + 2 * length) / (3 * (right + length))
  const [lx, ly] = sideMiddle(size, 'left')
  const [rx, ry] = sideMiddle(size, 'right')
  return [rx + (lx - rx) * share, ry + (ly - ry) * share]
}

/** The middle of a side in a frame's own coordinates. */
export function sideMiddle(size: Size, side: 'left' | 'right'): Place {
  const [a, b] =
    side === 'left' ? [ownCorner(size, 1), ownCorner(size, 2)] : [ownCorner(size, 0), ownCorner(size, 3)]
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
}

/** Start right, start left, end left, end right. */
export const outlineAt = (p: Stance, size: Size): Outline =>
  [0, 1, 2, 3].map((i) => {
    const [along, across] = ownCorner(size, i)
    return toPlan(p, along, across)
  })

export const cornersOf = (section: Lying): Outline => outlineAt(stanceOf(section), section)

/** Square to the dock's plan: what it covers is the rectangle around it. */
export const isSquare = ({ c, s }: Stance, { turn }: Size): boolean => !turn && (c === 0 || s === 0)

/** The rectangle around what a section covers. */
export const footprintOf = (section: Lying): Rectangle => footprintAt(stanceOf(section), section)

export function footprintAt({ x, y, c, s }: Stance, size: Size): Rectangle {
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < 4; i++) {
    const [along, across] = ownCorner(size, i)
    const px = x + c * along - s * across
    const py = y + s * along + c * across
    x0 = Math.min(x0, px)
    x1 = Math.max(x1, px)
    y0 = Math.min(y0, py)
    y1 = Math.max(y1, py)
  }
  return { x0, x1, y0, y1 }
}

/** The rectangle around what all sections cover; null where there is none. */
export function footprintOfAll(sections: readonly Lying[]): Rectangle | null {
  if (sections.length === 0) return null
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const section of sections) {
    const own = footprintOf(section)
    x0 = Math.min(x0, own.x0)
    x1 = Math.max(x1, own.x1)
    y0 = Math.min(y0, own.y0)
    y1 = Math.max(y1, own.y1)
  }
  return { x0, x1, y0, y1 }
}
