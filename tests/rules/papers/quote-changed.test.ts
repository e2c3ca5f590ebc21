/** What changed since an earlier quote, against figures worked by hand. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, english, wordsOf } from '../../../rules/index.ts'
import { PAPERS, quote, quoteChanges, sentence } from '../../../rules/papers.ts'
import { placedDock as dockOf } from '../../support/placed-dock.ts'

const DAY = { date: '2026-03-01' } as const

describe('what changed', () => {
  const dock = dockOf(demoDesign, demoCatalog)
  const before = { dock, quote: quote(dock, demoDesign, demoCatalog, DAY) }

  it('with a deck 25 cm higher: longer legs, each with the deck as the reason', () => {
    const higher = { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.7, start: dock.start } }
    const now = dockOf(higher, demoCatalog)
    const { legs, sums, parts } = quoteChanges(before, {
      dock: now,
      quote: quote(now, higher, demoCatalog, DAY),
    })
    expect(legs.length).toBeGreaterThan(0)
    for (const leg of legs)
      expect(leg.why).toContainEqual(
        expect.objectContaining({ key: 'deck', unit: 'm', before: 0.45, after: 0.7 }),
      )
    expect(sums.prices).toBe(0)
    expect(parts.some(({ kind }) => kind === 'leg')).toBe(true)
  })

  it('is said in words with its figures', () => {
    const higher = { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.7, start: dock.start } }
    const now = dockOf(higher, demoCatalog)
    const { legs } = quoteChanges(before, { dock: now, quote: quote(now, higher, demoCatalog, DAY) })
    const words = wordsOf(PAPERS, english('metric'))
    const said = legs.flatMap(({ say, why }) =>
      [say, ...why.map((term) => term.say)].map((one) => sentence(one, words)),
    )
    expect(said).toContain('Deck height 0.70 m (was 0.45 m).')
    expect(said.filter((one) => /[{}]/.test(one))).toEqual([])
    // The second leg of s3: by hand from the start, one size up.
    const byHand = {
      ...demoDesign,
      dock: { ...demoDesign.dock, overrides: { 's3.end.left': { stock: 1.8288 } } },
    }
    const chosen = dockOf(byHand, demoCatalog)
    const other = quoteChanges(before, { dock: chosen, quote: quote(chosen, byHand, demoCatalog, DAY) })
    expect(
      other.legs.map(({ say, why }) => [sentence(say, words), why.map((term) => sentence(term.say, words))]),
    ).toEqual([['Leg 5 (s3): Leg 5 ft, now Leg 6 ft', ['Chosen by hand now.']]])
  })

  it('with a catalog 10 cents dearer in frames: 5 frames, 50 cents, no parts', () => {
    const frames = demoCatalog.frames.map((frame) => ({ ...frame, price: frame.price + 10 }))
    const dearer = { ...demoCatalog, frames }
    const now = dockOf(demoDesign, dearer)
    const { sums, parts, lines } = quoteChanges(before, {
      dock: now,
      quote: quote(now, demoDesign, dearer, DAY),
    })
    expect(parts).toEqual([])
    expect(sums).toMatchObject({ parts: 0, prices: 50, services: 0, freight: 0, discount: 0 })
    // 5.5 % of 575730 = 31665.15, of 575680 = 31662.40: 31665 - 31662
    expect(sums.tax).toBe(3)
    expect(lines).toHaveLength(1)
    expect(lines[0]).toMatchObject({
      unitPrice: { before: 38_900, after: 38_910 },
      forPrice: 50,
      forQuantity: 0,
    })
  })

  it('in another currency is not told in amounts', () => {
    const now = { dock, quote: { ...before.quote, currency: 'EUR' } }
    expect(quoteChanges(before, now)).toMatchObject({ comparable: false, lines: [] })
  })
})
