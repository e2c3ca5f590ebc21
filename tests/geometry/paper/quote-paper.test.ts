/** What stands on a quote where: page one is enough to decide by, and what is signed says what it is. */
import { describe, expect, it } from 'vitest'
import type { Sheet } from '../../../geometry/paper/marks.ts'
import { paperFrom } from '../../../geometry/paper/paper-of.ts'
import { estimatePaper, type QuoteWanted, quotePaper } from '../../../geometry/sheets/quote.ts'
import {
  assessKit,
  type Catalog,
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  ENGLISH,
  english,
  moneyIn,
  projectOf,
} from '../../../rules/index.ts'
import { shareOf } from '../../../rules/papers/money.ts'
import { quote, quoteFile } from '../../../rules/papers.ts'

const DATE = '2026-05-01'
const usd = moneyIn('USD', ENGLISH)
const of = (design: Design, catalog: Catalog = demoCatalog) =>
  paperFrom(projectOf(design, catalog, assessKit(deriveKit(design, catalog))), {
    ...{ ...english('imperial'), size: 'letter' as const, date: DATE, by: '' },
  })
const wordsOn = ({ marks }: Sheet): string =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ')
const sheetsOf = (asked: QuoteWanted = {}, design = demoDesign, catalog = demoCatalog): string[] =>
  quotePaper(of(design, catalog), asked).sheets.map(wordsOn)
const made = (asked: QuoteWanted = {}) =>
  quote(of(demoDesign).dock, demoDesign, demoCatalog, { ...asked, date: DATE })

describe('a quote’s first page', () => {
  it('has total, deposit, last day, what is in it and what is not, and a picture', () => {
    const { total, lines } = made()
    const [first] = sheetsOf()
    expect(first).toContain(usd(total))
    expect(first).toContain(`Deposit with the order (50 %) ${usd(shareOf(total, 0.5))}`)
    expect(first).toContain('Holds until May 31, 2026')
    const parts = lines.filter(({ kind }) => kind !== null).reduce((sum, { quantity }) => sum + quantity, 0)
    expect(first).toContain(`All ${parts} parts`)
    expect(first).toContain('To be had besides: Delivery to the shore, Set-up in spring')
    expect(first).toContain('A dock of 5 sections, 4 ft wide')
    expect(first).toContain('2 × Anchor post')
    expect(first).not.toContain('Auger')
    expect(quotePaper(of(demoDesign)).sheets[0]!.marks.length).toBeGreaterThan(300)
  })

  it('says that delivery and freight are both charged, and only then', () => {
    const twice = /Two things here bring the goods: Delivery to the shore/
    const delivery = { services: [{ code: 'delivery' }] }
    expect(sheetsOf(delivery)[0]).toMatch(twice)
    expect(sheetsOf({ ...delivery, fetched: true })[0]).not.toMatch(twice)
    expect(sheetsOf({ ...delivery, fetched: true })[0]).toContain('picked up at the shop')
    expect(sheetsOf({ services: [{ code: 'storage' }] })[0]).not.toMatch(twice)
  })

  it('says what is another since the last one, before any count', () => {
    const since = quoteFile(made(), demoDesign)
    const longer = { ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } }
    const [first, second] = sheetsOf({ since, headline: 'one section more' }, longer)
    expect(first).toContain('Since the quote of May 1, 2026: one section more.')
    expect(second).toContain('What changed since the quote of May 1, 2026')
  })

  it('is the shop’s: its name, where it is to be found, no deposit where it asks for none', () => {
    const shop = { name: 'Another Shop', address: ['Line one', 'Line two'], phone: '12', web: 'a.example' }
    const [first, second] = sheetsOf({}, demoDesign, { ...demoCatalog, shop })
    for (const one of ['Another Shop', 'Line one', 'Line two', 'Phone 12', 'a.example'])
      expect(first).toContain(one)
    expect(`${first} ${second}`).not.toMatch(/Deposit|is due with it/)
  })
})

describe('what is signed', () => {
  it('names the total and both check codes; an estimate has nothing to sign', () => {
    const { total, check, fingerprint } = made()
    const fours = (code: string): string => code.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')
    const last = sheetsOf().at(-1)!
    expect(last).toMatch(/I order the dock of this quote/)
    for (const one of [usd(total), fours(check), fours(fingerprint.all), 'Signature', 'Place and day'])
      expect(last).toContain(one)
    const estimate = estimatePaper(of(demoDesign)).sheets.map(wordsOn).join(' ')
    expect(estimate).not.toMatch(/Signature|I order|Deposit|besides/)
  })

  it.each([5, 20])(
    'of %d sections is on the second sheet; each part with its price comes after it where it is asked for',
    (sections) => {
      const design = {
        ...demoDesign,
        site: {
          ...demoDesign.site,
          soundings: [
            [-3, -0.9],
            [0, 0],
            [4, 0.4],
            [60, 1.1],
          ].map(([distance, depth]) => ({ distance: distance!, offset: 0, depth: depth! })),
        },
        dock: { ...demoDesign.dock, sections },
      }
      const sheets = sheetsOf({}, design)
      expect(sheets).toHaveLength(2)
      expect(sheets[1]).toContain('Acceptance')
      const each = sheetsOf({ each: true }, design)
      expect(each.length).toBeGreaterThan(2)
      expect(each[2]).toContain('Each part with its price')
    },
  )
})
