/** The cost of a section does not grow with the dock. A ratio within one run; milliseconds depend on the machine and do not gate. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, deriveKit } from '../../rules/index.ts'
import { deriveFound } from '../support/at-once.ts'
import { growth, kitOf, longDock, standOf } from './measure.ts'

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
