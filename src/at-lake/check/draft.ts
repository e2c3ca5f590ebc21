/** What was read for the level check so far, as it is kept while it goes on; and the readings that follow from it. */
import type { LevelReading, LevelReadings } from '../../../rules/at-lake/index.ts'
import { NOTHING, type Typed, typedFrom } from '../fields.tsx'
import type { Begun } from '../lake.ts'

/** Which way the deck falls along an edge that a level was laid on. */
export interface Bubble {
  readonly section: string
  readonly along: 'length' | 'width'
  /** Toward the lake, or to the left as you look at it, it is lower. */
  readonly lower: boolean
  readonly gap: Typed
  /** Length of the level. */
  readonly over: Typed
}

/** At a leg: once, or of waves the longest and the shortest way down. */
export interface Reading {
  readonly leg: string
  readonly high: Typed
  readonly low: Typed
}

export interface Draft {
  readonly by: 'water' | 'bubble'
  readonly waves: boolean
  /** The leg that is asked for. */
  readonly at: number
  readonly readings: readonly Reading[]
  readonly bubbles: readonly Bubble[]
  readonly hanging: readonly string[]
  /** Legs were moved since: it is read once more. */
  readonly after: boolean
}

const list = (kept: unknown): readonly unknown[] => (Array.isArray(kept) ? kept : [])

export function draftFrom(kept: unknown): Draft {
  const was = (kept ?? {}) as { readonly [K in keyof Draft]?: unknown }
  return {
    by: was.by === 'bubble' ? 'bubble' : 'water',
    waves: was.waves === true,
    at: Number.isInteger(was.at) ? Number(was.at) : 0,
    readings: list(was.readings).flatMap((one): Reading[] => {
      const { leg, high, low } = (one ?? {}) as Partial<Reading>
      return typeof leg === 'string' ? [{ leg, high: typedFrom(high), low: typedFrom(low) }] : []
    }),
    bubbles: list(was.bubbles).flatMap((one): Bubble[] => {
      const { section, along, lower, gap, over } = (one ?? {}) as Partial<Bubble>
      return typeof section === 'string' && (along === 'length' || along === 'width')
        ? [{ section, along, lower: lower === true, gap: typedFrom(gap), over: typedFrom(over) }]
        : []
    }),
    after: was.after === true,
    hanging: list(was.hanging).filter((id): id is string => typeof id === 'string'),
  }
}

export const readingAt = (draft: Draft, leg: string): Reading =>
  draft.readings.find((one) => one.leg === leg) ?? { leg, high: NOTHING, low: NOTHING }

export const withReading = (draft: Draft, reading: Reading): readonly Reading[] => [
  ...draft.readings.filter(({ leg }) => leg !== reading.leg),
  reading,
]

/** m; null: not told yet. Of waves both are needed. */
export const isRead = ({ high, low }: Reading, waves: boolean): boolean =>
  high.value !== null && (!waves || low.value !== null)

export function readingsOf(draft: Draft, { state, day }: Pick<Begun, 'state' | 'day'>): LevelReadings {
  const { waves, hanging } = draft
  const stands = new Set(state.legs.filter(({ set }) => set).map(({ leg }) => leg.section))
  // Sections without legs of their own hang on those that have.
  const inWater = day?.stations.filter(({ section, legs }) => legs.length === 0 || stands.has(section))
  return {
    readings:
      draft.by === 'bubble'
        ? []
        : draft.readings.flatMap(({ leg, high, low }): LevelReading[] => {
            if (high.value === null) return []
            if (!waves || low.value === null) return waves ? [] : [{ leg, down: high.value }]
            return [{ leg, down: { high: high.value, low: low.value } }]
          }),
    bubbles:
      draft.by === 'bubble'
        ? draft.bubbles.flatMap(({ section, along, lower, gap, over }) =>
            gap.value !== null && over.value !== null && over.value > 0
              ? [{ section, along, fall: (lower ? 1 : -1) * gap.value, over: over.value }]
              : [],
          )
        : [],
    hanging: [...hanging],
    ...(inWater ? { inWater: inWater.map(({ section }) => section) } : {}),
  }
}
