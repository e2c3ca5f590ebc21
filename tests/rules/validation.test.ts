/** What a host hands over becomes plain data of the engine's own, whatever it is; nothing of it throws later. */
import { describe, expect, it } from 'vitest'
import {
  type Catalog,
  type Design,
  demoCatalog,
  demoDesign,
  derive,
  type Parsed,
  parseCatalog,
  parseDesign,
  parseDesignText,
  rowsOfList,
} from '../../rules/index.ts'
import { parseAsked, parseQuoteFile, parseQuoteText, quote, quoteFile } from '../../rules/papers.ts'
import { parseRecord } from '../../rules/record/parse.ts'
import { plainOf } from '../../rules/validation.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import record from './golden/record-v1.json' with { type: 'json' }

const HALF = '\ud800'
const dock = deriveAtOnce(demoDesign, demoCatalog)
const file = quoteFile(quote(dock, demoDesign, demoCatalog, { date: '2026-03-01' }), demoDesign)

type Loose = Record<string, unknown>
const design = (more: Loose = {}, site: Loose = {}): Loose => ({
  ...structuredClone(demoDesign),
  ...more,
  site: { ...structuredClone(demoDesign.site), ...site },
})
const taken = <T>(parsed: Parsed<T>): T => {
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}
const pathsOf = (parsed: Parsed<unknown>): string[] =>
  parsed.ok ? [] : parsed.issues.map(({ path }) => path)

/** Every border, each with a sound input that takes one more key. */
const BORDERS: readonly [string, (input: unknown) => Parsed<unknown>, Loose][] = [
  ['parseDesign', parseDesign, design()],
  ['parseCatalog', parseCatalog, structuredClone(demoCatalog) as unknown as Loose],
  ['parseQuoteFile', parseQuoteFile, structuredClone(file) as unknown as Loose],
  ['parseAsked', parseAsked, { date: '2026-03-01' }],
  ['parseRecord', parseRecord, structuredClone(record) as unknown as Loose],
]

describe('half a letter', () => {
  it('in a name opens as U+FFFD, is told, and the dock has its check code', () => {
    const parsed = parseDesign(design({}, { benchmark: { name: `Stump ${HALF}`, above: 1 } }))
    expect(taken(parsed).site.benchmark!.name).toBe('Stump \ufffd')
    expect(parsed.ok && parsed.notices).toEqual([
      { path: 'site.benchmark.name', message: 'letters that cannot be shown; \ufffd stands in their place' },
    ])
    expect(derive(taken(parsed), demoCatalog).fingerprint.all).toMatch(/^[0-9a-f]{64}$/)
  })

  it('in a key, known or not, at any depth, is mended too', () => {
    const parsed = parseDesign(design({ [`x${HALF}`]: [{ deep: { [HALF]: HALF } }] }))
    expect(taken(parsed)).toMatchObject({ 'x\ufffd': [{ deep: { '\ufffd': '\ufffd' } }] })
    derive(taken(parsed), demoCatalog)
  })

  it('in two keys that come out alike is refused: neither value may be lost', () => {
    const parsed = parseDesign(design({ more: { [HALF]: 1, '\ud801': 2 } }))
    expect(parsed).toMatchObject({ ok: false, issues: [{ path: 'more["\ufffd"]' }] })
  })

  it('in a catalog’s codes keeps them together', () => {
    const text = JSON.stringify(demoCatalog).replaceAll('"pipe-2"', '"pipe\\ud800"')
    const catalog = taken(parseCatalog(JSON.parse(text)))
    expect(Object.keys(catalog.stock)).toContain('pipe\ufffd')
    derive(demoDesign, catalog)
  })

  it('leaves whole letters of two units alone', () => {
    expect(taken(parseDesign(design({ name: 'Bucht 🛶' }))).name).toBe('Bucht 🛶')
  })
})

describe('text', () => {
  it('keeps tabs and line breaks, and no other control character', () => {
    const notes = 'one\r\n\ttwo\u0000\u001b[2J\u0085\uffff'
    expect(taken(parseDesign(design({ job: { notes } }))).job!.notes).toBe(
      'one\r\n\ttwo\ufffd\ufffd[2J\ufffd\ufffd',
    )
  })

  it('turns no words around it; marks of right-to-left names stay', () => {
    const name = '\u202eCove\u202c \u2066x\u2069 \u05d0\u200f!'
    expect(taken(parseDesign(design({ name }))).name).toBe('Cove x \u05d0\u200f!')
  })

  it('in a message is one line, short, whatever the key or value', () => {
    const key = `\n\u2028\u200f"${'k'.repeat(100_000)}`
    for (const input of [
      design({ [key]: Number.NaN }),
      design({ more: { constructor: key } }),
      design({ name: `${'🛶'.repeat(200)}\n` }),
      { format: `x\n\u2029\u200f${key}` },
    ]) {
      const parsed = parseDesign(input)
      expect(parsed.ok).toBe(false)
      for (const { path, message } of parsed.ok ? [] : parsed.issues) {
        expect(`${path}: ${message}`).not.toMatch(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u200f]/u)
        expect(`${path}: ${message}`.length).toBeLessThan(400)
      }
    }
  })

  it('that is no JSON is told without what a terminal would obey', () => {
    const parsed = parseDesignText('{"a": \u001b[2J\u202e}')
    expect(parsed.ok ? '' : parsed.issues[0]!.message).not.toMatch(/[\p{Cc}\u202e]/u)
    expect(parseDesignText(5 as unknown as string)).toMatchObject({ ok: false })
    expect(parseQuoteText(undefined as unknown as string)).toMatchObject({ ok: false })
  })
})

const circle: Loose = {}
circle.self = { circle }
const revoked = (): unknown => {
  const { proxy, revoke } = Proxy.revocable({}, {})
  revoke()
  return proxy
}
const wide = (depth: number): unknown => (depth === 0 ? 1 : Array(10).fill(wide(depth - 1)))

/** No JSON says these. */
const ODD: readonly [string, () => unknown, string][] = [
  ['NaN', () => Number.NaN, 'more'],
  ['Infinity', () => Number.POSITIVE_INFINITY, 'more'],
  ['a number of JSON text past all numbers', () => JSON.parse('{"x":1e999}'), 'more.x'],
  ['a bigint', () => 5n, 'more'],
  ['a function', () => () => 1, 'more'],
  ['a symbol', () => Symbol('x'), 'more'],
  ['a Date', () => new Date(0), 'more'],
  ['a Map', () => new Map([[1, 2]]), 'more'],
  ['a typed array', () => new Float64Array(2), 'more'],
  [
    'a class',
    () =>
      new (class Shop {
        x = 1
      })(),
    'more',
  ],
  ['a String object', () => Object('x'), 'more'],
  ['an inheritance', () => Object.create({ x: 1 }), 'more'],
  ['a circle', () => circle, 'more.self.circle'],
  ['a list of nothing', () => [1, undefined], 'more[1]'],
  ['a sparse list', () => Array(3), 'more[0]'],
  ['a sparse list of four billion', () => Array(2 ** 32 - 1), 'more'],
  [
    'a getter that throws',
    () => ({
      get x(): never {
        throw new Error('no')
      },
    }),
    'more.x',
  ],
  [
    'a getter that throws nothing at all',
    () => ({
      get x(): never {
        throw undefined
      },
    }),
    'more.x',
  ],
  [
    'a proxy that throws',
    () =>
      new Proxy(
        {},
        {
          ownKeys: () => {
            throw new Error('no')
          },
        },
      ),
    'more',
  ],
  ['a list that lies about its length', () => new Proxy([], { get: () => 1e300 }), 'more'],
  ['a revoked proxy', revoked, 'more'],
  ['ten million shared values', () => wide(7), 'more'],
  ['nine million letters', () => 'x'.repeat(9_000_000), 'more'],
  ['a key of nine million letters', () => ({ ['x'.repeat(9_000_000)]: 1 }), 'more'],
]

describe.each(BORDERS)('%s', (_, parse, sound) => {
  it.each(ODD)('refuses %s in a key that it does not know, with the place', (_what, odd, path) => {
    const [first, ...rest] = pathsOf(parse({ ...sound, more: odd() }))
    expect(first?.startsWith(path), first).toBe(true)
    expect(rest.length).toBeLessThan(50)
  })

  it.each(ODD)('never throws at %s', (_what, odd) => {
    expect(parse(odd()).ok).toBe(false)
  })

  it('takes what the host later changes for the host’s own', () => {
    const given = structuredClone({ ...sound, more: { list: [{ x: 1 }] } })
    const parsed = parse(given)
    const before = JSON.stringify(taken(parsed))
    for (const value of Object.values(given)) spoil(value)
    expect(JSON.stringify(taken(parsed))).toBe(before)
  })

  it('takes an entry that is undefined for none, a -0 for 0, and is then plain', () => {
    const value = taken(parse({ ...sound, more: undefined, less: -0 })) as Loose
    expect('more' in value).toBe(false)
    expect(Object.is(value.less, 0)).toBe(true)
    expect(JSON.parse(JSON.stringify(value))).toStrictEqual(value)
  })

  it('takes objects without a prototype, of another frame, and behind a proxy', () => {
    const bare = Object.assign(Object.create(null), sound)
    expect(parse(bare).ok).toBe(true)
    expect(parse(new Proxy(sound, {})).ok).toBe(true)
  })
})

/** Everything that an object holds is overwritten. */
function spoil(value: unknown): void {
  if (value === null || typeof value !== 'object') return
  for (const [key, entry] of Object.entries(value)) {
    spoil(entry)
    ;(value as Loose)[key] = HALF
  }
}

describe('a known place', () => {
  it('says what belongs there, and once', () => {
    const soundings = demoDesign.site.soundings.map((s, i) => (i === 1 ? { ...s, depth: 5n } : s))
    expect(parseDesign(design({}, { soundings }))).toMatchObject({
      ok: false,
      issues: [{ path: 'site.soundings[1].depth', message: '5; expected a number' }],
    })
  })

  it('that reads differently each time is read once', () => {
    let reads = 0
    const input = {
      ...design(),
      get name() {
        return reads++ === 0 ? 'first' : HALF
      },
    }
    expect(taken(parseDesign(input)).name).toBe('first')
    expect(reads).toBe(1)
  })

  it('of a hundred thousand bad entries is told with fifty issues, of more as too long', () => {
    const many = (n: number): unknown => design({}, { soundings: Array(n).fill(0) })
    expect(pathsOf(parseDesign(many(100_000))).length).toBe(50)
    expect(pathsOf(parseDesign(many(100_001)))).toEqual(['site.soundings'])
  })
})

describe('a packing list', () => {
  it.each(ODD)('of %s is told, not thrown at', (_, odd) => {
    expect(rowsOfList(odd()).ok).toBe(false)
    expect(rowsOfList({ groups: [{ rows: [odd()] }] }).ok).toBe(false)
  })

  it('that is nothing is told', () => {
    expect(rowsOfList(null).ok).toBe(false)
    expect(rowsOfList(undefined).ok).toBe(false)
  })
})

it('plain data is as it was', () => {
  for (const value of [demoDesign, demoCatalog, file] as readonly (Design | Catalog | object)[])
    expect(plainOf(value)).toStrictEqual({ value, faults: [], odd: [], notices: [] })
})
