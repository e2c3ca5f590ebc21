/** A bed from soundings on one line: piecewise linear along the dock, the same to both sides. */
import type { Places } from './kriging.ts'
import { makeProfile, type Profile } from './profile.ts'

/** Soundings this near to one line count as on it, m. */
const ON_LINE = 0.05

/** Soundings at one distance (a line along the shore) count with their mean. */
export interface SoundingLine {
  readonly places: Places
  readonly bottom: Profile
  readonly firm: Profile
}

export function onLine({ x, y }: Places): boolean {
  // In ascending order: the ends are the first and the last.
  const dx = x.at(-1)! - x[0]!
  const dy = y.at(-1)! - y[0]!
  const long = Math.hypot(dx, dy)
  return (
    long === 0 || x.every((px, i) => Math.abs((px - x[0]!) * dy - (y[i]! - y[0]!) * dx) / long <= ON_LINE)
  )
}

export function makeLine(
  { x, y, bottom, firm }: Places & { readonly bottom: Float64Array; readonly firm: Float64Array },
  top: number,
  wall: boolean,
): SoundingLine {
  const rows: { x: number; y: number; bottom: number; firm: number }[] = []
  for (let i = 0; i < x.length; ) {
    let k = i
    const sum = { y: 0, bottom: 0, firm: 0 }
    for (; k < x.length && x[k] === x[i]; k++) {
      sum.y += y[k]!
      sum.bottom += bottom[k]!
      sum.firm += firm[k]!
    }
    const n = k - i
    rows.push({ x: x[i]!, y: sum.y / n, bottom: sum.bottom / n, firm: sum.firm / n })
    i = k
  }
  const xs = rows.map((row) => row.x)
  const profile = (z: readonly number[]): Profile => makeProfile(xs, z, top, wall)
  return {
    places: { x: Float64Array.from(xs), y: Float64Array.from(rows, (row) => row.y) },
    bottom: profile(rows.map((row) => row.bottom)),
    firm: profile(rows.map((row) => row.firm)),
  }
}

/** Breaks of the profile, ascending; where the bank's slope, going on, comes to its top no sounding stands. */
export function lineBreaks({ x, z, slopeLand, top }: Profile): number[] {
  const breaks = [...x]
  if (Number.isFinite(top) && slopeLand < 0) breaks.unshift(x[0]! + (top - z[0]!) / slopeLand)
  return breaks
}
