/** Never two truths: of random docks the price on the screen, the estimate, the quote and their CSV agree, and no verdict contradicts a finding. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type Catalog, demoCatalog, demoDesign } from '../../rules/index.ts'
import { estimate, quote, verifyQuote } from '../../rules/papers.ts'
import { tableCsv } from '../../src/documents/files/tables.ts'
import { priceOf } from '../../src/panel/price.ts'
import { standingOf } from '../../src/panel/verdict.ts'
import { anyCase } from '../support/arbitraries.ts'
import { deriveFound } from '../support/at-once.ts'
import { placedDock } from '../support/placed-dock.ts'
import { runs } from '../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 71_204)
const RUNS = runs(500)
const asked = { date: '2026-03-01' }

/** The last amount of the table, which is the total. */
const totalOf = (csv: string): number => {
  const [head, ...rows] = csv.trim().split(/\r?\n/)
  const at = head!.split(',').indexOf('amount') - head!.split(',').length
  // In whole units of the currency; both shops' have a hundred parts.
  return Math.round(Number(rows.at(-1)!.split(',').at(at)) * 100)
}

/** How a shop rounds its totals, in cents, and whether it adds anything to its parts. */
const terms = fc.record({ round: fc.constantFrom(undefined, 100, 500, 1000), bare: fc.boolean() })

function shopWith(
  shop: Catalog,
  discount: number | undefined,
  { round, bare }: { round: number | undefined; bare: boolean },
): Catalog {
  const { tax, freight, ...rest } = shop.quote ?? {}
  const quote = {
    ...rest,
    ...(!bare && tax && { tax }),
    ...(!bare && freight && { freight }),
    ...(discount !== undefined && { discount }),
    ...(round !== undefined && { round }),
  }
  return { ...shop, quote }
}

it(`one price everywhere (seed ${SEED}, ${RUNS} docks)`, () => {
  let [priced, unpriced, rounded] = [0, 0, 0]
  fc.assert(
    fc.property(
      anyCase,
      fc.constantFrom(undefined, 0, 0.075),
      terms,
      ({ design, catalog: shop }, discount, how) => {
        const catalog = shopWith(shop, discount, how)
        const dock = placedDock(design, catalog)
        const price = priceOf(dock, catalog)
        const [own, shops] = [estimate(dock, design, catalog, asked), quote(dock, design, catalog, asked)]
        expect(shops.total).toBe(own.total)
        const csv = (['estimate', 'quote'] as const).map((table) =>
          tableCsv(table, { dock, design, catalog, asked }),
        )
        // A price is shown exactly where the papers do not forbid building.
        expect(price === null).toBe(own.stops > 0)
        if (!price) {
          for (const one of csv) expect(one).not.toMatch(/^total,/m)
          unpriced++
          return
        }
        priced++
        for (const one of csv) expect(totalOf(one)).toBe(own.total)
        const delivery = own.freight.price ?? 0
        if (price.plus) expect(price.amount).toBe(own.goods + own.discount.amount)
        expect(price.off + own.discount.amount).toBe(0)
        const rounding = own.rounding?.amount ?? 0
        // Alone it is the total itself, rounded; with more to come it is what the paper adds that to.
        expect(price.amount + (own.tax?.amount ?? 0) + delivery + (price.plus ? rounding : 0)).toBe(own.total)
        if (how.round) {
          expect(Math.abs(own.total % how.round)).toBe(0)
          expect(2 * Math.abs(rounding)).toBeLessThanOrEqual(how.round)
          if (rounding !== 0) rounded++
        }
        // It is derived once more for that.
        if (priced % 8 === 0) expect(verifyQuote({ ...shops, design }, catalog)).toEqual([])
        // What the papers add is named beside it.
        if (own.tax?.amount) expect(['tax', 'both']).toContain(price.plus)
        if (delivery > 0 || own.freight.by === 'none') expect(['delivery', 'both']).toContain(price.plus)
      },
    ),
    { numRuns: RUNS, seed: SEED },
  )
  expect(Math.min(priced, unpriced)).toBeGreaterThan(RUNS / 20)
  expect(rounded).toBeGreaterThan(RUNS / 50)
}, 120_000)

it(`no verdict contradicts a finding (seed ${SEED})`, () => {
  const seen = new Set<string>()
  fc.assert(
    fc.property(anyCase, ({ design, catalog }) => {
      const dock = deriveFound(design, catalog)
      const has = (severity: string) => dock.findings.some((one) => one.severity === severity)
      const { standing, toFix, toMeasure } = standingOf({ dock, status: 'deep', stale: false })
      seen.add(standing)
      if (standing === 'can') {
        expect(has('stop')).toBe(false)
        expect(dock.findings.filter(({ severity }) => severity === 'warn').length).toBe(toMeasure.length)
        // Nothing that is judged uses more than it has.
        for (const leg of dock.structure!.legs) expect(leg.use).toBeLessThanOrEqual(1 + 1e-6)
        expect(dock.structure!.railUse ?? 0).toBeLessThanOrEqual(1 + 1e-6)
      }
      if (has('stop')) expect(['fix', 'cannot']).toContain(standing)
      if (standing === 'fix' || standing === 'cannot') expect(toFix.length).toBeGreaterThan(0)
      expect(priceOf(dock, catalog) === null).toBe(has('stop'))
    }),
    // Random docks that may be built are rare.
    { numRuns: runs(60), seed: SEED, examples: [[{ design: demoDesign, catalog: demoCatalog }]] },
  )
  expect([...seen].sort()).toEqual(expect.arrayContaining(['can', 'cannot']))
}, 240_000)
