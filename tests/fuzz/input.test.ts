/** What hosts, discs and mails make of designs, catalogs, quotes and what is asked: taken as plain data or told, never thrown at. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe } from 'vitest'
import {
  type Catalog,
  cautionsIn,
  type Design,
  demoCatalog,
  demoDesign,
  english,
  findingText,
  languageOf,
  type Parsed,
  parseCatalog,
  parseCatalogText,
  parseDesign,
  parseDesignText,
  remedyText,
  say,
} from '../../rules/index.ts'
import {
  PAPERS,
  parseAsked,
  parseQuoteFile,
  parseQuoteText,
  type QuoteAsked,
  quote,
  quoteFile,
} from '../../rules/papers.ts'
import {
  addEntry,
  entryFor,
  learn,
  mergeRecords,
  nextYear,
  parseRecord,
  parseRecordText,
  reorder,
  type SeasonRecord,
  seasonState,
  takeOut,
} from '../../rules/record/index.ts'
import { type LanguageFile, parseLanguageFile } from '../../rules/words/language-file.ts'
import { nextYearTold } from '../../rules/words/record-next-text.ts'
import { learnedLines, reorderTold, takeOutTold } from '../../rules/words/record-shop-text.ts'
import { asBuiltTold } from '../../rules/words/record-text.ts'
import { anyCase } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import metricFile from '../support/metric-shop.json' with { type: 'json' }
import { PSEUDO_WORDS } from '../support/pseudo-language.ts'
import { textsIn, uncleanIn } from './support/clean.ts'
import { damaged, spoilt } from './support/hostile.ts'
import { dockBroken, papersBroken, parseBroken } from './support/laws.ts'
import { fuzz, type Tally } from './support/runs.ts'

const golden = (name: string): string =>
  readFileSync(join(import.meta.dirname, '../rules/golden', name), 'utf8')
const DESIGN = JSON.parse(golden('design-v1.json'))
const ASKED: QuoteAsked = {
  date: '2026-03-01',
  until: '2026-04-01',
  services: [{ code: 'delivery', quantity: 2 }, { code: 'set-up' }],
  discount: { share: 0.1 },
  fetched: false,
  untaxed: false,
  other: [{ name: 'Gravel', quantity: 1.5, price: 4500, taxed: true }],
}
const demo = deriveAtOnce(demoDesign, demoCatalog)
const QUOTE = JSON.parse(JSON.stringify(quoteFile(quote(demo, demoDesign, demoCatalog, ASKED), demoDesign)))

const ofDesign = (design: Design): string[] => dockBroken(design, demoCatalog, deriveAtOnce)
const ofCatalog = (catalog: Catalog): string[] => dockBroken(demoDesign, catalog, deriveAtOnce)
const ofQuote = ({ design }: { readonly design: Design }): string[] => ofDesign(design)
const ofAsked = (asked: QuoteAsked): string[] =>
  papersBroken(demo, demoDesign, demoCatalog, asked, textsIn(asked))

const LANGUAGE = { format: 'leadline/words', version: 1, lang: 'qps', words: PSEUDO_WORDS }
/** Whatever it says, it says it: each sentence is a text, and none throws. */
function ofLanguage({ lang, words }: LanguageFile): string[] {
  const reader = { language: languageOf(lang, words), units: 'imperial' } as const
  const said = [
    ...Object.keys(PAPERS.english).map((key) =>
      say(PAPERS, reader, key as keyof typeof PAPERS.english, FIGURES),
    ),
    ...demo.findings.flatMap((finding) => [
      findingText(finding, 'plain', reader),
      finding.remedy ? remedyText(finding.remedy, reader) : '',
    ]),
    ...cautionsIn(reader),
  ]
  return said.filter((text) => typeof text !== 'string')
}
const FIGURES = { n: 1, count: { value: 2, unit: 'count' }, mass: { value: 3, unit: 'kg' } }

/** What follows of a record is plain data, what is said of it is text, and one more entry and itself are put to it without loss. */
function ofRecord(record: SeasonRecord): string[] {
  const next = nextYear(record, { level: -0.1 })
  const list = reorder(record, demoCatalog)
  const out = takeOut(record)
  const reader = english('imperial')
  const told = [
    asBuiltTold(record, reader),
    nextYearTold(record, next, reader),
    takeOutTold(record, out, reader),
    reorderTold(record, list, reader),
    learnedLines(learn([record], demoCatalog), reader),
  ]
  const data = [seasonState(record), next, list, out, told]
  const entry = entryFor(
    record,
    { kind: 'note', text: 'x' },
    { id: 'x', device: 'y', at: '2026-06-06T08:00:00Z' },
  )
  const added = addEntry(record, entry)
  const again = mergeRecords(record, record)
  return [
    ...uncleanIn(data, textsIn(record, textsIn(demoCatalog))),
    ...(again.ok && isDeepStrictEqual(again.value, record)
      ? []
      : ['another record when it is merged with itself']),
    ...(added.ok && added.value.entries.length === record.entries.length + 1 ? [] : ['an entry is lost']),
  ]
}

/** A border, a sound input of it, and what holds of what it takes. */
interface Border<T = unknown> {
  readonly parse: (input: unknown) => Parsed<T>
  readonly sound: unknown
  readonly law: (value: T) => readonly string[]
}
const BORDERS = [
  { parse: parseDesign, sound: DESIGN, law: ofDesign },
  { parse: parseCatalog, sound: demoCatalog, law: ofCatalog },
  { parse: parseCatalog, sound: metricFile, law: ofCatalog },
  { parse: parseQuoteFile, sound: QUOTE, law: ofQuote },
  { parse: parseAsked, sound: ASKED, law: ofAsked },
  { parse: parseLanguageFile, sound: LANGUAGE, law: ofLanguage },
  { parse: parseRecord, sound: JSON.parse(golden('record-v1.json')), law: ofRecord },
] as readonly Border[]

interface TextBorder<T = unknown> {
  readonly read: (text: string) => Parsed<T>
  /** Of what was read, for what is taken to be taken again. */
  readonly parse: (input: unknown) => Parsed<T>
  readonly text: string
  readonly law: (value: T) => readonly string[]
}
const FILES = [
  { read: parseDesignText, parse: parseDesign, text: golden('design-v1.json'), law: ofDesign },
  { read: parseDesignText, parse: parseDesign, text: JSON.stringify(demoDesign), law: ofDesign },
  { read: parseCatalogText, parse: parseCatalog, text: golden('catalog-v1.json'), law: ofCatalog },
  { read: parseQuoteText, parse: parseQuoteFile, text: JSON.stringify(QUOTE), law: ofQuote },
  { read: parseRecordText, parse: parseRecord, text: golden('record-v1.json'), law: ofRecord },
] as readonly TextBorder[]

describe('every border', () => {
  fuzz(
    'objects of a host',
    fc.constantFrom(...BORDERS).chain((border) => spoilt(border.sound).map((make) => ({ border, make }))),
    ({ border: { parse, law }, make }, tally) => parseBroken(parse, make(), tally, law),
    { taken: 0.08, refused: 0.4 },
  )

  fuzz(
    'files that were damaged',
    fc.constantFrom(...FILES).chain((file) => damaged(file.text).map((text) => ({ file, text }))),
    ({ file: { read, parse, law }, text }, tally) => parseBroken(read, text, tally, law, parse),
    { taken: 0.05, refused: 0.4 },
  )

  const asked: fc.Arbitrary<QuoteAsked> = fc.record(
    {
      date: fc.constantFrom('2026-03-01', '2024-02-29', '9999-12-31', '0001-01-01'),
      until: fc.constantFrom('2026-03-01', '9999-12-31', '2027-01-01'),
      services: fc.array(
        fc.record(
          {
            code: fc.constantFrom('delivery', 'set-up', 'hours', 'toString', 'none'),
            quantity: fc.constantFrom(0, 1, 0.1, 0.005, 1e-300, 1e6, 33.333333),
          },
          { requiredKeys: ['code'], noNullPrototype: true },
        ),
        { maxLength: 3 },
      ),
      discount: fc.oneof(
        fc.constant(null),
        fc.constantFrom(0, 1, 1e-300, 0.1, 1 / 3).map((share) => ({ share })),
        fc.constantFrom(0, 1, 1e12, 99).map((amount) => ({ amount })),
      ),
      fetched: fc.boolean(),
      untaxed: fc.boolean(),
      other: fc.array(
        fc.record(
          {
            name: fc.string(),
            quantity: fc.constantFrom(0, 1, 1e6, 1e-300, 0.5),
            price: fc.constantFrom(-1e8, -1, 0, 1, 1e8, 333),
            taxed: fc.boolean(),
          },
          { requiredKeys: ['name', 'quantity', 'price'], noNullPrototype: true },
        ),
        { maxLength: 3 },
      ),
    },
    { requiredKeys: ['date'], noNullPrototype: true },
  )
  fuzz(
    'quotes asked for',
    fc.record({ one: anyCase, asked }),
    ({ one: { design, catalog }, asked: wanted }, tally: Tally) =>
      parseBroken(parseAsked, wanted, tally, (value) =>
        papersBroken(
          deriveAtOnce(design, catalog),
          design,
          catalog,
          value,
          textsIn([design, catalog, value]),
        ),
      ),
    { taken: 0.5 },
  )
})
