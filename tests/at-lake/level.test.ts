/** How the lake stands: what follows from each answer, what cannot be, and a reading that is put right. */
import { describe, expect, it } from 'vitest'
import { seasonState } from '../../rules/record/index.ts'
import { draftFrom, levelOf } from '../../src/at-lake/level-draft.ts'
import { legOfLevel } from '../../src/at-lake/level-of-leg.ts'
import { marksOf } from '../../src/at-lake/marks.ts'
import { mustBeWrong } from '../../src/at-lake/stops-at.ts'
import { begun, phone, write } from '../support/records.ts'

const typed = (value: number) => ({ text: `${value} m`, value })
const NONE = { mark: undefined, last: null, beside: null }

describe('what follows from an answer', () => {
  it('by how much is counted from the season in which it stood, where there is one', () => {
    const draft = { way: 'said', typed: typed(0.06), low: null, higher: true } as const
    expect(levelOf(draft, NONE)).toEqual({ kind: 'level', level: 0.06, from: 'said' })
    expect(levelOf(draft, { ...NONE, last: -0.1 })?.level).toBeCloseTo(-0.04, 9)
    expect(levelOf({ ...draft, higher: null }, NONE)).toBeNull()
    expect(levelOf({ ...draft, way: 'last' }, { ...NONE, last: -0.1 })?.level).toBe(-0.1)
  })

  it('a mark is taken first where there is one', () => {
    expect(draftFrom(null, 1).way).toBe('mark-0')
    expect(draftFrom(null, 0).way).toBeNull()
  })

  it('a stake of which nobody knew how high it is tells the level a year later', () => {
    const on = phone(begun(), 'phone-a')
    const said = levelOf(
      { way: 'said', typed: typed(0.1), low: null, higher: true },
      { ...NONE, beside: { name: 'Stake', down: 0.6 } },
    )
    expect(marksOf(on).map(({ name }) => name)).not.toContain('Stake')
    write(on, { ...said!, keep: 'planned' })
    // 0.10 m over the survey water, and 0.60 m from the stake down to that.
    expect(marksOf(on)).toContainEqual({ name: 'Stake', above: expect.closeTo(0.7, 9), by: 'mark' })
  })
})

describe('a level that cannot be', () => {
  const record = begun()
  const deck = record.deckHeight!

  it('is over the planned deck, and over all that the lake was planned for', () => {
    // 7 1/4 taken as feet.
    expect(mustBeWrong(7.25 * 0.3048, record)).toBe(true)
    expect(mustBeWrong(deck + 0.001, record)).toBe(true)
    expect(mustBeWrong(deck - 0.001, record)).toBe(false)
    expect(mustBeWrong(7.25 * 0.0254, record)).toBe(false)
  })

  it('a lake that was planned to rise so high is none', () => {
    const { design } = record
    if (!design) throw new Error('no design')
    const high = { ...design, site: { ...design.site, levels: { low: -0.3, high: deck + 0.2 } } }
    expect(mustBeWrong(deck + 0.1, { ...record, design: high })).toBe(false)
    expect(mustBeWrong(deck + 0.3, { ...record, design: high })).toBe(true)
  })
})

describe('a level that was wrong', () => {
  it('is put right for every depth read under it; the depths stay as they were taped', () => {
    const on = phone(begun(), 'phone-a')
    const [first, second] = on.record.legs
    write(on, { kind: 'level', level: 2.07, from: 'leg', leg: first!.id, keep: 'planned' })
    for (const leg of [first!, second!])
      write(on, { kind: 'sounding', leg: leg.id, depth: 0.2, level: 2.07, how: 'measured' })
    const wrong = seasonState(on.record)
    expect(legOfLevel(wrong, on.record)).toBe(first!.id)
    expect(wrong.legs[1]!.bed).toBeCloseTo(1.87, 6)
    write(on, { kind: 'level', level: 0.05, from: 'leg', leg: first!.id, keep: 'planned' })
    write(on, { kind: 'sounding', leg: first!.id, depth: 0.18, level: 0.05, how: 'measured' })
    const { legs } = seasonState(on.record)
    expect(legs[0]!.bed).toBeCloseTo(0.05 - 0.18, 6)
    expect(legs[1]!.bed).toBeCloseTo(0.05 - 0.2, 6)
    expect(legs[1]!.sounding!.depth).toBe(0.2)
  })

  it('of another day is of another water', () => {
    const on = phone(begun(), 'phone-a')
    const [leg] = on.record.legs
    write(on, { kind: 'level', level: 0.1, from: 'said', keep: 'planned' })
    write(on, { kind: 'sounding', leg: leg!.id, depth: 0.2, level: 0.1, how: 'measured' })
    const later = {
      ...on.record.entries.at(-2)!,
      id: 'level-later',
      n: 99,
      level: -0.2,
      at: '2026-09-30T12:00:00.000Z',
    }
    const record = { ...on.record, entries: [...on.record.entries, later] }
    expect(seasonState(record).level!.level).toBe(-0.2)
    expect(seasonState(record).legs[0]!.bed).toBeCloseTo(-0.1, 6)
  })

  it('is told by the number of its leg in earlier records', () => {
    const on = phone(begun(), 'phone-a')
    write(on, { kind: 'level', level: 0.1, from: 'leg', mark: '3', keep: 'planned' })
    expect(legOfLevel(seasonState(on.record), on.record)).toBe(on.record.legs[2]!.id)
  })
})
