/** Money in whole minor units, and days, against figures worked by hand. */
import { describe, expect, it } from 'vitest'
import { productOf, shareOf } from '../../../rules/papers/money.ts'
import { daysAfter, isDay } from '../../../rules/papers.ts'

describe('money', () => {
  it.each([
    [333, 0.5, 167], // 166.5, half away from zero
    [-333, 0.5, -167],
    [1, 0.499, 0],
    [1005, 1.005, 1010], // 1010.025
    [7800, 2.25, 17_550],
    [6450, 2.25, 14_513], // 14512.5
    [99_999_999, 20, 1_999_999_980],
    [0, 3, 0],
  ])('%i for one, %d of them: %i', (price, quantity, amount) => {
    expect(productOf(price, quantity)).toBe(amount)
  })

  it.each([
    [100, 0.285, 29], // 28.5; in binary 28.499999999999996
    [50, 0.01, 1], // 0.5
    [-50, 0.01, -1],
    [49, 0.01, 0],
    [587_670, 0.055, 32_322], // 32321.85
    [100_000_000_000, 0.190001, 19_000_100_000],
  ])('%i, a share of %d: %i', (amount, share, part) => {
    expect(shareOf(amount, share)).toBe(part)
    expect(Object.is(shareOf(amount, share), -0)).toBe(false)
  })
})

describe('days', () => {
  it.each([
    ['2026-02-15', 14, '2026-03-01'],
    ['2028-02-15', 14, '2028-02-29'],
    ['2026-12-31', 1, '2027-01-01'],
    ['2026-03-01', 30, '2026-03-31'],
  ])('%s and %i more: %s', (day, more, then) => expect(daysAfter(day, more)).toBe(then))

  it('are days only where the calendar has them', () => {
    expect(['2026-06-30', '2028-02-29'].every(isDay)).toBe(true)
    expect(['2026-06-31', '2026-02-29', '2026-6-1', 'soon', ''].some(isDay)).toBe(false)
  })
})
