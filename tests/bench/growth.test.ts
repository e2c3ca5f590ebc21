/** The cost of a section does not grow with the dock. A ratio within one run; milliseconds depend on the machine and do not gate. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, deriveKit, shopOf } from '../../rules/index.ts'
import { lie } from '../../rules/plan/troubles.ts'
import { deriveFound } from '../support/at-once.ts'
import {
  editOver,
  fingers,
  growth,
  kitOf,
  longDock,
  ratio,
  shapingOf,
  soundingMoved,
  standOf,
} from './measure.ts'

describe('deriveKit', () => {
  it('works at most 1.5 times as long on a section at 4,000 as at 400', { retry: 2 }, () => {
    expect(growth(kitOf, [400, 4000], { turns: 30, warm: 20 })).toBeLessThanOrEqual(1.5)
  })

  it('is measured on a dock with legs and braces throughout', () => {
    const kit = deriveKit(longDock(400), demoCatalog)
    expect(kit.legs.every((leg) => leg.stock)).toBe(true)
    expect(kit.pairs.filter((pair) => pair.fit).length).toBeGreaterThan(360)
  })
})

describe('all load cases', () => {
  it('work at most 1.5 times as long on a section at 40 as at 20', { retry: 2 }, () => {
    expect(growth(standOf, [20, 40], { turns: 40, warm: 12 })).toBeLessThanOrEqual(1.5)
  })

  it('are measured on a dock that is judged and stands', () => {
    const { structure, findings } = deriveFound(longDock(40), demoCatalog)
    expect(structure!.stands).toBe(true)
    expect(findings.filter(({ severity }) => severity === 'stop')).toEqual([])
  })
})

describe('shaping a dock by hand', () => {
  it('works at most 1.5 times as long on a section at 60 as at 15', { retry: 2 }, () => {
    expect(growth(shapingOf, [15, 60], { turns: 40, warm: 60 })).toBeLessThanOrEqual(1.5)
  })

  it('is measured on a dock without trouble', () => {
    for (const sections of [15, 60]) {
      const { plan, troubles } = lie(fingers(sections), '4x8', shopOf(demoCatalog))
      expect(plan.length).toBe(sections)
      expect(troubles).toEqual([])
    }
  })
})

describe('an edit of 60 sections', () => {
  it('works at most 4 times as long over 10,000 soundings as over 100', { retry: 2 }, () => {
    expect(ratio(editOver(10_000), editOver(100), { turns: 15, warm: 6 })).toBeLessThanOrEqual(4)
  })

  it('works at most 25 times as long where one of 10,000 soundings was moved as where one of 100 was', {
    retry: 2,
  }, () => {
    expect(ratio(soundingMoved(10_000), soundingMoved(100), { turns: 9, warm: 4 })).toBeLessThanOrEqual(25)
  })
})
