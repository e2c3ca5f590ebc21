import { expect, it } from 'vitest'
import { parseRecord, seasonState } from '../../rules/record/index.ts'
import { marksOf } from '../../src/at-lake/marks.ts'
import { oldDockRecord } from '../../src/at-lake/old-dock-record.ts'
import { taken } from '../support/records.ts'

const BEGUN = { id: 'old', device: 'phone-a', at: '2026-08-02T10:00:00Z' }

it('the day on which a dock is written down has its level: nobody is asked for it again, and the mark finds it in spring', () => {
  const record = oldDockRecord({ name: 'Ours', pairs: 3, mark: 'Bolt', down: 0.62 }, BEGUN, 'first')
  expect(seasonState(record).level).toMatchObject({ level: 0, from: 'mark', mark: 'Bolt', down: 0.62 })
  // The bolt is 0.62 m over that water: 0.8 m down to it in spring is 0.18 m lower.
  expect(marksOf({ record })).toEqual([{ name: 'Bolt', above: 0.62, by: 'mark' }])
  expect(taken(parseRecord(JSON.parse(JSON.stringify(record))))).toStrictEqual(record)
})

it('without a mark the level is that of the day all the same', () => {
  const record = oldDockRecord({ name: '', pairs: 1, mark: '', down: null }, BEGUN, 'first')
  expect(seasonState(record).level).toMatchObject({ level: 0, from: 'survey' })
  expect(record.mark).toBeNull()
})
