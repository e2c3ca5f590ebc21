/**
 * Values that a schema lets in, taken at its edges: the least, the most, nothing, next to nothing. Read from the very schema that the
 * border checks with, so that a new field is tried from its first day.
 */
import fc from 'fast-check'
import type * as v from 'valibot'

/** As much of a schema's inside as is read here. */
interface Inside {
  readonly type: string
  readonly pipe?: readonly (Inside & { readonly requirement?: number })[]
  readonly wrapped?: Inside
  readonly item?: Inside
  readonly items?: readonly Inside[]
  readonly value?: Inside
  readonly key?: Inside | string
  readonly entries?: Readonly<Record<string, Inside>>
  readonly options?: readonly Inside[] | readonly string[]
  readonly literal?: unknown
}

type Path = readonly (string | number)[]
/** Something that can be put in place of what a valid value has there, or added where it has nothing. */
export interface Place {
  readonly path: Path
  readonly schema: Inside
  readonly there: boolean
}

const insideOf = (schema: v.GenericSchema): Inside => schema as unknown as Inside
const isWrapper = ({ type }: Inside): boolean => type === 'optional' || type === 'nullable'
const bound = ({ pipe }: Inside, type: string): number | undefined =>
  pipe?.find((step) => step.type === type)?.requirement

/** Doubles that formulas stumble over, of those that lie between two bounds. */
const EDGES = [0, 5e-324, -5e-324, 1e-300, -1e-300, 1e-12, 1e-7, -1e-7, 1e-6, 0.001, 0.3, 1, -1, 1e6]

function numberIn(schema: Inside): fc.Arbitrary<number> {
  const least = bound(schema, 'min_value') ?? -1e9
  const most = bound(schema, 'max_value') ?? 1e9
  const whole = schema.pipe?.some(({ type }) => type === 'integer') ?? false
  const edges = EDGES.filter((x) => x > least && x < most && (!whole || Number.isInteger(x)))
  const between = whole
    ? fc.integer({ min: Math.ceil(least), max: Math.floor(most) })
    : fc.double({ min: 0, max: 1, noNaN: true }).map((share) => least + (most - least) * share)
  return fc.oneof(fc.constantFrom(least, most, ...edges), between)
}

function textIn(schema: Inside): fc.Arbitrary<string> {
  const most = Math.min(bound(schema, 'max_length') ?? 60, 400)
  return fc
    .string({ minLength: bound(schema, 'min_length') ?? 0, maxLength: most, unit: 'grapheme' })
    .map((text) => text.slice(0, most))
}

/** Any value that the schema lets in, but for texts of a form of their own. */
function valueIn(schema: Inside): fc.Arbitrary<unknown> {
  if (schema.type === 'optional') return valueIn(schema.wrapped!)
  if (schema.type === 'nullable') return fc.option(valueIn(schema.wrapped!))
  switch (schema.type) {
    case 'number':
      return numberIn(schema)
    case 'string':
      return textIn(schema)
    case 'boolean':
      return fc.boolean()
    case 'literal':
      return fc.constant(schema.literal)
    case 'picklist':
      return fc.constantFrom(...(schema.options as readonly string[]))
    case 'array':
      return fc.array(valueIn(schema.item!), { minLength: bound(schema, 'min_length') ?? 0, maxLength: 4 })
    case 'tuple':
      return fc.tuple(...schema.items!.map(valueIn))
    case 'record':
      return fc.dictionary(fc.constantFrom('a', 'b', 'toString'), valueIn(schema.value!), {
        maxKeys: 2,
        noNullPrototype: true,
      })
    case 'variant':
    case 'union':
      return fc.oneof(...(schema.options as readonly Inside[]).map(valueIn))
    case 'loose_object':
    case 'strict_object':
    case 'object': {
      const keys = Object.entries(schema.entries!)
      return fc.record(Object.fromEntries(keys.map(([key, entry]) => [key, valueIn(entry)])), {
        requiredKeys: keys.filter(([, { type }]) => type !== 'optional').map(([key]) => key),
        noNullPrototype: true,
      })
    }
    default:
      throw new Error(`valueIn: no values of ${schema.type} known`)
  }
}

/** Texts are left alone (codes lead from one place to another); so are lists as a whole. */
const CHANGED = new Set(['number', 'boolean', 'picklist'])

/** Every place of a valid value where the schema lets something else be. */
function placesIn(schema: Inside, value: unknown, path: Path = [], out: Place[] = []): Place[] {
  const within = (inner: Inside | undefined, key: string | number): void => {
    if (inner) placesIn(inner, (value as Record<string | number, unknown>)[key], [...path, key], out)
  }
  if (isWrapper(schema)) {
    out.push({ path, schema, there: value !== undefined })
    if (value !== undefined && value !== null) placesIn(schema.wrapped!, value, path, out)
  } else if (CHANGED.has(schema.type)) out.push({ path, schema, there: true })
  else if (schema.type === 'array')
    for (let i = 0; i < (value as unknown[]).length; i++) within(schema.item, i)
  else if (schema.type === 'tuple') schema.items!.forEach(within)
  else if (schema.type === 'record') for (const key of Object.keys(value as object)) within(schema.value, key)
  else if (schema.type === 'variant') {
    const tag = schema.key as string
    const own = (schema.options as readonly Inside[]).find(
      ({ entries }) => entries![tag]!.literal === (value as Record<string, unknown>)[tag],
    )
    placesIn(own!, value, path, out)
  } else for (const [key, entry] of Object.entries(schema.entries ?? {})) within(entry, key)
  return out
}

/** What is worked out grows with these: at their most a case would take minutes, which other tests are about. */
const FEW: Readonly<Record<string, number>> = { sections: 9, startStep: 1 }

const GONE = Symbol('gone')
function put(root: unknown, path: Path, value: unknown): void {
  let at = root as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) {
    const next = at[key]
    // An earlier change took away what this one lies in.
    if (next === null || typeof next !== 'object') return
    at = next as Record<string | number, unknown>
  }
  const last = path.at(-1)!
  if (value === GONE) delete at[last]
  else at[last] = typeof value === 'number' && last in FEW ? Math.min(value, FEW[last]!) : value
}

/** `base`, with one to `most` of its places at the edges of what the schema lets in. */
export function atEdges<T>(schema: v.GenericSchema, base: T, most = 4): fc.Arbitrary<T> {
  const places = placesIn(insideOf(schema), base)
  const change = fc
    .constantFrom(...places)
    .chain(({ path, schema: there, there: given }) =>
      (there.type === 'optional' && given
        ? fc.oneof({ weight: 1, arbitrary: fc.constant(GONE) }, { weight: 5, arbitrary: valueIn(there) })
        : valueIn(there)
      ).map((value) => ({ path, value })),
    )
  return fc.array(change, { minLength: 1, maxLength: most }).map((changes) => {
    const copy = structuredClone(base)
    for (const { path, value } of changes) put(copy, path, value)
    return copy
  })
}
