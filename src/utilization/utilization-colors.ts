/**
 * Colors of use, for the picture and its legend: green to 60 %, as `bandOf` has it, then yellow, orange from 85 %, red at the limit. Lightness falls all the way from nothing to too much, so that the order is read without
 * color too; what is over has a color of its own.
 */

/** Use (share of 1) and color as on the screen. */
const RAMP: readonly (readonly [use: number, color: string])[] = [
  [0, '#eaf4cf'],
  [0.3, '#c3dd8f'],
  [0.6, '#9cc45e'],
  [0.7, '#d6ae24'],
  [0.85, '#de7f2c'],
  [1, '#b3261e'],
]
const OVER = '#5a0a12'

/** Screen color, 0 to 1 each, of a use. */
export function colorOf(use: number): readonly [number, number, number] {
  if (use > 1) return channels(OVER)
  const after = Math.max(
    1,
    RAMP.findIndex(([at]) => at >= use),
  )
  const [from, a] = RAMP[after - 1]!
  const [to, b] = RAMP[after]!
  const t = Math.min(1, Math.max(0, (use - from) / (to - from)))
  const [one, two] = [channels(a), channels(b)]
  const between = (k: 0 | 1 | 2): number => one[k] + (two[k] - one[k]) * t
  return [between(0), between(1), between(2)]
}

/** Of `#rrggbb`. */
function channels(hex: string): readonly [number, number, number] {
  const channel = (at: number): number => Number.parseInt(hex.slice(at, at + 2), 16) / 255
  return [channel(1), channel(3), channel(5)]
}

/** The same for a style: `linear-gradient(to right, …)` from no use to all of it. */
export const gradient = (): string =>
  `linear-gradient(to right, ${RAMP.map(([use, color]) => `${color} ${use * 100}%`).join(', ')})`
