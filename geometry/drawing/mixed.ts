/** Inks between inks. */
import type { Ink } from '../paper/marks.ts'

const parts = (ink: Ink): number[] => [1, 3, 5].map((i) => Number.parseInt(ink.slice(i, i + 2), 16))

/** `share` 0: the first, 1: the second. */
export function mixed(from: Ink, to: Ink, share: number): Ink {
  const [a, b] = [parts(from), parts(to)]
  const hex = a.map((one, i) =>
    Math.round(one + (b[i]! - one) * Math.min(1, Math.max(0, share)))
      .toString(16)
      .padStart(2, '0'),
  )
  return `#${hex.join('')}`
}
