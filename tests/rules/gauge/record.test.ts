/** A gauge's record: what is read of it, and what it says of a season. Figures of a published record, and of records made up here. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { dateOf, readGauge } from '../../../rules/gauge/read.ts'
import { quantile, seasonLevels, shareOf } from '../../../rules/gauge/season.ts'

const FOOT = 0.3048
const YEAR = { from: 1, to: 12 }

describe('the annual mean levels of Lake Huron, 1875 to 1972, as published (R data set LakeHuron)', () => {
  const text = readFileSync(join(import.meta.dirname, '../../support/gauges/lake-huron.csv'), 'utf8')
  const record = readGauge(text, 'm')!

  it('are all read, in the feet that the file says', () => {
    expect(record.readings).toHaveLength(98)
    expect(record.unread).toEqual([])
    expect([record.unit, record.unitStated, record.orderOpen]).toEqual(['ft', true, false])
    expect(record.columns).toEqual({ date: 'time', level: 'value' })
  })

  it('have the published mean, range and quantiles', () => {
    const all = seasonLevels(record.readings, { from: 5, to: 10 }, 0.05)!
    const feet = (level: number): number => Math.round((level / FOOT) * 1e4) / 1e4
    expect(feet(all.mean)).toBe(579.0041)
    expect([feet(all.lowest.level), dateOf(all.lowest)]).toEqual([575.96, '1964'])
    expect([feet(all.highest.level), dateOf(all.highest)]).toEqual([581.86, '1876'])
    expect(feet(all.highest.level - all.lowest.level)).toBe(5.9)
    expect([feet(all.low), feet(all.median), feet(all.high)]).toEqual([576.834, 579.12, 581.1925])
    const levels = record.readings.map(({ level }) => level).sort((a, b) => a - b)
    expect([0.1, 0.25, 0.75, 0.9].map((share) => feet(quantile(levels, share)))).toEqual([
      576.928, 578.135, 579.875, 580.646,
    ])
    // Yearly means say nothing of days.
    expect(all.days).toBe(null)
    expect(shareOf(record.readings, YEAR, (level) => feet(level) > 581.1925)).toBeCloseTo(5 / 98, 12)
  })
})

const days = (text: string, bare: 'm' | 'ft' = 'm', more = {}) =>
  readGauge(text, bare, more)?.readings.map((one) => [dateOf(one), Math.round(one.level * 1e6) / 1e6])

describe('a record in columns of its own', () => {
  it.each([
    [
      'an agency’s tabs, remarks and codes',
      '# gage height, feet\nagency\tsite\tdatetime\tvalue\tcd\n5s\t15s\t20d\t14n\t10s\nXX\t0123\t2024-05-01\t2.5\tA\nXX\t0123\t2024-05-02\t3\tA',
    ],
    [
      'commas, time, and a level in feet',
      'Date,Time,Level (ft)\n2024/05/01,06:00,2.25\n2024/05/01,18:00,2.75\n2024/05/02,06:00,3.00',
    ],
    ['month first', 'Date,Stage ft\n5/1/2024,2.5\n5/2/2024,3\n'],
    ['names of months', 'Date;Level ft\n1 May 2024;2.5\nMay 2, 2024;3\n'],
    ['blanks, no heading', '20240501 2.5\n20240502 3.0'],
    ['quotes and dots, the day first', '"day";"level"\n"01.05.2024";"2,5"\n"02.05.2024";"3,0"'],
  ])('%s', (name, text) => {
    const more = name.endsWith('first') && name.startsWith('quotes') ? { order: 'dmy' as const } : {}
    expect(days(text, 'ft', more)).toEqual([
      ['2024-05-01', 0.762],
      ['2024-05-02', 0.9144],
    ])
  })

  it('tells which line was not read, and why', () => {
    const text =
      'date,level m\n2024-05-01,1.2\n2024-05-02,Ice\n2024-02-31,1.3\n2024-05-04,-9999\nsee note\n2024-05-05,1.3x\n2024-05-06,1.4'
    const { unread, readings } = readGauge(text, 'm')!
    expect(readings).toHaveLength(2)
    expect(unread.map(({ line, why }) => [line, why])).toEqual([
      [3, 'missing'],
      [4, 'date'],
      [5, 'missing'],
      [6, 'date'],
      [7, 'level'],
    ])
  })

  it('asks about the order of day and month where it is open, and not where it is not', () => {
    expect(readGauge('d,level\n5/1/2024,1\n5/2/2024,2', 'm')).toMatchObject({ order: 'mdy', orderOpen: true })
    expect(readGauge('d,level\n5/1/2024,1\n25/2/2024,2', 'm')).toMatchObject({
      order: 'dmy',
      orderOpen: false,
    })
    expect(readGauge('d,level\n5/1/2024,1\n5/22/2024,2', 'm')).toMatchObject({
      order: 'mdy',
      orderOpen: false,
    })
    expect(days('d,level\n5/1/2024,1\n5/2/2024,2', 'm', { order: 'dmy' })).toEqual([
      ['2024-01-05', 1],
      ['2024-02-05', 2],
    ])
  })

  it('takes the unit that is asked for, else the one that it states, else the bare one', () => {
    expect(readGauge('d,level cm\n2024-05-01,120', 'ft')).toMatchObject({ unit: 'cm', unitStated: true })
    expect(readGauge('d,level\n2024-05-01,120', 'ft')).toMatchObject({ unit: 'ft', unitStated: false })
    expect(days('d,level cm\n2024-05-01,120', 'ft', { unit: 'in' })).toEqual([['2024-05-01', 3.048]])
  })

  it('is none where nothing is a date, or nothing a level', () => {
    for (const text of ['', 'hello', '1\n2\n3', '2024-05-01\n2024-05-02', 'date,level'])
      expect(readGauge(text, 'm')).toBe(null)
  })
})

describe('a season', () => {
  // 1 m in summer, 2 m in winter, and 1.5 m on the first ten days of July.
  const text = ['date,level m']
  for (let day = Date.UTC(2021, 0, 1); day < Date.UTC(2024, 0, 1); day += 86_400_000) {
    const date = new Date(day)
    const month = date.getUTCMonth() + 1
    const level = month === 7 && date.getUTCDate() <= 10 ? 1.5 : month >= 5 && month <= 10 ? 1 : 2
    text.push(`${date.toISOString().slice(0, 10)},${level}`)
  }
  const { readings } = readGauge(text.join('\n'), 'm')!

  it('is its months alone', () => {
    const summer = seasonLevels(readings, { from: 5, to: 10 }, 0.05)!
    expect(summer).toMatchObject({ count: 3 * 184, days: 184, low: 1, high: 1.5, years: [2021, 2023] })
    expect(seasonLevels(readings, { from: 11, to: 4 }, 0.05)).toMatchObject({ low: 2, high: 2, days: 181 })
    expect(seasonLevels(readings, { from: 6, to: 6 }, 0.05)!.highest.level).toBe(1)
    const may = readings.filter(({ month }) => month === 5)
    expect(seasonLevels(may, { from: 6, to: 9 }, 0.05)).toBe(null)
  })

  it('has the days on which something holds', () => {
    expect(184 * shareOf(readings, { from: 5, to: 10 }, (level) => level > 1.2)).toBeCloseTo(10, 9)
    expect(shareOf(readings, YEAR, (level) => level < 0.9)).toBe(0)
  })
})
