/** Where the deck can go on a day: where it stood last year, where it was planned, or as high over today's water. What is the same is offered once. */
import { deckOf, type Keep } from '../../rules/record/index.ts'
import { meters } from '../words/index.ts'
import type { Begun, useSay } from './lake.ts'

/** As the level's entry says it. `deck`: its elevation, where `keep` does not tell it. */
export interface DeckSaid {
  readonly keep: Keep
  readonly deck?: number
}

export const DECK_KEYS = ['as-last', 'planned', 'over-water'] as const

export interface DeckChoice {
  readonly key: (typeof DECK_KEYS)[number]
  readonly said: DeckSaid
  /** Elevation, m. */
  readonly deck: number
}

/** Nearer than this two are the same, m. */
const SAME = 0.003

export function deckChoices({ record, last }: Pick<Begun, 'record' | 'last'>, level: number): DeckChoice[] {
  const planned = record.deckHeight
  const stood = last && deckOf(last)
  const water = last?.today?.level ?? null
  const choices: DeckChoice[] = []
  const offer = (key: DeckChoice['key'], deck: number, keep: Keep, told: boolean): void => {
    if (choices.some((one) => Math.abs(one.deck - deck) < SAME)) return
    choices.push({ key, deck, said: { keep, ...(told ? { deck } : {}) } })
  }
  // Of a dock without a plan heights count from where its deck stood first.
  const own = planned ?? 0
  if (stood !== null) offer('as-last', stood, 'planned', Math.abs(stood - own) >= SAME)
  if (planned !== null) offer('planned', planned, 'planned', false)
  else if (stood === null) offer('planned', 0, 'planned', false)
  if (planned !== null) offer('over-water', level + planned, 'over-water', false)
  else if (stood !== null && water !== null) offer('over-water', level + stood - water, 'over-water', true)
  // A deck under today's water is none.
  return planned === null ? choices : choices.filter(({ deck }) => deck > level)
}

/** A foot stays where it stood: its leg is longer by as much as the deck goes up. */
function eachLeg(by: number, t: ReturnType<typeof useSay>['t']): string {
  if (Math.abs(by) < SAME) return t('keep.each-same')
  return t(by > 0 ? 'keep.each-longer' : 'keep.each-shorter', { by: meters(Math.abs(by)) })
}

/** What a choice is called, and what follows from it. */
export function choiceText(
  { key, deck }: DeckChoice,
  level: number,
  { record, last }: Pick<Begun, 'record' | 'last'>,
  { t }: ReturnType<typeof useSay>,
): { readonly label: string; readonly more?: string } {
  const planned = record.deckHeight
  if (planned === null) {
    const label = t(key === 'over-water' ? 'keep.old-water' : 'keep.as-last')
    const stood = last && deckOf(last)
    return stood === null ? { label } : { label, more: eachLeg(deck - stood, t) }
  }
  if (key !== 'over-water')
    return {
      label: t(key === 'as-last' ? 'keep.as-last' : 'keep.planned'),
      more: t('keep.planned-more', { over: meters(deck - level) }),
    }
  return {
    label: t('keep.over-water', { over: meters(planned) }),
    more: t(deck > planned ? 'keep.up' : 'keep.down', { by: meters(Math.abs(deck - planned)) }),
  }
}
