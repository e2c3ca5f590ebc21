/**
 * Whatever comes from outside as a text or a file, damaged in ten thousand ways in the long run: links, catalogs, records, words, requests, square
 * codes, archives.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { deflateSync, strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import {
  demoCatalog,
  demoDesign,
  derive,
  type Parsed,
  parseCatalog,
  parseCatalogText,
  parseDesign,
  parseRequest,
  parseRequestText,
} from '../../rules/index.ts'
import { parseRecord, parseRecordText } from '../../rules/record/index.ts'
import { parseLanguageText } from '../../rules/words/language-file.ts'
import { linkOf, readLink } from '../../src/autosave/link.ts'
import { codeReader, recordCodes } from '../../src/record-sharing/codes.ts'
import { readRecordFile } from '../../src/record-sharing/file.ts'
import { readRecordLink, recordLink } from '../../src/record-sharing/link.ts'
import { demoRecord, oldDock, withNotes } from '../record-keeping/sample-record.ts'
import metricFile from '../support/metric-shop.json' with { type: 'json' }
import { PSEUDO_WORDS } from '../support/pseudo-language.ts'
import { isDeep, runs } from '../support/runs.ts'
import { damaged } from './support/hostile.ts'
import { changedSince, globals, type Outside, outsideBroken, SOON } from './support/outside.ts'
import type { Tally } from './support/runs.ts'

/** Ten thousand of each in the long run. */
const CASES = isDeep ? runs(500) : 60
const SEED = Number(process.env.LEADLINE_SEED ?? 16_061)

const golden = (name: string): string =>
  readFileSync(join(import.meta.dirname, '../rules/golden', name), 'utf8')
const { fingerprint, totals } = derive(demoDesign, demoCatalog)
const REQUEST = JSON.stringify({
  ...{ format: 'leadline/request', version: 1, id: 'r-1', at: '2026-05-01T12:00:00.000Z', reference: 'r-1' },
  ...{
    catalog: { id: demoCatalog.id, version: demoCatalog.edition },
    fingerprint,
    totals,
    design: demoDesign,
  },
  contact: { name: 'A. Example', contact: 'a@example.org', note: '', phone: '555 0100' },
  ...{ wants: ['delivery'], consent: { text: 'We keep it for a year.', ticked: true } },
  ...{ link: 'https://shop.example/dock#leadline=abc', picture: 'data:image/jpeg;base64,AAAA' },
})
const WORDS = JSON.stringify({ format: 'leadline/words', version: 1, lang: 'qps', words: PSEUDO_WORDS })
const RECORD = withNotes(oldDock(), 3)

const text = <T>(
  parse: (text: string) => Parsed<T>,
  again?: (input: unknown) => Parsed<T>,
): Outside<T, string> => ({ parse, ...(again && { again }), size: (input) => input.length })

/** Of what is packed: with a letter gone, one changed, or another text packed as it should be. */
const packedOf = (whole: string, prefix: string, inside: string): fc.Arbitrary<string> => {
  const place = fc.integer({ min: 0, max: whole.length - 1 })
  const pack = (said: string): string =>
    prefix + Buffer.from(deflateSync(strToU8(said))).toString('base64url')
  return fc.oneof(
    fc.constant(whole),
    place.map((end) => whole.slice(0, end)),
    fc
      .tuple(place, fc.constantFrom(...'AZaz09-_=+% \u00e9\ud800'))
      .map(([i, by]) => whole.slice(0, i) + by + whole.slice(i + 1)),
    damaged(inside).map(pack),
    fc.jsonValue().map((value) => pack(JSON.stringify(value))),
    // Small as it comes, and a flood when it is unpacked.
    fc.constantFrom('[', '{"a":', ' ', '"').map((piece) => pack(piece.repeat(12e6 / piece.length))),
    fc.string({ unit: 'binary' }),
  )
}
const files = (...whole: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...whole).chain(damaged) },
    { weight: 1, arbitrary: fc.constantFrom(...whole) },
    {
      weight: 1,
      arbitrary: fc.oneof(
        fc.string({ unit: 'binary' }),
        fc.json(),
        fc.constantFrom('['.repeat(1e5), '{"a":'.repeat(5e4)),
      ),
    },
  )

const KINDS: readonly (readonly [string, Outside<unknown, string>, fc.Arbitrary<string>])[] = [
  [
    'links to designs',
    text(readLink, parseDesign),
    packedOf(linkOf(demoDesign)!, '#leadline=', JSON.stringify(demoDesign)),
  ],
  [
    'catalogs',
    text(parseCatalogText, parseCatalog),
    files(golden('catalog-v1.json'), JSON.stringify(metricFile)),
  ],
  [
    'records',
    text(parseRecordText, parseRecord),
    files(golden('record-v1.json'), JSON.stringify(demoRecord())),
  ],
  ['words', text(parseLanguageText), files(WORDS)],
  ['requests', text(parseRequestText, parseRequest), files(REQUEST)],
  [
    'links to records',
    text(readRecordLink),
    packedOf(recordLink(RECORD)!, '#leadline-record=', JSON.stringify(RECORD)),
  ],
]

const options = (i: number) => ({ seed: SEED + i, numRuns: CASES, endOnFailure: true })
const both = ({ taken, refused }: Tally): void => {
  expect(taken).toBeGreaterThan(0)
  expect(refused).toBeGreaterThan(0)
}

describe('what comes from outside', () => {
  it.each(KINDS.map((kind, i) => [...kind, i] as const))(`%s (${CASES} cases)`, (_, border, cases, i) => {
    const tally: Tally = { taken: 0, refused: 0 }
    const before = globals()
    fc.assert(
      fc.property(cases, (input) => {
        expect(outsideBroken(border, input, tally, before)).toEqual([])
      }),
      options(i),
    )
    both(tally)
  })

  it(`square codes (${CASES} cases)`, () => {
    const codes = recordCodes(RECORD)!
    const before = globals()
    const tally: Tally = { taken: 0, refused: 0 }
    const shown = Array.from({ length: codes.count * 2 }, (_, i) => codes.text(i))
    const one = fc.oneof(
      { weight: 6, arbitrary: fc.constantFrom(...shown) },
      {
        weight: 1,
        arbitrary: fc
          .constantFrom(...shown)
          .chain((code) =>
            fc.nat({ max: code.length - 1 }).map((i) => `${code.slice(0, i)}0${code.slice(i + 1)}`),
          ),
      },
      { weight: 1, arbitrary: fc.string({ unit: 'binary' }).map((said) => `LL1:${said}`) },
    )
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: codes.count * 4 }), (seen) => {
        const read = codeReader()
        const begun = performance.now()
        const told = seen.map(read)
        const took = performance.now() - begun
        if (took > SOON * seen.length) expect(took).toBeLessThan(SOON * seen.length)
        for (const one of told)
          if (one.state === 'done') {
            // What adds up is the record as it was: a frame that was misread is none.
            expect(one.arrived.ok && one.arrived.value.record).toEqual(RECORD)
            tally.taken++
          } else tally.refused++
        expect(changedSince(before)).toEqual([])
      }),
      options(10),
    )
    both(tally)
  })

  it(`files of records (${CASES} cases)`, async () => {
    const inside = JSON.stringify(RECORD)
    const whole = zipSync({ 'record.json': strToU8(inside) })
    const archives = fc.oneof(
      fc.constant(whole),
      fc
        .array(fc.tuple(fc.nat({ max: whole.length - 1 }), fc.nat({ max: 255 })), {
          minLength: 1,
          maxLength: 4,
        })
        .map((spots) => {
          const copy = whole.slice()
          for (const [i, byte] of spots) copy[i] = byte
          return copy
        }),
      fc.nat({ max: whole.length }).map((end) => whole.slice(0, end)),
      damaged(inside).map((said) => zipSync({ 'record.json': strToU8(said) })),
      damaged(inside).map((said) => strToU8(said)),
      fc.uint8Array().map((bytes) => Uint8Array.of(0x50, 0x4b, ...bytes)),
    )
    const before = globals()
    const tally: Tally = { taken: 0, refused: 0 }
    await fc.assert(
      fc.asyncProperty(archives, async (bytes) => {
        const read = await readRecordFile(new Blob([bytes.slice()]))
        if (read.ok) tally.taken++
        else tally.refused++
        const again = read.ok ? parseRecord(read.value.record) : read
        expect([again.ok, changedSince(before)]).toEqual([read.ok, []])
      }),
      options(11),
    )
    both(tally)
  })
})

describe('each of these laws', () => {
  const tally: Tally = { taken: 0, refused: 0 }
  const broken = (parse: (input: string) => Parsed<unknown>): string =>
    outsideBroken(text(parse), '{}', tally, globals()).join()
  const taken = { ok: true, value: 1, notices: [] } as const
  it('tells an exception', () => {
    expect(
      broken(() => {
        throw new Error('fell')
      }),
    ).toMatch(/threw Error: fell/)
  })
  it('tells what takes too long, every time', () => {
    const wait = (): Parsed<unknown> => {
      const end = performance.now() + SOON + 20
      while (performance.now() < end);
      return taken
    }
    expect(broken(wait)).toMatch(/^took 2\d\d ms$/)
  })
  it('tells a global that was changed, and put back', () => {
    const before = globals()
    Object.defineProperty(Object.prototype, 'polluted', { value: 1, configurable: true, writable: true })
    expect(changedSince(before)).toEqual(['Object.prototype.polluted is another'])
    Reflect.deleteProperty(Object.prototype, 'polluted')
    const { parse } = JSON
    JSON.parse = (said: string) => parse(said)
    expect(changedSince(before)).toEqual(['JSON.parse is another'])
    JSON.parse = parse
    expect(changedSince(before)).toEqual([])
  })
  it('tells a refusal without a reason, and a value that is not plain', () => {
    expect(broken(() => ({ ok: false, issues: [] }))).toMatch(/no reason/)
    expect(broken(() => ({ ...taken, value: new (class Shop {})() }))).toMatch(/not plain/)
  })
})
