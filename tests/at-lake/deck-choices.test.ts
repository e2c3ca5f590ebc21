/** Where the deck can go in spring: three different docks, by hand. */
import { expect, it } from 'vitest'
import { beginOldDock, nextYear, type SeasonRecord, seasonState } from '../../rules/record/index.ts'
import { choiceText, deckChoices } from '../../src/at-lake/deck-choices.ts'
import { begun, phone, write } from '../support/records.ts'

/** Of the demo, over the survey water. */
const PLANNED = begun().deckHeight!

const choicesIn = (record: SeasonRecord, level: number) =>
  deckChoices({ record, last: seasonState(record, '2026') }, level)

it('last year the deck went with the water: where it stood, where it was planned, over today’s water', () => {
  const a = phone(begun(), 'phone-a')
  write(a, { kind: 'level', level: 0.2, from: 'said', keep: 'over-water' })
  expect(choicesIn(a.record, -0.1)).toEqual([
    { key: 'as-last', deck: PLANNED + 0.2, said: { keep: 'planned', deck: PLANNED + 0.2 } },
    { key: 'planned', deck: PLANNED, said: { keep: 'planned' } },
    { key: 'over-water', deck: PLANNED - 0.1, said: { keep: 'over-water' } },
  ])
})

it('where it stood as planned that is one choice; with the water as it was there is nothing to choose', () => {
  const a = phone(begun(), 'phone-a')
  write(a, { kind: 'level', level: 0.2, from: 'said', keep: 'planned' })
  expect(choicesIn(a.record, 0.1).map(({ key, said }) => [key, said])).toEqual([
    ['as-last', { keep: 'planned' }],
    ['over-water', { keep: 'over-water' }],
  ])
  expect(choicesIn(a.record, 0)).toHaveLength(1)
  // In the first year nobody knows of a last one.
  expect(deckChoices({ record: a.record, last: null }, 0.1).map(({ key }) => key)).toEqual([
    'planned',
    'over-water',
  ])
})

it('a dock without a plan: as it stood moves no leg; as high over the water moves each by what the water did', () => {
  const a = phone(
    beginOldDock({ pairs: 1 }, { id: 'old', device: 'phone-a', at: '2026-06-06T08:00:00Z' }),
    'phone-a',
  )
  write(a, { kind: 'level', level: 0.1, from: 'said', keep: 'planned' })
  for (const { id } of a.record.legs)
    write(a, { kind: 'set', leg: id, stock: null, height: 1.5, level: 0.1, how: 'measured' })
  const choices = choicesIn(a.record, 0.35)
  const legs = choices.map(({ key, deck }) => [
    key,
    nextYear(a.record, { level: 0.35, deck }).legs.map(({ by }) => by),
  ])
  expect(legs).toEqual([
    ['as-last', [0, 0]],
    ['over-water', [0.25, 0.25]],
  ])
  // What is chosen says what it does to a leg, for there is no plan to compare with: the lake rose 0.35 - 0.1.
  const last = seasonState(a.record, '2026')
  const told = choices.map((choice) => {
    const { label, more } = choiceText(choice, 0.35, { record: a.record, last }, keys)
    return [label, more]
  })
  expect(told).toEqual([
    ['keep.as-last', 'keep.each-same'],
    ['keep.old-water', 'keep.each-longer 0.25 m'],
  ])
})

/** Words by their keys, lengths in meters. */
const keys = {
  t: (key: string, { by }: { by?: { value: number } } = {}) =>
    by === undefined ? key : `${key} ${by.value.toFixed(2)} m`,
} as unknown as Parameters<typeof choiceText>[3]
