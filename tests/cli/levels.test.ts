/** `leadline levels`: what it tells of a record, and what it refuses. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoDesign } from '../../rules/index.ts'
import { run } from '../../src/cli/run.ts'

let folder: string
const file = (name: string, content: string): string => {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-'))
})
afterAll(() => {
  rmSync(folder, { recursive: true })
})

/** Every day of two years: 3 m, but for June, when it is 3.2 m, and the first ten days of July, when it is 4 m. */
const record = (): string => {
  const rows = ['date,level']
  for (let day = Date.UTC(2022, 0, 1); day < Date.UTC(2024, 0, 1); day += 86_400_000) {
    const date = new Date(day)
    const month = date.getUTCMonth() + 1
    rows.push(
      `${date.toISOString().slice(0, 10)},${month === 6 ? 3.2 : month === 7 && date.getUTCDate() <= 10 ? 4 : 3}`,
    )
  }
  return file('record.csv', rows.join('\n'))
}

describe('leadline levels', () => {
  it('tells the season’s levels, and the unit that it took', () => {
    const { code, out, err } = run(['levels', record(), '--from', '6', '--to', '8', '--units', 'metric'])
    expect([code, err]).toEqual([0, ''])
    const lines = out.split('\n')
    expect(lines[0]).toBe(
      '730 readings, 2022-01-01 to 2023-12-31, in m (dates from column date, levels from column level)',
    )
    expect(lines[1]).toContain('--unit')
    expect(lines[2]).toBe('Months 6 to 8, 2022 to 2023: 184 readings')
    expect(lines[4]).toBe('Lowest 3.00 m (2022-07-11), highest 4.00 m (2022-07-01): 1.00 m apart')
    // Ten of 92 days at 4 m are more than 5 %.
    expect(lines[5]).toBe('Under 3.00 m for 5 % of the time, over 4.00 m for 5 %')
  })

  it('tells them against the day of the survey, and the days on which a dock is awash', () => {
    const design = file('dock.json', JSON.stringify(demoDesign))
    const { deckHeight } = demoDesign.dock as { deckHeight: number }
    expect(deckHeight).toBeLessThan(1)
    const args = ['levels', record(), '--unit', 'm', '--from', '6', '--to', '8', '--units', 'metric']
    const { out } = run([...args, '--at', '3', '--design', design])
    expect(out).toContain('Against the day of the survey: low 0.00 m, high 1.00 m\n')
    expect(out).toContain('Deck under water: 11 % of the time, 10 days of a season\n')
    expect(out).not.toContain('--unit')
    expect(run([...args, '--at', '3.9', '--design', design]).out).toContain(
      'Deck under water: 0 % of the time, 0 days',
    )
  })

  it.each([
    ['--from', '13', '--from: "13"; expected a month, 1 to 12'],
    ['--unit', 'fathom', '--unit: "fathom"; expected m, cm, mm, ft, in'],
    ['--order', 'ymd', '--order: "ymd"; expected mdy, dmy'],
    ['--at', 'high', '--at: "high"; expected a level in the record\'s unit'],
  ])('refuses %s %s', (name, value, told) => {
    const { code, err } = run(['levels', record(), name, value])
    expect([code, err]).toEqual([2, `${told}\n`])
  })

  it('refuses what is no record, and a design without the level of its day', () => {
    const none = file('none.csv', 'hello\nworld')
    expect(run(['levels', none])).toMatchObject({ code: 2, out: '' })
    expect(
      run(['levels', record(), '--design', file('dock.json', JSON.stringify(demoDesign))]).err,
    ).toContain('--at')
    expect(run(['levels']).err).toBe('levels: 0 files; expected one record file\n')
  })
})
