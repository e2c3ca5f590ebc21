/**
 * How a section lies in plan, m: its own places in the dock's plan, its corners, what it covers. Asked by rules, drawings and screens alike,
 * so that it is worked out in one way. The Dock publishes what all of it follows from (a section's place, heading, length and width) and
 * nothing twice.
 */
import type { Section } from '../dock.ts'

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

type Lying = Pick<Section, 'x' | 'y' | 'heading' | 'length' | 'width'>

const COS = [1, 0, -1, 0] as const
const SIN = [0, 1, 0, -1] as const

/** Exact: headings are quarter turns. @param quarter of 90 degrees */
export const cosOf = (quarter: number): number => COS[quarter & 3]!
export const sinOf = (quarter: number): number => SIN[quarter & 3]!

/** Where a section of the Dock lies. */
export function stanceOf({ x, y, heading }: Pick<Section, 'x' | 'y' | 'heading'>): Stance {
  const quarter = Math.round(heading / 90)
  return { x, y, c: cosOf(quarter), s: sinOf(quarter) }
}

/** Own coordinates (along from the middle of the start edge, across to the left) to the dock's plan. */
export const toPlan = (p: Stance, along: number, across: number): [x: number, y: number] => [
  p.x + p.c * along - p.s * across,
  p.y + p.s * along + p.c * across,
]

/** Start right, start left, end left, end right. */
export function cornersOf(section: Lying): readonly (readonly [x: number, y: number])[] {
  const p = stanceOf(section)
  const half = section.width / 2
  return [
    toPlan(p, 0, -half),
    toPlan(p, 0, half),
    toPlan(p, section.length, half),
    toPlan(p, section.length, -half),
  ]
}

/** What a section covers. */
export const footprintOf = (section: Lying): Rectangle =>
  footprintAt(stanceOf(section), section.length, section.width)

export function footprintAt({ x, y, c, s }: Stance, length: number, width: number): Rectangle {
  const ax = x - (s * width) / 2
  const ay = y + (c * width) / 2
  const bx = x + c * length + (s * width) / 2
  const by = y + s * length - (c * width) / 2
  return { x0: Math.min(ax, bx), x1: Math.max(ax, bx), y0: Math.min(ay, by), y1: Math.max(ay, by) }
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
