/** A figure put right: what stood there stays in the record and holds no more, on whichever phone; all else stays as it was said that day. */
import { expect, it } from 'vitest'
import { nextYear, putLevelRight, putRight, seasonState } from '../../../rules/record/index.ts'
import { begun, merged, type Phone, phone, write } from '../../support/records.ts'

/** Leg 5 set in water 0.1 m under the survey's, the deck where it stood last, 0.5 m over the survey water; its bottom measured 0.6 m deep. */
function set() {
  const on = phone(begun(), 'phone-a')
  const leg = on.record.legs[4]!.id
  write(on, { kind: 'level', level: -0.1, from: 'said', keep: 'planned', deck: 0.5 }, '2026')
  write(on, { kind: 'sounding', leg, depth: 0.6, level: -0.1, how: 'measured' }, '2026')
  const braces = [{ code: 'brace-42', end: 'low' as const, up: 0.2 }]
  write(
    on,
    {
      ...{ kind: 'set', leg, stock: 'leg-5', length: 1.524, height: 1.02, frame: 0.9946, depth: 0.6 },
      ...{ level: -0.1, keep: 'planned', deck: 0.5, braces, how: 'by-check', by: 'Ann' },
    },
    '2026',
  )
  const own = () => seasonState(on.record, '2026').legs.find((one) => one.leg.id === leg)!
  const right = (to: Parameters<typeof putRight>[3]) => {
    for (const said of putRight(on.record, own(), seasonState(on.record, '2026'), to)) write(on, said, '2026')
  }
  return { on, leg, own, right }
}

it('a height: it was 1.20, not 1.02', () => {
  const { on, own, right } = set()
  const { rise, entries } = on.record
  expect(own().foot).toBeCloseTo(0.5 - 1.02, 6)
  right({ height: 1.2 })
  expect(own().set).toMatchObject({
    ...{
      height: 1.2,
      frame: expect.closeTo(1.2 - rise!, 6),
      stock: 'leg-5',
      length: 1.524,
      level: -0.1,
      deck: 0.5,
    },
    ...{ how: 'by-check', braces: [{ up: 0.2 }] },
  })
  // The foot hangs on the deck of that day, which is not the planned one.
  expect(own().foot).toBeCloseTo(0.5 - 1.2, 6)
  // What was there is there, and no two phones are taken to differ.
  expect(on.record.entries.slice(0, entries.length)).toEqual(entries)
  expect(on.record.entries).toHaveLength(entries.length + 1)
  expect(seasonState(on.record, '2026').conflicts).toEqual([])
  // A deck 0.3 over the survey water next year: 0.7 under it the foot stands, so 1.0 m.
  const next = nextYear(on.record, { level: 0, deck: 0.3, season: '2027' }).legs[4]!
  expect([next.height, next.by]).toEqual([expect.closeTo(1, 6), expect.closeTo(-0.2, 6)])
})

it('a depth: it was 0.75, not 0.60, in the water as it is known by now', () => {
  const { on, own, right } = set()
  expect(own().bed).toBeCloseTo(-0.1 - 0.6, 6)
  // The water that day was 0.04 lower than first told.
  write(on, { kind: 'level', level: -0.14, from: 'said', keep: 'planned', deck: 0.5 }, '2026')
  expect(own().bed).toBeCloseTo(-0.14 - 0.6, 6)
  right({ depth: 0.75 })
  expect(own().sounding).toMatchObject({ depth: 0.75, how: 'measured' })
  expect(own().bed).toBeCloseTo(-0.14 - 0.75, 6)
  // The height is another figure.
  expect(own().set?.height).toBe(1.02)
  expect(seasonState(on.record, '2026').conflicts).toEqual([])
})

it('holds on the other phone too, put together in either order; what that wrote meanwhile without knowing is told', () => {
  const { on, leg, own, right } = set()
  const before = on.record
  right({ height: 1.2 })
  for (const both of [merged(before, on.record), merged(on.record, before)]) {
    expect(seasonState(both, '2026').legs[4]!.set?.height).toBe(1.2)
    expect(seasonState(both, '2026').conflicts).toEqual([])
  }
  const other = phone(before, 'phone-b')
  const was = own().set!
  write(other, { kind: 'set', leg, stock: was.stock, height: 1.1, level: -0.1, how: 'measured' }, '2026')
  const told = seasonState(merged(other.record, on.record), '2026').conflicts
  expect(told.map(({ kind, of }) => [kind, of])).toEqual([['set', leg]])
})

it('of a leg that nobody set, and of a dock without a frame’s height', () => {
  const on = phone({ ...begun(), rise: null }, 'phone-a')
  const [own] = seasonState(on.record, '2026').legs
  const [said, ...more] = putRight(on.record, own!, seasonState(on.record, '2026'), {
    height: 0.9,
    depth: 0.4,
  })
  // Nobody sounded it: there is no depth to put right.
  expect(more).toEqual([])
  expect(said).toEqual({
    ...{ kind: 'set', leg: own!.leg.id, stock: own!.leg.planned!.stock, height: 0.9 },
    ...{ level: null, how: 'measured' },
  })
})

/** The lake stood elsewhere in 2026 than was told. */
function rightLevel(on: Phone, level: number): void {
  for (const said of putLevelRight(seasonState(on.record, '2026'), level)) write(on, said, '2026')
}
const inNext = ({ record }: Phone, asked: Omit<Parameters<typeof nextYear>[1], 'season'>) => {
  const { keep, deck, legs } = nextYear(record, { ...asked, season: '2027' })
  const { height, by, bed } = legs[4]!
  return { keep, deck, height, by, bed }
}
const about = (value: number) => expect.closeTo(value, 6)

it('the level of an earlier season: it was 0.25 under the survey water, not 0.10; legs and depths of that water go with it', () => {
  const { on, own } = set()
  const { entries } = on.record
  // Deck 0.5, sole 1.02 under it: -0.52. To a deck of 0.3 that is 0.82, 0.20 less.
  expect(inNext(on, { level: 0, deck: 0.3 })).toMatchObject({ height: about(0.82), by: about(-0.2) })
  // A year on nobody remembers it as the same day.
  on.now += 300 * 24 * 3600_000
  rightLevel(on, -0.25)
  // The deck stood 0.6 over the water: at -0.25 + 0.6. The sole 1.02 under that; the bottom 0.6 under the water.
  const { today, level, conflicts } = seasonState(on.record, '2026')
  expect(today).toEqual({ level: -0.25, keep: 'planned', deck: about(0.35) })
  expect(level).toMatchObject({ from: 'said' })
  expect(own()).toMatchObject({ deck: about(0.35), foot: about(-0.67), bed: about(-0.85) })
  // All else as it was said that day.
  expect(own().set).toMatchObject({
    height: 1.02,
    stock: 'leg-5',
    how: 'by-check',
    by: 'Ann',
    keep: 'planned',
  })
  expect(own().sounding).toMatchObject({ depth: 0.6, how: 'measured' })
  expect(conflicts).toEqual([])
  expect(on.record.entries.slice(0, entries.length)).toEqual(entries)
  expect(on.record.entries.slice(entries.length).map(({ kind }) => kind)).toEqual([
    'level',
    'sounding',
    'set',
  ])
  // 0.3 + 0.67 next year, 0.05 less than it stood; with the deck where it stood nothing changes, whatever the water.
  expect(inNext(on, { level: 0, deck: 0.3 })).toMatchObject({ height: about(0.97), by: about(-0.05) })
  expect(inNext(on, { level: 0.4 })).toMatchObject({ keep: 'as-last', deck: about(0.35), by: about(0) })
  // 0.7 deep in the survey water by then: the bottom came up by 0.15, which nobody would have seen.
  const leg = on.record.legs[4]!.id
  write(on, { kind: 'sounding', leg, depth: 0.7, level: 0, how: 'measured' }, '2027')
  const next = nextYear(on.record, { level: 0, deck: 0.3, season: '2027' }).legs[4]!
  expect(next).toMatchObject({ bed: about(-0.7), change: { since: '2026', by: about(0.15) } })
  // Put right once more, and back: the last holds.
  rightLevel(on, -0.1)
  expect(own()).toMatchObject({ deck: about(0.5), foot: about(-0.52), bed: about(-0.7) })
})

it('the level of a dock at its planned height, and of one that follows the water; of a leg that says no water', () => {
  const told = (keep: 'planned' | 'over-water', level: number | null) => {
    const on = phone(begun(), 'phone-a')
    write(on, { kind: 'level', level: -0.1, from: 'mark', mark: 'rock', down: 0.4, keep }, '2026')
    const leg = on.record.legs[4]!.id
    write(on, { kind: 'set', leg, stock: null, height: 1, level, keep, how: 'measured' }, '2026')
    return on
  }
  const planned = begun().deckHeight!
  for (const level of [-0.1, null]) {
    const on = told('planned', level)
    rightLevel(on, -0.02)
    // 0.08 higher than planned, and so is the sole: to the planned deck the leg is 0.08 shorter.
    expect(seasonState(on.record, '2026').today!.deck).toBeCloseTo(planned + 0.08, 6)
    expect(seasonState(on.record, '2026').level).not.toHaveProperty('down')
    expect(inNext(on, { level: 0, keep: 'planned' })).toMatchObject({ height: about(0.92), by: about(-0.08) })
    expect(inNext(on, { level: 0 })).toMatchObject({ keep: 'as-last', height: about(1), by: about(0) })
    const along = told('over-water', level)
    rightLevel(along, -0.3)
    // 0.2 lower than told: from there up to the survey water it is 0.3, not 0.1.
    expect(seasonState(along.record, '2026').level).not.toHaveProperty('deck')
    expect(inNext(along, { level: 0 })).toMatchObject({
      keep: 'over-water',
      height: about(1.3),
      by: about(0.3),
    })
  }
})

it('the level of one day is not that of another in the same season; where none was told there is none to put right', () => {
  const { on, own } = set()
  expect(putLevelRight(seasonState(on.record, '2025'), 0)).toEqual([])
  const other = on.record.legs[5]!.id
  on.now += 48 * 3600_000
  write(on, { kind: 'level', level: -0.02, from: 'said', keep: 'planned', deck: 0.5 }, '2026')
  const set6 = { kind: 'set', leg: other, stock: null, height: 1.1, level: -0.02, deck: 0.5 } as const
  write(on, { ...set6, keep: 'planned', how: 'measured' }, '2026')
  rightLevel(on, -0.05)
  expect(own()).toMatchObject({ foot: about(-0.52), bed: about(-0.7) })
  expect(own().set!.level).toBe(-0.1)
  // 0.03 lower: 0.47 less 1.1.
  expect(seasonState(on.record, '2026').legs[5]).toMatchObject({ foot: about(-0.63) })
})

it('a level put right holds on the other phone too; a leg that that one set meanwhile is asked about', () => {
  const { on, leg } = set()
  const before = on.record
  rightLevel(on, -0.25)
  for (const both of [merged(before, on.record), merged(on.record, before)]) {
    expect(seasonState(both, '2026').today!.deck).toBeCloseTo(0.35, 6)
    expect(seasonState(both, '2026').conflicts).toEqual([])
  }
  const other = phone(before, 'phone-b')
  write(other, { kind: 'set', leg, stock: 'leg-5', height: 1.1, level: -0.1, how: 'measured' }, '2026')
  const told = seasonState(merged(other.record, on.record), '2026').conflicts
  expect(told.map(({ kind, of }) => [kind, of])).toEqual([['set', leg]])
})
