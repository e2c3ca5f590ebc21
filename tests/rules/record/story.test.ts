/** A season's story, worked by hand: set in June, 60 mm washed out under one foot, the lake 180 mm lower next May. */
import { beforeAll, describe, expect, it } from 'vitest'
import { demoCatalog } from '../../../rules/index.ts'
import {
  beginOldDock,
  isWork,
  type NextYear,
  nextYear,
  orderedKey,
  parseRecord,
  reorder,
  type SeasonRecord,
  seasonFor,
  seasonState,
  takeOut,
} from '../../../rules/record/index.ts'
import { begun, type Phone, phone, projectFor, taken, write } from '../../support/records.ts'

const LEG = 5
/** Deck of the demo over the survey water, m. */
const DECK = begun().deckHeight!

/** June 2026: the lake 40 mm over the survey day; at each leg the bed is 15 mm deeper than planned. All legs set to keep the planned deck. */
function june(): Phone {
  const a = phone(begun(), 'phone-a')
  write(a, { kind: 'level', level: 0.04, from: 'mark', mark: 'Iron pin', down: 1.2, keep: 'planned' })
  for (const leg of a.record.legs) {
    const bed = leg.planned!.bed - 0.015
    // Measured under today's water: 0.04 above the bed's own depth.
    write(a, { kind: 'sounding', leg: leg.id, depth: 0.04 - bed, level: 0.04, how: 'measured' })
    const { stock, length } = leg.planned!
    write(a, {
      kind: 'set',
      leg: leg.id,
      stock,
      length,
      height: DECK - bed,
      level: 0.04,
      keep: 'planned',
      how: 'measured',
    })
  }
  return a
}

const ofLeg = ({ legs }: NextYear, number: number) => legs.find(({ leg }) => leg.number === number)!

describe('June', () => {
  it('says how each leg stands: its foot where deck less set height is, the bed by its depth', () => {
    const { record } = june()
    const state = seasonState(record)
    expect(state.season).toBe('2026')
    expect(state.today).toEqual({ level: 0.04, keep: 'planned', deck: DECK })
    for (const { leg, foot, bed, set } of state.legs) {
      expect(bed).toBeCloseTo(leg.planned!.bed - 0.015, 6)
      expect(foot).toBeCloseTo(leg.planned!.bed - 0.015, 6)
      expect(set!.height).toBeCloseTo(leg.planned!.height + 0.015, 6)
    }
    expect(state.conflicts).toEqual([])
  })

  it('parses as it was written, without the design, catalog or engine that it began with', () => {
    const { record } = june()
    const alone = { ...record, design: null }
    expect(taken(parseRecord(JSON.parse(JSON.stringify(alone))))).toStrictEqual(alone)
    expect(seasonState(alone).legs.map(({ leg }) => leg.number)).toEqual(record.legs.map((_, i) => i + 1))
  })
})

describe('next May, the lake at -0.14 (180 mm lower)', () => {
  let record: SeasonRecord
  beforeAll(() => {
    const a = june()
    a.now = Date.parse('2027-05-08T09:00:00Z')
    record = a.record
  })

  it('before anything is measured: nothing to move where the deck keeps its height, all as much shorter as the water is under the survey day where it follows that', () => {
    const kept = nextYear(record, { level: -0.14, keep: 'planned' })
    expect([kept.season, kept.last]).toEqual(['2027', '2026'])
    expect([kept.levelBy, kept.deckBy]).toEqual([-0.18, 0])
    for (const leg of kept.legs) expect([leg.by, leg.basis]).toEqual([0, 'as-set'])
    // Over the water: the deck was at DECK (planned), and is at DECK - 0.14 now.
    const over = nextYear(record, { level: -0.14, keep: 'over-water' })
    for (const leg of over.legs) expect(leg.by).toBeCloseTo(-0.14, 6)
    expect(over.deckBy).toBeCloseTo(-0.14, 6)
  })

  it('the deck where it stood last year moves no leg, though it stood elsewhere than planned', () => {
    const a = phone(begun(), 'phone-a')
    // 200 mm over the survey's water, and the deck went with it.
    write(a, { kind: 'level', level: 0.2, from: 'said', keep: 'over-water' })
    for (const { id, planned } of a.record.legs)
      write(a, {
        ...{ kind: 'set', leg: id, stock: planned!.stock, height: DECK + 0.2 - planned!.bed },
        ...{ level: 0.2, keep: 'over-water', how: 'measured' },
      })
    const kept = nextYear(a.record, { level: -0.14, keep: 'as-last' })
    expect([kept.deck, kept.deckBy]).toEqual([DECK + 0.2, 0])
    for (const { by } of kept.legs) expect(by).toBe(0)
    // Back to the plan is another thing: each leg 200 mm shorter.
    const planned = nextYear(a.record, { level: -0.14, keep: 'planned' })
    for (const { by } of planned.legs) expect(by).toBeCloseTo(-0.2, 6)
    // Told so in the spring it stands so, and the year after goes by that.
    write(a, { kind: 'level', level: -0.14, from: 'said', keep: 'planned', deck: DECK + 0.2 }, '2027')
    const leg = a.record.legs[0]!
    write(
      a,
      {
        ...{ kind: 'set', leg: leg.id, stock: null, height: DECK + 0.2 - leg.planned!.bed },
        ...{ level: -0.14, how: 'measured' },
      },
      '2027',
    )
    const state = seasonState(a.record, '2027')
    expect(state.today!.deck).toBe(DECK + 0.2)
    expect(state.legs[0]!.foot).toBeCloseTo(leg.planned!.bed, 6)
    const later = nextYear(a.record, { level: 0.05 })
    expect([later.season, later.keep, later.legs[0]!.by]).toEqual(['2028', 'as-last', 0])
  })

  it('a dock without a plan stands again as it stood, whatever the water does', () => {
    const a = phone(
      beginOldDock({ pairs: 2 }, { id: 'old', device: 'phone-a', at: '2026-06-06T08:00:00Z' }),
      'phone-a',
    )
    write(a, { kind: 'level', level: 0.1, from: 'said', keep: 'over-water' })
    for (const [i, { id }] of a.record.legs.entries())
      write(a, { kind: 'set', leg: id, stock: null, height: 1 + i / 10, level: 0.1, how: 'measured' })
    const kept = nextYear(a.record, { level: -0.3, keep: 'as-last' })
    expect(kept.legs.map(({ by, height }) => [by, height])).toEqual([
      [0, 1],
      [0, 1.1],
      [0, 1.2],
      [0, 1.3],
    ])
  })

  it('measured: the leg whose bed washed out is set 60 mm longer, the others as they were', () => {
    const a = phone(record, 'phone-a', '2027-05-08T09:00:00Z')
    a.written = 1000
    write(a, { kind: 'level', level: -0.14, from: 'mark', mark: 'Iron pin', down: 1.38, keep: 'planned' })
    for (const { id, number, planned } of record.legs) {
      const bed = planned!.bed - 0.015 - (number === LEG ? 0.06 : 0)
      write(a, { kind: 'sounding', leg: id, depth: -0.14 - bed, level: -0.14, how: 'measured' })
    }
    const next = nextYear(a.record, { level: -0.14 })
    expect([next.season, next.keep]).toEqual(['2027', 'planned'])
    for (const leg of next.legs) {
      const washed = leg.leg.number === LEG
      expect(leg.by).toBeCloseTo(washed ? 0.06 : 0, 6)
      expect(leg.change!.since).toBe('2026')
      expect(leg.change!.by).toBeCloseTo(washed ? -0.06 : 0, 6)
      expect(leg.basis).toBe('measured')
      // Two seasons lie on a line whatever they are.
      expect(leg.trend).toBeNull()
      // Planned height, 15 mm of June, 60 mm of the scour.
      expect(leg.height).toBeCloseTo(leg.leg.planned!.height + 0.015 + (washed ? 0.06 : 0), 6)
      expect(leg.aboveDeck).toBeCloseTo(leg.leg.planned!.length! + leg.leg.planned!.sole - leg.height!, 6)
    }
  })

  it('with the deck following the water: 120 mm shorter at that leg where it stood over-water, 180 mm at the others', () => {
    const a = phone(begun(), 'phone-a')
    write(a, { kind: 'level', level: 0.04, from: 'said', keep: 'over-water' })
    for (const { id, planned } of a.record.legs)
      write(a, {
        kind: 'set',
        leg: id,
        stock: planned!.stock,
        height: DECK + 0.04 - planned!.bed,
        level: 0.04,
        how: 'measured',
      })
    write(a, { kind: 'level', level: -0.14, from: 'said', keep: 'over-water' }, '2027')
    const washed = a.record.legs[LEG - 1]!
    write(
      a,
      {
        kind: 'sounding',
        leg: washed.id,
        depth: -0.14 - (washed.planned!.bed - 0.06),
        level: -0.14,
        how: 'to-frame',
      },
      '2027',
    )
    const next = nextYear(a.record, { level: -0.14 })
    for (const leg of next.legs) expect(leg.by).toBeCloseTo(leg.leg.number === LEG ? -0.12 : -0.18, 6)
  })

  it('a leg that was set by hand says what is left of it, and which of the shop would do', () => {
    const a = june()
    // A leg so short that 60 mm more leave nothing: length + sole = set height.
    const leg = a.record.legs[LEG - 1]!
    const stood = ofLeg(nextYear(a.record, { level: 0 }), LEG).height!
    write(a, {
      kind: 'set',
      leg: leg.id,
      stock: 'cut',
      length: stood - leg.planned!.sole,
      height: stood,
      level: 0.04,
      how: 'measured',
    })
    const project = projectFor()
    const as = ofLeg(nextYear(a.record, { level: 0, project }), LEG)
    expect(as.aboveDeck).toBeCloseTo(0, 6)
    expect(as.enough).toBe('reserve')
    expect(as.needs!.length).toBeGreaterThanOrEqual(stood - leg.planned!.sole + leg.planned!.stay! - 1e-6)
    write(
      a,
      { kind: 'sounding', leg: leg.id, depth: -(leg.planned!.bed - 0.075), level: 0, how: 'measured' },
      '2027',
    )
    const now = ofLeg(nextYear(a.record, { level: 0, project, season: '2027' }), LEG)
    expect(now.aboveDeck).toBeCloseTo(-0.06, 6)
    expect(now.enough).toBe('no')
  })
})

describe('what is ordered again', () => {
  it('a brace is the one that was set at its leg; what is ordered, or was taken back, is not ordered again', () => {
    const a = june()
    const leg = a.record.legs[LEG - 1]!
    write(a, {
      ...{ kind: 'set', leg: leg.id, stock: leg.planned!.stock, height: 2, level: 0, how: 'measured' },
      braces: [{ code: demoCatalog.braces[1]!.code, end: 'low', up: 0.4 }],
    })
    const bent = write(a, { kind: 'wear', part: 'brace', leg: leg.id, what: 'bent', count: 1, order: true })
    const lost = write(a, { kind: 'wear', part: 'deck-clip', what: 'lost', count: 3, order: true })
    const codes = () =>
      reorder(a.record, demoCatalog).rows.map(({ kind, code, count }) => [kind, code, count])
    const brace = ['brace', demoCatalog.braces[1]!.code, 1]
    const clips = ['deck-clip', demoCatalog.decking.clip.code, 3]
    expect(codes()).toEqual([brace, clips])
    write(a, { kind: 'step', key: orderedKey(bent), done: true })
    expect(codes()).toEqual([clips])
    write(a, { kind: 'void', voids: [lost] })
    expect(codes()).toEqual([])
    // Nothing of the work at the dock is done by that.
    expect(seasonState(a.record).done.filter(isWork)).toEqual([])
  })
})

describe('over the years', () => {
  it('three seasons have a slope: 20 mm a year washed out, told with its error', () => {
    const a = phone(begun(), 'phone-a')
    const { id, planned } = a.record.legs[0]!
    for (const [season, lost] of [
      ['2026', 0],
      ['2027', 0.02],
      ['2028', 0.04],
    ] as const)
      write(
        a,
        { kind: 'sounding', leg: id, depth: -(planned!.bed - lost), level: 0, how: 'measured' },
        season,
      )
    const leg = nextYear(a.record, { level: 0, season: '2028' }).legs[0]!
    expect(leg.trend).toEqual({ by: 'bed', slope: -0.02, sd: 0, count: 3 })
    // 0, -20, -50: slope -25; each off the line by 5/3 and 10/3 mm: rest 3 · … = 16.67e-6, over 1 degree of freedom and sxx = 2.
    write(a, { kind: 'sounding', leg: id, depth: -(planned!.bed - 0.05), level: 0, how: 'measured' }, '2028')
    const off = nextYear(a.record, { level: 0, season: '2028' }).legs[0]!
    expect(off.trend!.slope).toBeCloseTo(-0.025, 6)
    expect(off.trend!.sd).toBeCloseTo(Math.sqrt((2 * (5e-3 / 3) ** 2 + (1e-2 / 3) ** 2) / 2), 6)
  })

  it('a depth that was taken as planned is counted nowhere as measured', () => {
    const a = phone(begun(), 'phone-a')
    const { id, planned } = a.record.legs[0]!
    for (const season of ['2026', '2027', '2028'])
      write(a, { kind: 'sounding', leg: id, depth: -planned!.bed, level: 0, how: 'as-planned' }, season)
    const state = seasonState(a.record)
    expect(state.legs[0]).toMatchObject({ sounding: null, bed: null, asPlanned: true })
    const leg = nextYear(a.record, { level: 0, season: '2028' }).legs[0]!
    expect([leg.basis, leg.trend, leg.change]).toEqual(['planned', null, null])
  })
})

describe('a dock of which nothing is known but its legs', () => {
  it('is moved by what its water and bed did since', () => {
    const old = beginOldDock(
      { pairs: 2, out: [1, 4] },
      { id: 'old', device: 'p', at: '2026-06-01T10:00:00Z' },
    )
    expect(old.legs.map(({ number, side, x }) => [number, side, x])).toEqual([
      [1, 'left', 1],
      [2, 'right', 1],
      [3, 'left', 4],
      [4, 'right', 4],
    ])
    const a = phone(taken(parseRecord(old)), 'p', '2026-06-01T10:00:00Z')
    write(a, { kind: 'level', level: 0, from: 'mark', down: 0.8, keep: 'over-water' })
    for (const { id } of old.legs)
      write(a, { kind: 'set', leg: id, stock: null, height: 1.1, level: 0, how: 'measured' })
    write(a, { kind: 'sounding', leg: 'pair-2.left', depth: 0.7, level: 0, how: 'measured' })
    // A year on: the water 100 mm lower, that bed 30 mm lower: 0.70 - 0.10 + 0.03.
    write(a, { kind: 'sounding', leg: 'pair-2.left', depth: 0.63, level: -0.1, how: 'measured' }, '2027')
    const next = nextYear(a.record, { level: -0.1, season: '2027' })
    expect(next.legs.map(({ by }) => by)).toEqual([-0.1, -0.1, -0.07, -0.1])
    expect(next.legs.map(({ height }) => height)).toEqual([1, 1, 1.03, 1])
    expect(
      nextYear(a.record, { level: -0.1, keep: 'planned', season: '2027' }).legs.map(({ by }) => by),
    ).toEqual([0, 0, 0.03, 0])
  })

  it('whose level nobody told keeps its deck, and says nothing of where it would follow the water', () => {
    const a = phone(beginOldDock({ pairs: 1 }, { id: 'old', device: 'p', at: '2026-06-01T10:00:00Z' }), 'p')
    for (const { id } of a.record.legs)
      write(a, { kind: 'set', leg: id, stock: null, height: 1.1, level: null, how: 'measured' })
    expect(nextYear(a.record, { level: 0.2, keep: 'planned' }).legs.map(({ by }) => by)).toEqual([0, 0])
    expect(nextYear(a.record, { level: 0.2, keep: 'over-water' }).legs.map(({ by }) => by)).toEqual([
      null,
      null,
    ])
  })
})

describe('autumn', () => {
  it('takes out the last section first, with masses and people, and knows what is out already', () => {
    const project = projectFor()
    const a = june()
    const before = takeOut(a.record, project)
    expect(before.sections.map(({ section }) => section)).toEqual([...project.dock.workOrder].reverse())
    for (const one of before.sections) {
      const { lift } = project.dock.sections.find(({ id }) => id === one.section)!
      expect(one.lift).toBe(lift)
      expect(one.each! * one.people!).toBeCloseTo(lift, 6)
    }
    expect(before.mass).toBeCloseTo(
      project.dock.sections.reduce((sum, { lift }) => sum + lift, 0),
      6,
    )
    expect(before.left).toBe(before.sections.length)
    expect(before.steps!.season).toBe('autumn')
    write(a, { kind: 'out', section: before.sections[0]!.section, stored: 'Shed' })
    const after = takeOut(a.record)
    expect(after.left).toBe(before.left - 1)
    expect(after.sections[0]!.out!.stored).toBe('Shed')
    expect(after.sections[0]!.legs.every(({ out }) => out?.stored === 'Shed')).toBe(true)
    write(a, { kind: 'out' })
    expect(takeOut(a.record).left).toBe(0)
  })

  it('what was noted as worn becomes a list for the shop: by part, with its price', () => {
    const a = june()
    const [one, two] = a.record.legs
    write(a, { kind: 'wear', part: 'leg', leg: one!.id, what: 'bent', count: 1, order: true })
    write(a, { kind: 'wear', part: 'leg', leg: one!.id, what: 'worn', count: 1, order: true })
    write(a, { kind: 'wear', part: 'deck-clip', what: 'lost', count: 3, order: true })
    write(a, { kind: 'wear', part: 'leg', leg: two!.id, what: 'worn', count: 1, order: false })
    const gone = write(a, { kind: 'wear', part: 'hinge-pin', what: 'lost', count: 9, order: true })
    write(a, { kind: 'void', voids: [gone] })
    const leg = demoCatalog.legs.find(({ code }) => code === one!.planned!.stock)!
    const { clip } = demoCatalog.decking
    const { rows, price } = reorder(a.record, demoCatalog)
    expect(rows.map(({ code, count, name, price }) => [code, count, name, price])).toEqual([
      [leg.code, 2, leg.name, 2 * leg.price],
      [clip.code, 3, clip.name, 3 * clip.price],
    ])
    expect(price).toBe(2 * leg.price + 3 * clip.price)
    // A kind of which the shop has several says so: nothing is guessed.
    write(a, { kind: 'wear', part: 'frame', what: 'cracked', count: 1, order: true })
    expect(reorder(a.record, demoCatalog).rows.at(-1)).toMatchObject({
      kind: 'frame',
      code: null,
      price: null,
    })
  })
})

describe('a wrong clock', () => {
  it('changes no order, and no season goes back', () => {
    const a = june()
    const id = a.record.legs[0]!.id
    // Set to 1970 and later to 2031: what was written last holds.
    a.now = Date.parse('1970-01-01T00:00:00Z')
    write(a, { kind: 'set', leg: id, stock: null, height: 1.5, level: 0.04, how: 'by-check' })
    expect(a.record.entries.at(-1)!.season).toBe('2026')
    expect(seasonState(a.record).legs[0]!.set!.height).toBe(1.5)
    expect(seasonFor(a.record, '1970-01-01T00:00:00Z')).toBe('2026')
    a.now = Date.parse('2031-01-01T00:00:00Z')
    write(a, { kind: 'set', leg: id, stock: null, height: 1.6, level: 0.04, how: 'by-check' }, '2026')
    a.now = Date.parse('1999-01-01T00:00:00Z')
    const last = write(a, { kind: 'set', leg: id, stock: null, height: 1.7, level: 0.04, how: 'by-check' })
    expect(seasonState(a.record).legs[0]!.set!.height).toBe(1.7)
    write(a, { kind: 'void', voids: [last] })
    expect(seasonState(a.record).legs[0]!.set!.height).toBe(1.6)
    expect(seasonState(a.record).conflicts).toEqual([])
  })
})
