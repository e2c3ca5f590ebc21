/** Quotes of random docks against their parts lists, and the changes between two of them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type QuoteAsked, quote, quoteChanges } from '../../../rules/papers.ts'
import { anyCase } from '../../support/arbitraries.ts'
import { placedDock as dockOf } from '../../support/placed-dock.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_003)
const RUNS = runs(150)
const DAY = { date: '2026-03-01' } as const

describe(`every quote (seed ${SEED}, ${RUNS} docks)`, () => {
  const asked = fc.record(
    {
      date: fc.constant(DAY.date),
      services: fc.array(
        fc.record(
          {
            code: fc.constantFrom('delivery', 'set-up', 'hours', 'AUFBAU', 'LAGER', 'nothing'),
            quantity: fc.integer({ min: 0, max: 4000 }).map((n) => n / 100),
          },
          { requiredKeys: ['code'] },
        ),
        { maxLength: 3 },
      ),
      discount: fc.oneof(
        fc.constant(null),
        fc.integer({ min: 0, max: 1000 }).map((n) => ({ share: n / 1000 })),
        fc.integer({ min: 0, max: 400_000 }).map((amount) => ({ amount })),
      ),
      fetched: fc.boolean(),
      untaxed: fc.boolean(),
    },
    { requiredKeys: ['date'] },
  )

  it('adds up in whole minor units, by another way than the engine’s', () => {
    fc.assert(
      fc.property(anyCase, asked, ({ design, catalog }, ask) => {
        const dock = dockOf(design, catalog)
        const made = quote(dock, design, catalog, ask as QuoteAsked)
        const whole = [made.net, made.total, made.discount.amount, ...made.lines.map(({ amount }) => amount)]
        expect(whole.every(Number.isSafeInteger)).toBe(true)
        // The goods are the parts list, spares in it where the shop charges for them.
        expect(made.goods).toBe(dock.totals.price)
        const parts = made.lines.filter(({ kind }) => kind !== null)
        expect(parts.map(({ code, quantity, amount }) => `${code} ${quantity} ${amount}`).sort()).toEqual(
          dock.parts.map(({ code, quantity, price }) => `${code} ${quantity} ${price}`).sort(),
        )
        // Halves away from zero, told by the decimal text: half a unit more, cut off.
        for (const { unitPrice, quantity, amount, group } of made.lines)
          if (group === 'services')
            expect(amount).toBe(Math.floor((unitPrice * Math.round(quantity * 1000)) / 1000 + 0.5))
        const sum = made.lines.reduce((total, { amount }) => total + amount, 0)
        expect(made.net).toBe(sum + made.discount.amount)
        expect(made.total - made.net).toBe(made.tax?.amount ?? 0)
        expect(-made.discount.amount).toBeLessThanOrEqual(Math.max(0, made.goods))
        if (made.tax)
          expect(Math.abs(made.tax.amount - made.tax.taxable * made.tax.share)).toBeLessThanOrEqual(
            0.5 + 1e-6,
          )
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  it('tells every change since another one, and the changes are the difference of the totals', () => {
    fc.assert(
      fc.property(
        anyCase,
        fc.integer({ min: -300, max: 600 }),
        asked,
        asked,
        ({ design, catalog }, mm, one, two) => {
          const deckHeight = design.dock.deckHeight + mm / 1000
          const raised = { ...design, dock: { ...design.dock, deckHeight } }
          const [old, now] = [dockOf(design, catalog), dockOf(raised, catalog)]
          const before = { dock: old, quote: quote(old, design, catalog, one as QuoteAsked) }
          const after = { dock: now, quote: quote(now, raised, catalog, two as QuoteAsked) }
          const { sums, lines, legs, total } = quoteChanges(before, after)
          expect(Object.values(sums).reduce((sum, part) => sum + part, 0)).toBe(total.after - total.before)
          expect(sums.prices).toBe(0)
          for (const line of lines) expect(line.forQuantity + line.forPrice).toBe(line.amount)
          // Legs that are others now say why: the deck is higher or lower, or the ground under them is another.
          for (const leg of legs)
            if (leg.is === 'other')
              expect(leg.why.map(({ key }) => key)).toSatisfy((keys: string[]) =>
                keys.some((key) => ['deck', 'bed'].includes(key)),
              )
          expect(quoteChanges(before, before)).toMatchObject({ lines: [], legs: [], parts: [] })
        },
      ),
      { seed: SEED + 1, numRuns: Math.ceil(RUNS / 3) },
    )
  })
})
