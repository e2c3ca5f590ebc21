/** The laws of the fuzz, tried: each finds what it is there for. */
import { describe, expect, it } from 'vitest'
import {
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  type Parsed,
  parseDesign,
} from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { uncleanIn } from './support/clean.ts'
import { dockBroken, parseBroken } from './support/laws.ts'
import { SUM } from './support/runs.ts'

const tally = { taken: 0, refused: 0 }
const gives = (value: unknown) => (): Parsed<unknown> => ({ ok: true, value, notices: [] })

it('a thousand cases are a thousand', () => {
  expect(SUM).toBe(1000)
})

describe('of a border', () => {
  it.each<[string, () => Parsed<unknown>, RegExp]>([
    [
      'an exception',
      () => {
        throw new Error('no')
      },
      /parse threw Error: no/,
    ],
    [
      'exceptions that are nothing',
      () => {
        throw undefined
      },
      /parse threw undefined/,
    ],
    ['what JSON does not keep', gives({ x: undefined }), /not plain/],
    ['a number that is none', gives({ x: Number.NaN }), /not plain/],
    ['a -0', gives({ x: -0 }), /not plain/],
    ['half a letter', gives({ x: ['\ud800'] }), /not fit/],
    ['half a letter in a key', gives({ '\ud800': 1 }), /not fit/],
    ['a control character', gives('\u0007'), /not fit/],
    ['no issues', () => ({ ok: false, issues: [] }), /0 issues/],
    [
      'an issue that is two lines',
      () => ({ ok: false, issues: [{ path: '', message: 'a\n; expected b', expected: 'b', received: 'a' }] }),
      /one harmless line/,
    ],
    [
      'an issue that expects nothing',
      () => ({ ok: false, issues: [{ path: '', message: 'wrong', expected: '', received: 'a' }] }),
      /expects nothing/,
    ],
  ])('%s is found', (_, parse, found) => {
    expect(parseBroken(parse, null, tally).join('\n')).toMatch(found)
  })

  it('another value when asked again is found, and a refusal', () => {
    let n = 0
    expect(parseBroken(() => gives(n++)(), null, tally).join()).toMatch(/another value/)
    const once = (): Parsed<unknown> =>
      n++ % 2
        ? gives(1)()
        : { ok: false, issues: [{ path: 'x', message: 'a; expected b', expected: 'b', received: 'a' }] }
    n = 1
    expect(parseBroken(once, null, tally).join()).toMatch(/refused when asked again/)
  })
})

describe('of a dock', () => {
  const sound = deriveAtOnce(demoDesign, demoCatalog)
  const broken = (change: (dock: Dock) => object): string =>
    dockBroken(demoDesign, demoCatalog, (design: Design, catalog: Catalog) => {
      const dock = deriveAtOnce(design, catalog)
      return { ...dock, ...change(dock) }
    }).join('\n')

  it('a sound one keeps them', () => {
    expect(broken(() => ({}))).toBe('')
  })

  it.each<[string, (dock: Dock) => object, RegExp]>([
    [
      'a number that is none, deep in a placement',
      ({ placements }) => ({
        placements: [{ ...placements[0]!, at: [0, Number.NaN, 0] }, ...placements.slice(1)],
      }),
      /placements\[0\]\.at\[1\]: NaN/,
    ],
    [
      'an infinite reason',
      ({ reasons }) => ({
        reasons: {
          ...reasons,
          totals: [{ ...reasons.totals[0]!, result: { value: Number.POSITIVE_INFINITY, unit: 'kg' } }],
        },
      }),
      /Infinity/,
    ],
    ['a -0', ({ legs }) => ({ legs: [{ ...legs[0]!, y: -0 }, ...legs.slice(1)] }), /-0/],
    [
      'a text of a slip',
      ({ findings }) => ({ findings: [{ ...sound.findings[0]!, ...findings[0], text: 'uses NaN % of it' }] }),
      /NaN %/,
    ],
    [
      'half a piece',
      ({ parts }) => ({ parts: [{ ...parts[0]!, quantity: 0.5 }, ...parts.slice(1)] }),
      /a row of/,
    ],
    ['a price of half a cent', ({ totals }) => ({ totals: { ...totals, price: 0.5 } }), /a price of/],
    [
      'another check code',
      ({ fingerprint }) => ({ fingerprint: { ...fingerprint, all: '0'.repeat(64) } }),
      /another check code/,
    ],
  ])('%s is found', (_, change, found) => {
    expect(broken(change)).toMatch(found)
  })

  it('an exception is found', () => {
    const far = (): Dock => {
      throw new Error('derive fell')
    }
    expect(dockBroken(demoDesign, demoCatalog, far).join()).toMatch(/derive threw Error: derive fell/)
  })

  it('words of a slip are the user’s own where the user wrote them', () => {
    expect(uncleanIn('Cove NaN', new Set(['Cove NaN']))).toEqual([])
    expect(uncleanIn('Cove NaN is NaN', new Set(['Cove NaN']))).toHaveLength(1)
    expect(uncleanIn(['2e+5', '1.5e-7 m', 's2 4e82', '[object Object]'])).toHaveLength(3)
  })

  it('a design is taken by its own border', () => {
    expect(parseBroken(parseDesign, demoDesign, tally)).toEqual([])
  })
})
