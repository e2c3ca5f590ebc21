import { expect, it } from 'vitest'
import { keptPage, keptSeason, pageToKeep, seasonToKeep } from '../../src/at-lake/season-kept.ts'

const stored = (value: unknown): unknown => JSON.parse(JSON.stringify(value))

it('a screen that was open last year is not opened in a new one', () => {
  const kept = stored(pageToKeep({ at: 'set-up', stage: 48 }, '2026'))
  expect(keptPage(kept, '2026')).toEqual({ at: 'set-up', stage: 48 })
  expect(keptPage(kept, '2027')).toBeNull()
  // As earlier versions of the page kept it: of no season that is known.
  expect(keptPage({ at: 'set-up', stage: 48 }, '2026')).toBeNull()
  expect(keptPage(null, '2026')).toBeNull()
})

it('a year that was said holds until the clock has another', () => {
  const kept = stored(seasonToKeep('2025', new Date('2026-05-02T10:00:00Z')))
  expect(keptSeason(kept, new Date('2026-09-20T10:00:00Z'))).toBe('2025')
  expect(keptSeason(kept, new Date('2027-05-02T10:00:00Z'))).toBe('')
  // In autumn for the spring to come: in spring it is so anyway.
  expect(
    keptSeason(stored(seasonToKeep('2027', new Date('2026-10-02T10:00:00Z'))), new Date('2026-11-01')),
  ).toBe('2027')
  for (const odd of [null, '2026', { season: 'x', said: 2026 }, 7])
    expect(keptSeason(odd, new Date('2026-06-01'))).toBe('')
})
