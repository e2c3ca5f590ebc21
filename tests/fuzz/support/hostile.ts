/** What a host may hand over that no file says, put anywhere in a sound value; and files with bits, ends and values damaged. */
import fc from 'fast-check'

type Keyed = Record<string | number, unknown>
export type Path = readonly (string | number)[]

const revoked = (): unknown => {
  const { proxy, revoke } = Proxy.revocable([], {})
  revoke()
  return proxy
}
const circle = (): unknown => {
  const self: Keyed = {}
  self.self = [self]
  return self
}
const deep = (levels: number): unknown => {
  let at: unknown = 1
  for (let i = 0; i < levels; i++) at = i % 2 ? [at] : { at }
  return at
}
/** Each key of each object leads to the like of it. */
const endless = (): unknown =>
  new Proxy(
    {},
    {
      ownKeys: () => ['a', 'b', 'c'],
      getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
      get: endless,
    },
  )
const refusing = (trap: 'get' | 'ownKeys' | 'getPrototypeOf'): unknown =>
  new Proxy(
    { x: 1 },
    {
      [trap]: () => {
        throw new Error(trap)
      },
    },
  )

const texts = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.constantFrom(
    '\ud800',
    '\udfff x',
    'a\ud83d',
    '\u0000',
    '\u001b[31m',
    '\u202egnp.exe',
    '\u2066',
    '\ufeff',
    '__proto__',
    'toString',
    '',
    'NaN',
    '[object Object]',
    ' ',
    '\n',
    'e\u0301',
    'ﷺ'.repeat(60),
  ),
)
const numbers = fc.oneof(
  fc.double(),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -0, 5e-324, 1e308, 2 ** 53, 1e-7, -1),
)
const ODD: readonly (() => unknown)[] = [
  () => undefined,
  () => null,
  () => 10n,
  () => () => 1,
  () => Symbol('s'),
  () => new Date(0),
  () => new Date(Number.NaN),
  () => new Map([[1, 2]]),
  () => new Set([1]),
  () => new Uint8Array(3),
  () => new ArrayBuffer(3),
  () =>
    new (class Shop {
      rows = 1
    })(),
  () => Object(5),
  () => Object.create({ format: 'leadline/design' }),
  () => Object.create(null),
  () => [1, undefined, 3],
  () => Array(1000),
  () => Array(2 ** 32 - 1),
  () => ({
    get x(): never {
      throw new TypeError('x')
    },
  }),
  () => ({
    get x(): never {
      throw null
    },
  }),
  () => ({ toJSON: () => 'other' }),
  () => ({ valueOf: () => Number.NaN }),
  () => JSON.parse('{"__proto__":{"polluted":1}}'),
  () => ({ constructor: { prototype: { polluted: 1 } } }),
  () => refusing('get'),
  () => refusing('ownKeys'),
  () => refusing('getPrototypeOf'),
  revoked,
  circle,
  endless,
  () => deep(30),
  () => deep(60),
  () => deep(9000),
  () => 'x'.repeat(300_000),
  () => ({ ['k'.repeat(300_000)]: Number.NaN }),
]

/** Made anew for each case: some can be asked only once. */
export const odd: fc.Arbitrary<() => unknown> = fc.oneof(
  { weight: 2, arbitrary: fc.constantFrom(...ODD) },
  { weight: 2, arbitrary: texts.map((text) => () => text) },
  { weight: 2, arbitrary: numbers.map((number) => () => number) },
  { weight: 1, arbitrary: texts.map((text) => () => ({ [text]: text })) },
  { weight: 2, arbitrary: fc.jsonValue().map((value) => () => value) },
)

/** As any newer version or other program may add. */
const harmless: fc.Arbitrary<() => unknown> = fc
  .oneof(texts, fc.integer(), fc.jsonValue({ maxDepth: 2 }))
  .map((value) => () => value)

/** Every place of plain data, what it lies in first. */
export function pathsIn(value: unknown, path: Path = [], out: Path[] = []): Path[] {
  out.push(path)
  if (value !== null && typeof value === 'object')
    for (const [key, entry] of Object.entries(value))
      pathsIn(entry, [...path, Array.isArray(value) ? Number(key) : key], out)
  return out
}

function at(root: unknown, path: Path): unknown {
  return path.reduce<unknown>((value, key) => (value as Keyed)[key], root)
}

/** A copy of plain data with something in place of what is there, or beside it under a key of its own. */
export function withOdd(base: unknown, path: Path, key: string | null, thing: unknown): unknown {
  const copy = structuredClone(base)
  const here = at(copy, path)
  if (key !== null && here !== null && typeof here === 'object') {
    Object.defineProperty(here, key, { value: thing, enumerable: true, configurable: true, writable: true })
    return copy
  }
  if (path.length === 0) return thing
  ;(at(copy, path.slice(0, -1)) as Keyed)[path.at(-1)!] = thing
  return copy
}

/** `base` with one or two places spoilt. */
export const spoilt = (base: unknown): fc.Arbitrary<() => unknown> => {
  const paths = pathsIn(base)
  const one = fc.record({
    path: fc.constantFrom(...paths),
    // Beside what is known most of all: in its place nearly nothing is let in.
    key: fc.oneof(fc.constant(null), fc.constantFrom('more', 'note', 'x y'), texts),
    thing: fc.oneof(odd, harmless),
  })
  return fc.array(one, { minLength: 1, maxLength: 2 }).map((spots) => {
    const make = (): unknown =>
      spots.reduce<unknown>((value, { path, key, thing }, i) => {
        // What a first spot put there may be no plain data any more.
        try {
          return withOdd(value, path, key, thing())
        } catch {
          return i === 0 ? thing() : value
        }
      }, base)
    return Object.assign(make, {
      [fc.toStringMethod]: () =>
        spots.map(({ path, key, thing }) => `${path.join('.')} ${key}: ${String(thing)}`).join('; '),
    })
  })
}

/** Text of a file with something done to it that discs, mails and hands do. */
export const damaged = (text: string): fc.Arbitrary<string> => {
  const bytes = new TextEncoder().encode(text)
  const place = fc.nat({ max: bytes.length - 1 })
  const edited = (change: (copy: Uint8Array) => Uint8Array): string =>
    new TextDecoder().decode(change(bytes.slice()))
  const value = /-?\d+(\.\d+)?([eE][+-]?\d+)?|"[^"\\]*"|true|false|null/g
  const values = [...text.matchAll(value)].map(({ index, 0: found }) => ({ index, found }))
  const some = fc.constantFrom(...values)
  const instead = (one: { index: number; found: string }, by: string): string =>
    text.slice(0, one.index) + by + text.slice(one.index + one.found.length)
  return fc.oneof(
    // Bits that flip.
    fc.array(fc.tuple(place, fc.nat({ max: 7 })), { minLength: 1, maxLength: 4 }).map((flips) =>
      edited((copy) => {
        for (const [i, bit] of flips) copy[i] = copy[i]! ^ (1 << bit)
        return copy
      }),
    ),
    // An end that is cut off, a piece that is gone or there twice.
    place.map((end) => edited((copy) => copy.slice(0, end))),
    fc.tuple(place, fc.nat({ max: 40 })).map(([from, n]) => text.slice(0, from) + text.slice(from + n)),
    fc.tuple(place, fc.nat({ max: 200 })).map(([from, n]) => text.slice(0, from + n) + text.slice(from)),
    // A value of another place, or none that belongs anywhere.
    fc.tuple(some, some).map(([one, other]) => instead(one, other.found)),
    fc
      .tuple(
        some,
        fc.constantFrom(
          '1e999',
          '-1e999',
          '-0',
          '1e-400',
          '"\\ud800"',
          '"\\u0000"',
          '"\\u202e"',
          '{}',
          '[]',
          '[[]]',
          'null',
          '""',
          '1e308',
          '"__proto__"',
          '{"__proto__":1}',
          '0.1e1',
          '00',
        ),
      )
      .map(([one, by]) => instead(one, by)),
  )
}
