/** Where nobody knew how the lake stands, the first leg that is measured tells; and where that depth is put right, so is the lake. */
import { useState } from 'react'
import { levelToday } from '../../rules/at-lake/index.ts'
import type { SeasonRecord, SeasonState } from '../../rules/record/index.ts'
import type { DeckSaid } from './deck-choices.ts'
import { typedFrom } from './fields.tsx'
import { type Begun, useBegun } from './lake.ts'
import type { LevelSaid } from './level-draft.ts'

/** Less than that is the same level, m. */
const SAME = 0.01

/** Id of the leg that the level was found from; null: from none. Earlier records have its number in the mark's place. */
export function legOfLevel(
  { level }: Pick<SeasonState, 'level'>,
  { legs }: Pick<SeasonRecord, 'legs'>,
): string | null {
  if (level?.from !== 'leg') return null
  return level.leg ?? legs.find(({ number }) => String(number) === level.mark)?.id ?? null
}

/** The stake was read too, so that next year knows how high it is over the water: kept until a level is written down. */
export const STAKE_DRAFT = 'stake'

/** The entry of a level that a depth tells, but for where the deck goes; null where the bed there is not known. */
export function levelByLeg(
  leg: string,
  depth: number,
  { project, record, keeper }: Pick<Begun, 'project' | 'record' | 'keeper'>,
): LevelSaid | null {
  const today = project && levelToday({ by: 'leg', leg, depth }, project)
  if (!today) return null
  const down = typedFrom(keeper.draft(STAKE_DRAFT)).value
  return {
    kind: 'level',
    level: today.level,
    from: 'leg',
    leg,
    sd: today.error,
    ...(record.stake && down !== null ? { mark: record.stake.name, down } : {}),
  }
}

export function useLevelOfLeg(leg: string) {
  const begun = useBegun()
  const { state, add, record } = begun
  const [found, setFound] = useState<number | null>(null)
  /** The lake was found from this leg. */
  const own = legOfLevel(state, record) === leg
  return {
    own,
    found: state.level === null ? null : found,
    /** @returns the level that follows; null where it is known otherwise */
    find(depth: number): number | null {
      if (state.level !== null && !own) return null
      const entry = levelByLeg(leg, depth, begun)
      if (!entry) return null
      const was = state.level?.level ?? 0
      if (state.level && Math.abs(entry.level - was) < 0.001) return was
      const { keep, deck } = state.level ?? { keep: 'planned' as const, deck: undefined }
      add({ ...entry, keep, ...(deck === undefined ? {} : { deck }) })
      if (record.deckHeight !== null && Math.abs(entry.level - was) >= SAME) setFound(entry.level)
      return entry.level
    },
    take(deck: DeckSaid): void {
      if (state.level && (deck.keep !== state.level.keep || deck.deck !== state.level.deck)) {
        const { level, from, sd, mark, down } = state.level
        add({
          ...{ kind: 'level', level, from, leg, ...deck },
          ...(sd === undefined ? {} : { sd }),
          ...(mark === undefined ? {} : { mark }),
          ...(down === undefined ? {} : { down }),
        })
      }
      setFound(null)
    },
  }
}
