/** From m to the strip's pixels and back. */
import type { StripRange } from '../state/strip-range.ts'

export interface Scale {
  readonly width: number
  readonly height: number
  x(meters: number): number
  z(meters: number): number
  /** Pixels to m. */
  readonly perX: number
  readonly perZ: number
  /** How many times heights are drawn larger than distances; 1 is true to scale. */
  readonly stretch: number
}

const LOWEST = 176
const HIGHEST = 300
/** Room for what is written over the highest thing, px. */
export const HEAD = 10
/** Room for the distances written along the lower edge, px. */
export const FOOT = 22

/** Spans `range` over the whole width. True to scale where that gives a readable height, else stretched upright. */
export function makeScale(range: StripRange, width: number): Scale {
  const perX = width / (range.x1 - range.x0)
  const tall = range.z1 - range.z0
  const inner = Math.min(HIGHEST, Math.max(LOWEST, tall * perX))
  const perZ = inner / tall
  const stretch = perZ / perX
  return {
    width,
    height: HEAD + inner + FOOT,
    x: (meters) => (meters - range.x0) * perX,
    z: (meters) => HEAD + (range.z1 - meters) * perZ,
    perX,
    perZ,
    stretch: Math.abs(stretch - 1) < 0.02 ? 1 : stretch,
  }
}

/** Narrower strips say less: the handles of levels without their figures. px. */
export const WIDE = 600
/** Half of what so many letters take in the strip's own size, px. */
export const halfOf = (text: string): number => text.length * 3.4

/** Distances to write along the edge, in a round step that leaves about `room` px to each. `unit`: m of the unit written. */
export function ticks(range: StripRange, perX: number, unit: number, room = 70): number[] {
  const wanted = room / (perX * unit)
  const ten = 10 ** Math.floor(Math.log10(wanted))
  const step = ([1, 2, 5, 10].find((n) => n * ten >= wanted) ?? 10) * ten
  const list: number[] = []
  for (let n = Math.ceil(range.x0 / unit / step); n * step * unit <= range.x1; n++) list.push(n * step)
  return list
}
