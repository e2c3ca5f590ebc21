import { type Check, COMMON, meters, worst } from './check.ts'
import { beyondError, soundingPairs } from './sounding-pairs.ts'

/** A hand's breadth: nearer than a place can be told from a boat, m. Judgment. */
export const HAND = 0.1

/** Two soundings at almost one place that differ by more than soundings do: one of them is not right. */
export const soundingsDiffer: Check = {
  code: 'soundings-differ',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const off = (pair: Parameters<typeof beyondError>[0]): number =>
      beyondError(pair, kit.design.site.soundingError)
    const pairs = soundingPairs(kit, HAND).filter((pair) => off(pair) > 0)
    if (pairs.length === 0) return []
    const { a, b } = worst(pairs, off)
    return [
      {
        parts: [],
        values: {
          x: meters(a.distance),
          y: meters(a.offset),
          depth: meters(a.depth),
          x2: meters(b.distance),
          y2: meters(b.offset),
          depth2: meters(b.depth),
        },
      },
    ]
  },
}
