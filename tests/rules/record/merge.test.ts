/** Two phones, and three: whatever is put to whatever, in any order, nothing is lost and all say the same. */
import { isDeepStrictEqual } from 'node:util'
import { describe, expect, it } from 'vitest'
import {
  addEntry,
  beginOldDock,
  type Entry,
  entryFor,
  liveEntries,
  mergeRecords,
  parseRecord,
  RECORD_LIMITS,
  type Said,
  type SeasonRecord,
  sameDock,
  seasonState,
} from '../../../rules/record/index.ts'
import { begun, merged, type Phone, phone, taken, write } from '../../support/records.ts'
import { runs } from '../../support/runs.ts'

const BASE = beginOldDock(
  { pairs: 3, out: [1, 3, 5] },
  { id: 'rec-1', device: 'a', at: '2026-06-06T08:00:00Z' },
)

/** Mulberry32: small, and the same everywhere. */
function random(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

function anything(draw: () => number, { record }: Phone): Said {
  // So few that they meet.
  const leg = record.legs[Math.floor(draw() * 3)]!.id
  const some = Math.round(draw() * 20) / 10
  const ids = record.entries.map(({ id }) => id)
  const options: (() => Said)[] = [
    () => ({ kind: 'level', level: some - 1, from: 'said', keep: 'planned' }),
    () => ({ kind: 'set', leg, stock: null, height: 1 + some, level: 0, how: 'measured' }),
    () => ({ kind: 'set', leg, stock: null, height: 1 + some, level: 0, how: 'measured' }),
    () => ({ kind: 'sounding', leg, depth: some, level: 0, how: draw() < 0.5 ? 'measured' : 'as-planned' }),
    () => ({ kind: 'step', key: `in.${leg}`, done: draw() < 0.7 }),
    () => ({ kind: 'note', text: `n${some}` }),
    () => ({ kind: 'wear', part: 'leg', leg, what: 'bent', count: 1, order: true }),
    () => ({ kind: 'out', leg }),
    () => ({ kind: 'check', readings: [{ leg, down: some }], verdict: 'level' }),
  ]
  if (ids.length > 0) options.push(() => ({ kind: 'void', voids: [ids[Math.floor(draw() * ids.length)]!] }))
  return options[Math.floor(draw() * options.length)]!()
}

const texts = (entries: readonly Entry[]): string[] => entries.map((entry) => JSON.stringify(entry)).sort()

/** Three phones that write, and that give each other what they have, in any order; their clocks are years apart. */
function days(seed: number): { phones: Phone[]; written: Entry[] } {
  const draw = random(seed)
  const clocks = ['2026-06-06T09:00:00Z', '1970-01-01T00:00:00Z', '2026-06-06T07:00:00Z']
  const phones = clocks.map((at, i) => {
    const own = i === 2 && draw() < 0.3 ? { ...BASE, id: 'rec-2', made: { at, device: 'c' } } : BASE
    return phone(own, `p${i}`, at)
  })
  const written: Entry[] = []
  for (let k = 0; k < 3 + draw() * 25; k++) {
    const one = phones[Math.floor(draw() * 3)]!
    if (draw() < 0.25) {
      one.record = merged(one.record, phones[Math.floor(draw() * 3)]!.record)
      continue
    }
    const id = write(one, anything(draw, one), draw() < 0.2 ? '2027' : '2026')
    written.push(one.record.entries.find((entry) => entry.id === id)!)
  }
  return { phones, written }
}

describe('thousands of days with three phones', () => {
  it('commute, associate, are idempotent, lose no entry, and parse', () => {
    const told = { conflicts: 0, others: 0, voids: 0 }
    const all = runs(2000)
    for (let seed = 1; seed <= all; seed++) {
      const { phones, written } = days(seed)
      const [a, b, c] = phones.map(({ record }) => record) as [SeasonRecord, SeasonRecord, SeasonRecord]
      const ab = merged(a, b)
      const abc = merged(ab, c)
      const same = (other: SeasonRecord): void => {
        if (!isDeepStrictEqual(other, abc)) expect(other, `seed ${seed}`).toStrictEqual(abc)
      }
      if (!isDeepStrictEqual(ab, merged(b, a))) expect(ab, `seed ${seed}`).toStrictEqual(merged(b, a))
      same(merged(a, merged(b, c)))
      same(merged(merged(c, a), b))
      same(merged(c, merged(b, a)))
      same(merged(abc, abc))
      same(merged(abc, b))
      if (seed % 5 === 0) same(taken(parseRecord(JSON.parse(JSON.stringify(abc)))))
      if (!isDeepStrictEqual(texts(abc.entries), texts(written)))
        expect(texts(abc.entries), `seed ${seed}`).toEqual(texts(written))
      const state = seasonState(abc, '2026')
      if (!isDeepStrictEqual(state, seasonState(merged(c, merged(b, a)), '2026')))
        expect.fail(`seed ${seed}: two states`)
      told.conflicts += state.conflicts.length
      told.others += abc.others.length
      told.voids += abc.entries.length - liveEntries(abc.entries).length
    }
    // The hard cases came up.
    expect(told.conflicts).toBeGreaterThan(all / 8)
    expect(told.others).toBeGreaterThan(all / 10)
    expect(told.voids).toBeGreaterThan(all / 8)
  })
})

describe('two phones that set leg 3 otherwise', () => {
  const height = (height: number): Said =>
    ({
      ...{ kind: 'set', leg: 'pair-2.left', stock: null, height, level: 0, how: 'measured' },
    }) as Said
  const two = (first: number, second: number): [Phone, Phone] => {
    const a = phone(BASE, 'a')
    write(a, height(1))
    const b = phone(a.record, 'b')
    write(a, height(first))
    write(b, height(second))
    return [a, b]
  }

  it('are both told, until one that saw both says which holds', () => {
    const [a, b] = two(1.2, 1.4)
    const both = merged(a.record, b.record)
    const [conflict, ...more] = seasonState(both).conflicts
    expect(more).toEqual([])
    expect([conflict!.kind, conflict!.of]).toEqual(['set', 'pair-2.left'])
    expect(conflict!.entries.map((entry) => entry.kind === 'set' && entry.height)).toEqual([1.2, 1.4])
    // Phone a alone, which has not seen it, goes on: now three are told of one leg, two that stand.
    write(a, height(1.25))
    const still = seasonState(merged(a.record, b.record)).conflicts
    expect(still[0]!.entries.map((entry) => entry.kind === 'set' && entry.height)).toEqual([1.4, 1.25])
    b.record = merged(a.record, b.record)
    write(b, height(1.3))
    const end = seasonState(merged(a.record, b.record))
    expect(end.conflicts).toEqual([])
    expect(end.legs[2]!.set!.height).toBe(1.3)
  })

  it('the same to a millimeter say nothing against each other', () => {
    const [a, b] = two(1.2, 1.2009)
    expect(seasonState(merged(a.record, b.record)).conflicts).toEqual([])
    const [c, d] = two(1.2, 1.2011)
    expect(seasonState(merged(c.record, d.record)).conflicts).toHaveLength(1)
  })

  it('a level and a depth are the same to what can be read in the lake: a centimeter', () => {
    const conflicts = (said: (more: number) => Said, more: number): number => {
      const [a, b] = [phone(BASE, 'a'), phone(BASE, 'b')]
      write(a, said(0))
      write(b, said(more))
      return seasonState(merged(a.record, b.record)).conflicts.length
    }
    const level = (more: number): Said => ({ kind: 'level', level: more, from: 'said', keep: 'planned' })
    // Of the bottom: another water over the same bed is the same depth of it.
    const depth = (more: number): Said => ({
      ...({
        kind: 'sounding',
        leg: 'pair-1.left',
        depth: 1 + 2 * more,
        level: more,
        how: 'measured',
      } as const),
    })
    expect([conflicts(level, 0.009), conflicts(level, 0.011)]).toEqual([0, 1])
    expect([conflicts(depth, 0.009), conflicts(depth, 0.011)]).toEqual([0, 1])
  })

  it('one of them taken back, the other holds', () => {
    const [a, b] = two(1.2, 1.4)
    const both = phone(merged(a.record, b.record), 'c')
    const [first] = seasonState(both.record).conflicts[0]!.entries
    const gone = write(both, { kind: 'void', voids: [first!.id] })
    expect(seasonState(both.record)).toMatchObject({ conflicts: [] })
    expect(seasonState(both.record).legs[2]!.set!.height).toBe(1.4)
    // Taken back itself: it is told again.
    write(both, { kind: 'void', voids: [gone] })
    expect(seasonState(both.record).conflicts).toHaveLength(1)
  })

  it('a correction that is taken back leaves what it corrected', () => {
    const a = phone(BASE, 'a')
    write(a, height(1))
    const wrong = write(a, height(9))
    write(a, { kind: 'void', voids: [wrong] })
    expect(seasonState(a.record).legs[2]!.set!.height).toBe(1)
    write(a, height(1.1))
    expect(seasonState(a.record).conflicts).toEqual([])
  })

  it('a depth taken as planned is no claim against one that was measured', () => {
    const depth = (depth: number, how: 'measured' | 'as-planned'): Said =>
      ({
        ...{ kind: 'sounding', leg: 'pair-2.left', depth, level: 0, how },
      }) as Said
    const [a, b] = [phone(BASE, 'a'), phone(BASE, 'b')]
    write(a, depth(1.1, 'measured'))
    write(b, depth(1, 'as-planned'))
    const state = seasonState(merged(a.record, b.record))
    expect(state.conflicts).toEqual([])
    expect([state.legs[2]!.bed, state.legs[2]!.asPlanned]).toEqual([-1.1, false])
  })

  it('entries that claim to have seen each other hide nothing', () => {
    const [a, b] = two(1.2, 1.4)
    const both = merged(a.record, b.record)
    const [one, other] = both.entries.slice(1)
    const twisted = {
      ...both,
      entries: [
        { ...one!, saw: [other!.id] },
        { ...other!, saw: [one!.id] },
      ],
    }
    expect(seasonState(taken(parseRecord(twisted))).legs[2]!.set!.height).toBe(1.4)
  })
})

describe('what one record has and the other has not', () => {
  it('stays: two entries of one id, keys of a later version, how each was begun', () => {
    const a = phone(BASE, 'a')
    write(a, { kind: 'note', text: 'one' })
    const twin = { ...a.record.entries[0]!, text: 'two', later: { key: [1] } } as unknown as Entry
    const b = { ...BASE, color: 'gray', id: 'rec-9', entries: [twin] } as unknown as SeasonRecord
    const both = taken(parseRecord(merged(a.record, b)))
    expect(both.entries).toHaveLength(2)
    expect(JSON.stringify(both)).toContain('"later":{"key":[1]}')
    expect(both.others).toHaveLength(1)
    expect(JSON.stringify(both)).toContain('"color":"gray"')
    expect(merged(b, a.record)).toStrictEqual(merged(a.record, b))
  })

  it('goes by the beginning that has the design, whichever phone began first', () => {
    const whole = begun()
    const bare: SeasonRecord = { ...whole, design: null, made: { at: '2020-01-01T00:00:00Z', device: 'b' } }
    const both = merged(bare, whole)
    expect(both.design).not.toBeNull()
    expect(both.others.map(({ design }) => design)).toEqual([null])
    expect(sameDock(bare, whole)).toBe(true)
    expect(sameDock({ ...BASE, id: 'another' }, whole)).toBe(false)
  })

  it('is more than a record may hold: said so, and both stay as they are', () => {
    const entry = (device: string, i: number): Entry => ({
      ...{ kind: 'note', id: `${device}-${i}`, at: '2026-06-06T08:00:00Z', device, n: i + 1, season: '2026' },
      text: '',
    })
    const half = (device: string): SeasonRecord =>
      taken(
        parseRecord({
          ...BASE,
          entries: Array.from({ length: RECORD_LIMITS.entries / 2 + 1 }, (_, i) => entry(device, i)),
        }),
      )
    const [a, b] = [half('a'), half('b')]
    const before = JSON.stringify([a, b])
    const refused = mergeRecords(a, b)
    expect(refused).toEqual(mergeRecords(b, a))
    expect(refused.ok ? [] : refused.issues[0]).toMatchObject({
      path: 'entries',
      message: `${RECORD_LIMITS.entries + 2} entries; expected at most ${RECORD_LIMITS.entries}`,
    })
    expect(JSON.stringify([a, b])).toBe(before)
  })

  it('is heavier than a file may be: the same, before it is written', () => {
    const heavy = (device: string): SeasonRecord => {
      const on = phone(BASE, device)
      for (let i = 0; i < 120; i++) write(on, { kind: 'note', text: `${device}${'x'.repeat(19_000)}` })
      return on.record
    }
    const [a, b] = [heavy('a'), heavy('b')]
    const refused = mergeRecords(a, b)
    expect(refused.ok).toBe(false)
    expect(refused.ok ? '' : refused.issues[0]!.message).toMatch(/characters; expected at most/)
  })
})

describe('an entry', () => {
  it('that a record would not be read with again is refused, with its place', () => {
    const wrong = entryFor(
      BASE,
      { kind: 'set', leg: 'pair-1.left', stock: null, height: 5000, level: 0, how: 'measured' },
      {
        ...{ id: 'x', device: 'a', at: '2026-06-06T08:00:00Z' },
      },
    )
    const refused = addEntry(BASE, wrong)
    expect(refused.ok ? '' : refused.issues[0]!.message).toBe('5000; expected at most 300')
    const no = addEntry(BASE, { ...wrong, at: 'yesterday' })
    expect(no.ok).toBe(false)
  })

  it('is one more than the greatest that the record has', () => {
    const a = phone(BASE, 'a')
    write(a, { kind: 'note', text: '1' })
    const b = phone(a.record, 'b', '1970-01-01T00:00:00Z')
    for (let i = 0; i < 4; i++) write(b, { kind: 'note', text: `b${i}` })
    a.record = merged(a.record, b.record)
    write(a, { kind: 'note', text: 'last' })
    expect(a.record.entries.map(({ n }) => n)).toEqual([1, 2, 3, 4, 5, 6])
    expect(a.record.entries.at(-1)).toMatchObject({ text: 'last' })
  })
})
