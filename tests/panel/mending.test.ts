/** What remedies do to the price, and whether all of them together leave nothing to fix. */
import { describe, expect, it } from 'vitest'
import { applyPatch, type Design, demoCatalog, demoDesign, derive, parseDesign } from '../../rules/index.ts'
import { costsOf, mendAll } from '../../src/panel/mending/mending.ts'
import { verdictOf } from '../../src/panel/verdict.ts'

const designOf = (change: (copy: Design) => object): Design => {
  const parsed = parseDesign(change(structuredClone(demoDesign) as Design))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}
const low = designOf((d) => ({ ...d, dock: { ...d.dock, deckHeight: 0.05 } }))
const bare = designOf((d) => ({
  ...d,
  dock: { ...d.dock, bracing: { none: derive(demoDesign, demoCatalog).pairs.map(({ id }) => id) } },
}))

describe('a remedy’s price', () => {
  it.each([
    ['a deck too low', low],
    ['no braces', bare],
  ])('of %s is what the dock that it makes costs more', (_, design) => {
    const { findings, totals } = derive(design, demoCatalog)
    const costs = costsOf(design, demoCatalog, findings)
    expect(costs.length).toBe(findings.length)
    expect(costs.some((cost) => cost !== null)).toBe(true)
    for (const [i, { remedy }] of findings.entries()) {
      if (!remedy) {
        expect(costs[i]).toBe(null)
        continue
      }
      const parsed = parseDesign(applyPatch(design, remedy.patch))
      expect(parsed.ok && derive(parsed.value, demoCatalog).totals.price - totals.price).toBe(costs[i])
    }
  })
})

describe('all remedies together', () => {
  it.each([
    ['a deck too low', low],
    ['no braces', bare],
  ])('of %s leave nothing to fix', (_, design) => {
    const { findings, totals } = derive(design, demoCatalog)
    const { toFix } = verdictOf({ findings })
    const all = mendAll(design, demoCatalog, findings)
    expect(toFix.length).toBeGreaterThan(1)
    if (!all) throw new Error('not offered')
    const after = derive(all.design, demoCatalog)
    expect(verdictOf(after).toFix).toEqual([])
    expect(all.cost).toBe(after.totals.price - totals.price)
  })
  it('are not offered for one finding, nor where none has a remedy', () => {
    const { findings } = derive(bare, demoCatalog)
    const one = findings.find(({ remedy, severity }) => remedy && severity !== 'note')!
    expect(mendAll(bare, demoCatalog, [one])).toBe(null)
    expect(
      mendAll(
        bare,
        demoCatalog,
        [1, 2].map(() => ({ ...one, remedy: null })),
      ),
    ).toBe(null)
  })
})
