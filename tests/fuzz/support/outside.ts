/** What holds of anything that comes from outside: a typed error or a valid value, soon, and no global is another afterwards. */
import { isDeepStrictEqual } from 'node:util'
import type { Parsed } from '../../../rules/index.ts'
import { parseBroken } from './laws.ts'
import type { Tally } from './runs.ts'

/** Most that an input of ordinary size may take, ms. */
export const SOON = 200
/** Characters of such an input. */
const ORDINARY = 300_000

/** What every program shares. Its own keys and values tell whether anything of it was changed. */
const SHARED: readonly (readonly [string, object])[] = [
  ['globalThis', globalThis],
  ...[
    Object,
    Array,
    String,
    Number,
    Boolean,
    Function,
    Promise,
    Map,
    Set,
    Date,
    RegExp,
    Error,
    Uint8Array,
  ].flatMap((one): [string, object][] => [
    [one.name, one],
    [`${one.name}.prototype`, one.prototype as object],
  ]),
  ['JSON', JSON],
  ['Math', Math],
  ['Reflect', Reflect],
]

type Kept = readonly (readonly [string, ReadonlyMap<PropertyKey, unknown>])[]

// Node puts some of them there when they are first asked for.
for (const key of Reflect.ownKeys(globalThis)) Reflect.get(globalThis, key)

/** A getter is told by itself: to call it may do something. */
export const globals = (): Kept =>
  SHARED.map(([name, one]) => [
    name,
    new Map(
      Reflect.ownKeys(one).map((key) => {
        const own = Reflect.getOwnPropertyDescriptor(one, key)
        return [key, own && 'value' in own ? own.value : own?.get]
      }),
    ),
  ])

export function changedSince(before: Kept): string[] {
  const now = globals()
  return before.flatMap(([name, was], i) => {
    const is = now[i]![1]
    return [...new Set([...was.keys(), ...is.keys()])]
      .filter((key) => was.has(key) !== is.has(key) || !Object.is(was.get(key), is.get(key)))
      .map((key) => `${name}.${String(key)} is another`)
  })
}

/** What takes too long is asked again: a machine that does something else meanwhile is not what is looked for. */
function slow(act: () => unknown, first: number): string[] {
  let least = first
  for (let i = 0; i < 2 && least > SOON; i++) {
    const begun = performance.now()
    act()
    least = Math.min(least, performance.now() - begun)
  }
  return least > SOON ? [`took ${Math.round(least)} ms`] : []
}

export interface Outside<T, I> {
  readonly parse: (input: I) => Parsed<T>
  /** What takes a value again; absent: it is read but once. */
  readonly again?: (input: unknown) => Parsed<T>
  readonly size: (input: I) => number
}

/** `before`: the globals, as they were before all cases. */
export function outsideBroken<T, I>(
  { parse, again, size }: Outside<T, I>,
  input: I,
  tally: Tally,
  before: Kept,
): string[] {
  const begun = performance.now()
  let parsed: Parsed<T>
  try {
    parsed = parse(input)
  } catch (error) {
    return [`threw ${String(error)}`]
  }
  const took = performance.now() - begun
  const late = took > SOON && size(input) <= ORDINARY ? slow(() => parse(input), took) : []
  const valid = again
    ? parseBroken(
        () => parsed,
        input,
        tally,
        () => [],
        again,
      )
    : plainBroken(parsed, tally)
  return [...late, ...valid, ...changedSince(before)]
}

function plainBroken(parsed: Parsed<unknown>, tally: Tally): string[] {
  if (parsed.ok) tally.taken++
  else tally.refused++
  if (!parsed.ok) return parsed.issues.length > 0 ? [] : ['refused, and no reason']
  return isDeepStrictEqual(structuredClone(parsed.value), parsed.value) ? [] : ['not plain data']
}
