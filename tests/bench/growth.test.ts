/** The cost of a section does not grow with the dock. A ratio within one run; milliseconds depend on the machine and do not gate. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, deriveKit } from '../../rules/index.ts'
import { growth, longDock } from './measure.ts'

describe('deriveKit', () => {
  it('works at most 1.5 times as long on a section at 4,000 as at 400', { retry: 2 }, () => {
    expect(growth(400, 4000, 30)).toBeLessThanOrEqual(1.5)
  })

  it('is measured on a dock with legs and braces throughout', () => {
    const kit = deriveKit(longDock(400), demoCatalog)
    expect(kit.legs.every((leg) => leg.stock)).toBe(true)
    expect(kit.pairs.filter((pair) => pair.fit).length).toBeGreaterThan(360)
  })
})
