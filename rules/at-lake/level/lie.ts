/** How stiff sections lie by what was read of them: weighted least squares. */
import type { PlacedLeg } from '../../parts/legs.ts'
import { choleskyOf, forward, solved } from '../../site/kriging.ts'
import type { LevelReadings } from '../types.ts'
import { readingOf } from './level-today.ts'
import type { Stiff } from './stiff-sections.ts'

/** A rule held to still water from the deck, and a level's bubble over its length, one standard deviation, m. Judgment. */
const RULE = 0.002
const BUBBLE = 0.001
/** A deck that nobody has read may lie so high, m, and so askew: as good as anyhow. */
const ANYWHERE = 10
const ASKEW = 1

export interface Lie {
  /** Deck over the water by what each number counts for. */
  readonly sumAt: (at: readonly number[]) => number
  readonly heightAt: (leg: PlacedLeg) => number
  /** Null: no leg of these. */
  readonly heightOf: (leg: string) => number | null
  /** Against the middle of what was read, one standard deviation, m. */
  readonly errorAt: (leg: PlacedLeg) => number
  /** Of the worst leg. */
  readonly error: number
  /** Greatest error of one reading. */
  readonly noise: number
  /** By leg. */
  readonly read: ReadonlyMap<string, number>
  /** How far beyond its own error a reading is off what stiff sections have, and whose. */
  readonly worst: { readonly over: number; readonly legs: readonly string[] }
}

interface Row {
  readonly at: readonly number[]
  readonly value: number
  readonly error: number
  readonly leg: string | null
}

export function lieOf(given: LevelReadings, legs: readonly PlacedLeg[], stiff: Stiff): Lie {
  const byId = new Map(legs.map((leg) => [leg.id, leg]))
  const rows = [...readingRows(given, byId, stiff), ...bubbleRows(given, stiff)]
  const n = stiff.size
  const heights = rows.flatMap(({ leg, value }) => (leg === null ? [] : [value]))
  // About the middle of what was read: the little that is taken as known pulls at nothing.
  const middle = heights.length > 0 ? heights.reduce((a, b) => a + b, 0) / heights.length : 0
  const prior = (i: number): number => 1 / (i === 0 ? ANYWHERE : ASKEW) ** 2
  const factor = choleskyOf(n, (i, k) =>
    rows.reduce((sum, { at, error }) => sum + (at[i]! * at[k]!) / error ** 2, i === k ? prior(i) : 0),
  )
  const right = Float64Array.from({ length: n }, (_, i) =>
    rows.reduce((sum, { at, value, error }) => sum + (at[i]! * (value - middle * at[0]!)) / error ** 2, 0),
  )
  const to = solved(factor, right)
  to[0] = to[0]! + middle
  const sumAt = (at: readonly number[]): number => at.reduce((sum, share, i) => sum + share * to[i]!, 0)
  const at = (leg: PlacedLeg): number[] => stiff.at(leg.section, leg.x, leg.y)
  // Against those that were read; with a bubble alone against the standing section.
  const read = new Set(rows.map(({ leg }) => leg))
  const known = legs.filter(({ id, section }) =>
    heights.length > 0 ? read.has(id) : section === stiff.sections[0],
  )
  const all = known.map(at)
  const mean = Array.from({ length: n }, (_, i) => all.reduce((sum, one) => sum + one[i]!, 0) / all.length)
  const errorAt = (leg: PlacedLeg): number =>
    Math.hypot(
      ...forward(
        factor,
        Float64Array.from(at(leg), (share, i) => share - mean[i]!),
      ),
    )
  const missed = rows.flatMap(({ at: shares, value, error, leg }) =>
    leg === null ? [] : [{ leg, over: Math.abs(value - sumAt(shares)) - 3 * error }],
  )
  const over = missed.reduce((most, one) => Math.max(most, one.over), 0)
  const heightAt = (leg: PlacedLeg): number => sumAt(at(leg))
  return {
    sumAt,
    heightAt,
    heightOf: (id) => {
      const leg = byId.get(id)
      return leg ? heightAt(leg) : null
    },
    errorAt,
    error: legs.reduce((most, leg) => Math.max(most, errorAt(leg)), 0),
    noise: rows.reduce((most, row) => (row.leg === null ? most : Math.max(most, row.error)), 0),
    read: new Map(rows.flatMap(({ leg, value }) => (leg === null ? [] : [[leg, value] as const]))),
    worst: { over, legs: missed.filter((one) => one.over > 0.9 * over).map(({ leg }) => leg) },
  }
}

const readingRows = (
  { readings }: LevelReadings,
  legs: ReadonlyMap<string, PlacedLeg>,
  stiff: Stiff,
): Row[] =>
  readings.flatMap(({ leg: id, down }) => {
    const leg = legs.get(id)
    if (!leg) return []
    const { at: value, error } = readingOf(down, RULE)
    return [{ at: stiff.at(leg.section, leg.x, leg.y), value, error, leg: id }]
  })

const bubbleRows = ({ bubbles = [] }: LevelReadings, stiff: Stiff): Row[] =>
  bubbles.flatMap(({ section: id, along, fall, over }) => {
    const section = stiff.sections.find((one) => one.id === id)
    if (!section) return []
    const { x, y, c, s } = section
    const [dx, dy] = along === 'length' ? [c, s] : [-s, c]
    const here = stiff.at(section, x, y)
    const there = stiff.at(section, x + over * dx, y + over * dy)
    return [{ at: there.map((value, i) => value - here[i]!), value: -fall, error: BUBBLE, leg: null }]
  })
