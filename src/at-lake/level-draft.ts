/** What was answered so far of how the lake stands, and the level that follows from it. */
import { stillWater } from '../../rules/at-lake/index.ts'
import { NOTHING, type Typed, typedFrom } from './fields.tsx'
import type { ShoreMark } from './marks.ts'

/** `last`: as it was when the dock was set last. `said`: so much over or under that, or the survey day where it was never set. */
export type Way = `mark-${number}` | 'last' | 'said' | 'survey' | 'later'

/** An entry but for where the deck goes. */
export interface LevelSaid {
  readonly kind: 'level'
  readonly level: number
  readonly from: 'mark' | 'stake' | 'leg' | 'said' | 'survey'
  /** That it was found from. */
  readonly leg?: string
  readonly mark?: string
  readonly down?: number
  readonly waves?: { high: number; low: number }
  readonly sd?: number
}

export interface Draft {
  readonly way: Way | null
  readonly typed: Typed
  /** The lowest reading of ten seconds; null: still water. */
  readonly low: Typed | null
  /** Null: not said yet. */
  readonly higher: boolean | null
}

const EMPTY: Draft = { way: null, typed: NOTHING, low: null, higher: null }

/** @param marks how many there are: one of them is the surest way, and offered first */
export function draftFrom(kept: unknown, marks: number): Draft {
  if (kept === undefined || kept === null) return { ...EMPTY, way: marks > 0 ? 'mark-0' : null }
  const { way, typed, low, higher } = kept as { readonly [K in keyof Draft]?: unknown }
  return {
    way: typeof way === 'string' && /^(mark-\d+|last|said|survey|later)$/.test(way) ? (way as Way) : null,
    typed: typedFrom(typed),
    low: low === null || low === undefined ? null : typedFrom(low),
    higher: typeof higher === 'boolean' ? higher : null,
  }
}

export interface LevelAsked {
  /** Chosen. */
  readonly mark: ShoreMark | undefined
  /** Level when the dock was set last, m; null: it never was, or nobody told. */
  readonly last: number | null
  /** Read besides, from a stake whose height over the water is not known: by that it is, next year. */
  readonly beside: { readonly name: string; readonly down: number } | null
}

/** What follows from what stands in the fields; null: not enough yet. */
export function levelOf(
  { way, typed, low, higher }: Draft,
  { mark, last, beside }: LevelAsked,
): LevelSaid | null {
  const read = beside ? { mark: beside.name, down: beside.down } : {}
  if (way === 'survey') return { kind: 'level', level: 0, from: 'survey', ...read }
  if (way === 'last') return last === null ? null : { kind: 'level', level: last, from: 'said', ...read }
  if (typed.value === null) return null
  if (way === 'said') {
    if (higher === null) return null
    const level = (last ?? 0) + (higher ? 1 : -1) * typed.value
    return { kind: 'level', level, from: 'said', ...read }
  }
  if (!mark || (low && low.value === null)) return null
  const waves = low && low.value !== null ? { high: typed.value, low: low.value } : null
  const { at, error } = waves ? stillWater(waves) : { at: typed.value, error: null }
  return {
    kind: 'level',
    level: mark.above - at,
    from: mark.by,
    mark: mark.name,
    down: at,
    ...(waves ? { waves } : {}),
    ...(error === null ? {} : { sd: error }),
  }
}
