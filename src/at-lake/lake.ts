/** What every screen of the day at the lake is given: the dock, what is written down of it, what follows for today, and the way to another screen. */
import { createContext, useContext } from 'react'
import type { Day, LegAt, LegsAtHand, Mark } from '../../rules/at-lake/index.ts'
import type { Project } from '../../rules/index.ts'
import type { Said, SeasonRecord, SeasonState } from '../../rules/record/index.ts'
import type { RecordKeeper, Records } from '../record-keeping/index.ts'
import { useWords, type Words } from '../ui/use-words.ts'
import { WATERSIDE, type WatersideWord } from '../words/waterside.ts'

/** Where somebody is. Kept with the record, so that a page that was loaded again is the one that was left. */
export type Page =
  | { readonly at: 'home' | 'wear' | 'shop' | 'share' | 'heights' | 'call' }
  /** `of`: the season, where it is not the one in hand. */
  | { readonly at: 'next'; readonly of?: string }
  /** `from`: the stage of setting up that it was opened from, and goes back to. */
  | { readonly at: 'check' | 'legs'; readonly from?: number }
  | { readonly at: 'set-up' | 'out'; readonly stage: number; readonly from?: number }

/** A dock of which there is a record. */
export interface Begun {
  readonly keeper: RecordKeeper
  readonly record: SeasonRecord
  readonly season: string
  readonly state: SeasonState
  /** Of the season before that, in which it stood last. */
  readonly last: SeasonState | null
  /** Null: a dock of which there is no plan. */
  readonly project: Project | null
  /** As far as the level is told, or taken to be that of the survey day. Null without a plan. */
  readonly day: Day | null
  readonly page: Page
  readonly atHand: readonly LegsAtHand[] | null
  setAtHand(legs: readonly LegsAtHand[]): void
  add(said: Said): void
  go(page: Page): void
  setSeason(season: string): void
  /** Somebody asked, on the page that plans, to go on with setting up: true once. */
  goesOn(): boolean
}

export interface Lake {
  readonly records: Records
  /** Of another dock, or none. */
  show(keeper: RecordKeeper | null): void
  /** To the page that plans the dock; null where there is none. */
  readonly leave: (() => void) | null
}

export const BegunContext = createContext<Begun | null>(null)
export const LakeContext = createContext<Lake | null>(null)

export function useBegun(): Begun {
  const begun = useContext(BegunContext)
  if (!begun) throw new Error('useBegun: no BegunContext above this component')
  return begun
}

export function useLake(): Lake {
  const lake = useContext(LakeContext)
  if (!lake) throw new Error('useLake: no LakeContext above this component')
  return lake
}

export const useSay = (): Words<WatersideWord> => useWords(WATERSIDE)

/** Where clamps go on a leg today: of its brace, and of its lengthwise one. */
export const marksOn = ({ leg, brace, along }: LegAt): readonly Mark[] =>
  [brace, along].flatMap((one) => (one?.marks ?? []).filter((mark) => mark.leg === leg))

export const legOf = (day: Day, leg: string): LegAt | undefined =>
  day.stations.flatMap(({ legs }) => legs).find((one) => one.leg === leg)

/** What each leg stands on by all that is known now, m over the survey's water. */
export const bedNow = (day: Day): ((leg: string) => number) => {
  const beds = new Map(
    day.stations.flatMap(({ legs }) =>
      legs.map(
        ({ leg, measured, expected }) => [leg, day.level - (measured?.depth ?? expected.depth)] as const,
      ),
    ),
  )
  return (leg) => beds.get(leg) ?? day.level
}

/** Opened from where one is, to come back there. */
export const aside = (at: 'check' | 'legs', page: Page): Page =>
  page.at === 'set-up' ? { at, from: page.stage } : { at }

/** The question how high the lake is: first of all, and again from wherever something is the matter. */
export const toLevel = (page: Page): Page =>
  page.at === 'set-up' && page.stage > 0
    ? { at: 'set-up', stage: 0, from: page.from ?? page.stage }
    : { at: 'set-up', stage: 0 }

/** Where it was opened from. */
export const cameFrom = (page: Page): Page =>
  'from' in page && page.from !== undefined ? { at: 'set-up', stage: page.from } : { at: 'home' }
