/** What fell once, each by itself: what it was, the input, and what it did. All keep the laws of the fuzz. */
import { describe, expect, it } from 'vitest'
import {
  applyPatch,
  type Catalog,
  type Design,
  demoCatalog,
  demoDesign,
  type Parsed,
  type PatchOperation,
  parseCatalog,
  parseCatalogText,
  parseDesign,
  parseDesignText,
} from '../../rules/index.ts'
import { parseAsked, parseQuoteFile, quote, quoteFile } from '../../rules/papers.ts'
import { linkOf, readLink } from '../../src/autosave/link.ts'
import { parseMass } from '../../src/units/mass.ts'
import { parseLength } from '../../src/units/parse.ts'
import { parseSpeed } from '../../src/units/speed.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { withOdd } from './support/hostile.ts'
import { dockBroken, found, parseBroken } from './support/laws.ts'

type Keys = (string | number)[]
const keysOf = (path: string): Keys => path.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key))
/** A sound value with others at some places: `a.b.0.c`. */
const changed = (base: unknown, values: Readonly<Record<string, unknown>>): unknown =>
  Object.entries(values).reduce<unknown>((value, [path, thing]) => {
    const keys = keysOf(path)
    return withOdd(value, keys.slice(0, -1), String(keys.at(-1)), thing)
  }, base)
const design = (values: Readonly<Record<string, unknown>>): unknown => changed(demoDesign, values)
const catalog = (values: Readonly<Record<string, unknown>>): unknown => changed(demoCatalog, values)

const demo = deriveAtOnce(demoDesign, demoCatalog)
const asked = (more: object): unknown => ({ date: '2026-03-01', ...more })
const thrower = {
  get x(): never {
    throw new Error('x')
  },
}
const shoal = { wind: { speed: 18, fetch: 4000 }, wake: 0.3 }

const law = {
  design: (value: Design): string[] => dockBroken(value, demoCatalog, found),
  catalog: (value: Catalog): string[] =>
    dockBroken(taken(parseDesign(design({ site: { ...demoDesign.site, ...shoal } }))), value, found),
}
function taken<T>(parsed: Parsed<T>): T {
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}

/** What did no harm, beside its like that did. */
const HELD = 'nothing'
/** What, the input, whether it is taken now, what it did. */
type Find = readonly [what: string, input: unknown, now: 'taken' | 'refused', did: string]

const DESIGNS: readonly Find[] = [
  [
    'half a letter in a name',
    design({ 'site.benchmark': { name: '\ud800', above: 1 } }),
    'taken',
    'derive threw; a page stayed blank',
  ],
  ['half a letter in a key of some shop', design({ note: { '\udc00': 'x\ud83d' } }), 'taken', 'derive threw'],
  ['half a letter in an extra’s code', design({ 'dock.extras': { '\ud800': 1 } }), 'taken', 'derive threw'],
  ['no number in an unknown key', design({ more: Number.NaN }), 'refused', 'derive threw'],
  [
    'Infinity deep in an unknown key',
    design({ more: [{ x: [Number.POSITIVE_INFINITY] }] }),
    'refused',
    'derive threw',
  ],
  ['a getter that throws', design({ more: thrower }), 'refused', 'parse threw'],
  ['a bigint', design({ more: 1n }), 'refused', 'derive threw'],
  ['a function', design({ more: () => 1 }), 'refused', 'taken, and gone after JSON'],
  ['a Date', design({ more: new Date(0) }), 'refused', 'taken as an object; a text after JSON'],
  ['a terminal’s escape in a name', design({ name: '\u001b[2J' }), 'taken', 'passed on to terminals and XML'],
  [
    'a name that turns the words after it',
    design({ name: '\u202e00.1$ \u2066x' }),
    'taken',
    'a paper’s line read backward',
  ],
  ['a wind that is next to nothing', design({ 'site.wind': { speed: 1e-300, fetch: 400 } }), 'taken', HELD],
  [
    'a wind whose square is not quite nothing',
    design({ 'site.wind': { speed: 1e-130, fetch: 400, depth: 2 }, 'site.wake': 0.2 }),
    'taken',
    HELD,
  ],
  ['-0', design({ 'site.wake': -0, 'dock.load': -0, more: -0 }), 'taken', '-0 was not 0 after JSON'],
  [
    'sections named like an object’s own',
    design({
      'dock.plan': [
        { id: '__proto__', on: null },
        { id: 'constructor', on: '__proto__', edge: 'end', with: 'start' },
      ],
    }),
    'taken',
    HELD,
  ],
]

const CATALOGS: readonly Find[] = [
  [
    'half a letter in a part’s name',
    catalog({ 'frames.0.name': 'x\ud800' }),
    'taken',
    'derive threw; a shop’s element stayed blank',
  ],
  ['clamps that slide at nothing', catalog({ 'clamp.slip': 0 }), 'refused', 'a brace of "Infinity %"'],
  [
    'clamps that slide at next to nothing',
    catalog({ 'clamp.slip': 1e-300 }),
    'refused',
    'a brace of "Infinity %"',
  ],
  ['clamps that slide at the least', catalog({ 'clamp.slip': 1 }), 'taken', HELD],
  ['sleeves that slide at nothing', catalog({ 'sleeve.slip': 0 }), 'refused', 'a leg of "Infinity %"'],
  ['a part of a bolt', catalog({ 'rules.barBolts.value': 2.767e-321 }), 'refused', 'a bolt at NaN'],
  [
    'half a bracket',
    catalog({ 'rules.bracketsPerHook.value': 0.5 }),
    'refused',
    'half a piece in the parts list',
  ],
  [
    'a bolt turned by next to nothing',
    catalog({ 'hardware.0.turns.0.from': 1e-7 }),
    'taken',
    'a count card that says "1e-7"',
  ],
  [
    'a brace bolt as thick as its brace',
    catalog({
      hardware: demoCatalog.hardware.map((bolt) =>
        bolt.kind === 'brace-bolt' ? { ...bolt, diameter: 0.1 } : bolt,
      ),
    }),
    'refused',
    'a brace of "Infinity %"',
  ],
  ['a clip that holds nothing', catalog({ 'decking.clip.holds': 0 }), 'taken', HELD],
  [
    'a number past all numbers',
    parseJson(JSON.stringify(demoCatalog).replace('"id":', '"more":1e999,"id":')),
    'refused',
    'derive threw',
  ],
]
function parseJson(text: string): unknown {
  return JSON.parse(text)
}

describe('a design with', () => {
  it.each(DESIGNS)('%s', (_, input, now) => {
    const tally = { taken: 0, refused: 0 }
    expect(parseBroken(parseDesign, input, tally, law.design)).toEqual([])
    expect(tally[now]).toBe(1)
  })
})

describe('a catalog with', () => {
  it.each(CATALOGS)('%s', (_, input, now) => {
    const tally = { taken: 0, refused: 0 }
    expect(parseBroken(parseCatalog, input, tally, law.catalog)).toEqual([])
    expect(tally[now]).toBe(1)
  })
})

describe('a quote', () => {
  it('of a million pieces at a million each is read again (its own file was refused)', () => {
    const wanted = asked({ other: [{ name: 'x', quantity: 1e6, price: 1e8 }] })
    const made = quote(demo, demoDesign, demoCatalog, taken(parseAsked(wanted)))
    expect(made.total).toBeGreaterThan(1e14)
    expect(taken(parseQuoteFile(quoteFile(made, demoDesign))).total).toBe(made.total)
  })

  it('of more than its sums could tell apart is refused (cents were lost)', () => {
    const other = Array(100).fill({ name: 'x', quantity: 1e6, price: 1e8 })
    expect(parseAsked(asked({ other }))).toMatchObject({ ok: false, issues: [{ path: 'other' }] })
    const services = Array(100).fill({ code: 'hours', quantity: 1e6 })
    expect(parseAsked(asked({ services }))).toMatchObject({ ok: false, issues: [{ path: 'services' }] })
  })
})

describe('a link', () => {
  it('with half a letter in it opens (the page stayed blank)', () => {
    // Written by another program: ours writes UTF-8, which has no half letters.
    const text = JSON.stringify(design({ name: 'x' })).replace('"x"', '"x\\ud800"')
    expect(taken(parseDesignText(text)).name).toBe('x\ufffd')
    expect(taken(readLink(linkOf(taken(parseDesignText(text)))!)).name).toBe('x\ufffd')
  })
})

describe('text that is none', () => {
  it.each([undefined, null, 5, {}, 5n])('%s is told (reading it threw)', (text) => {
    for (const read of [parseDesignText, parseCatalogText] as ((text: unknown) => Parsed<unknown>)[])
      expect(read(text)).toMatchObject({ ok: false, issues: [{ path: '' }] })
  })
})

describe('a patch', () => {
  it.each<[string, unknown]>([
    ['a bigint', 1n],
    ['a getter that throws', thrower],
    ['nothing', undefined],
  ])('with %s is refused by name (another error came through, or a key without value)', (_, value) => {
    const patch: PatchOperation[] = [{ op: 'add', path: '/dock/note', value }]
    expect(() => applyPatch(demoDesign, patch)).toThrow(/^applyPatch: "\/dock\/note" with .*; expected/)
  })
})

describe('a typed figure', () => {
  const long = '9'.repeat(310)
  it('of more digits than numbers have is none (it was Infinity)', () => {
    expect(parseMass(long, 'metric')).toBeNull()
    expect(parseSpeed(long, 'metric')).toBeNull()
    expect(parseLength(`${'9'.repeat(307)}km`, 'm').ok).toBe(false)
  })

  it('of minus nothing is 0 (it was -0)', () => {
    expect(parseLength("-0'0", 'ft')).toEqual({ ok: true, meters: 0 })
  })
})
