/** A load case's id stands for its data, both ways; what is no id is no case. */
import { describe, expect, it } from 'vitest'
import { byPush, inWeather } from '../../../rules/checks/structure/judged.ts'
import { combinations } from '../../../rules/structure/dock/combinations.ts'
import { caseId, loadCaseOf } from '../../../rules/structure/dock/load-cases.ts'

describe('load cases', () => {
  it('have the ids that Docks have always told', () => {
    expect([
      caseId('dead'),
      caseId('live', 'left'),
      caseId('shove', 'lake'),
      caseId('boat', 'right'),
      caseId('crowd', 'lake'),
      caseId('edge', 'left'),
      caseId('storm', 'shore', 'today'),
      caseId('storm-light', 'left', 'high'),
      caseId('storm-live', 'right', 'low'),
    ]).toEqual([
      'D',
      'D+L left',
      'D+P lake',
      'D+B right',
      'D+C lake',
      'D+E left',
      'D+W today shore',
      '0.6D+W high left',
      'D+0.75L+0.75W low right',
    ])
  })

  it('tell of each combination what it has: weather at its level, from its side', () => {
    const all = combinations(['low', 'today', 'high'], true, [])
    expect(all.length).toBeGreaterThan(30)
    for (const { name, weather, lean } of all) {
      const known = loadCaseOf(name)!
      expect([known.id, known.weather, known.push], name).toEqual([name, weather !== null, false])
      expect(known.level, name).toBe(weather?.level ?? null)
      if (weather) expect(known.toward, name).toBe(lean)
    }
  })

  it('are weather or a push by what acts in them, not by a letter in some name', () => {
    expect([inWeather('0.6D+W high left'), byPush('0.6D+W high left')]).toEqual([true, false])
    expect([inWeather('D+P lake'), byPush('D+P lake')]).toEqual([false, true])
    expect([inWeather('D+C lake'), byPush('D+C lake')]).toEqual([false, false])
    expect([inWeather('West.end.left'), byPush('D+P nowhere')]).toEqual([false, false])
    expect(loadCaseOf('D+W')).toBeNull()
  })
})
