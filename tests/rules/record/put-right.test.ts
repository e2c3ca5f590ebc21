/** A figure put right: what stood there stays in the record and holds no more, on whichever phone; all else stays as it was said that day. */
import { expect, it } from 'vitest'
import { nextYear, putRight, seasonState } from '../../../rules/record/index.ts'
import { begun, merged, phone, write } from '../../support/records.ts'

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
