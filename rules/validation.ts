/**
 * The border: unknown input meets a schema here and becomes a valid value or issues that name the path, the value and what was
 * expected. Never throws; inside the engine there are no further checks of shape.
 */
import * as v from 'valibot'
import { type Issue, issue, type Notice, type PathKey, pathOf, show } from './issue.ts'
import { MOST_ISSUES, type Plain } from './plain-data.ts'

export { type Issue, issue, type Notice, show } from './issue.ts'
export { type Plain, plainOf } from './plain-data.ts'

/** What a parser gives: the value, with what was mended on the way; or what is wrong with it, never an exception. */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T; readonly notices: readonly Notice[] }
  | { readonly ok: false; readonly issues: readonly Issue[] }

function fromSchema(raw: v.BaseIssue<unknown>): Issue {
  const keys = (raw.path ?? []).map((item) => item.key as PathKey)
  const got = show(raw.input)
  const requirement = (raw as { requirement?: unknown }).requirement
  const expected: Record<string, string> = {
    min_value: `at least ${requirement}`,
    max_value: `at most ${requirement}`,
    min_length: `at least ${requirement} ${typeof raw.input === 'string' ? 'characters' : 'entries'}`,
    max_length: `at most ${requirement} ${typeof raw.input === 'string' ? 'characters' : 'entries'}`,
    max_entries: `at most ${requirement} entries`,
    integer: 'a whole number',
    regex: raw.message,
    number: 'a number',
    string: 'text',
    boolean: 'true or false',
    array: 'a list',
    loose_object: raw.expected === 'Object' ? 'an object' : 'this key',
    record: 'an object',
  }
  const what =
    expected[raw.type] ??
    String(raw.expected ?? raw.message)
      .replace(/[()]/g, '')
      .replaceAll(' | ', ' or ')
  return issue(pathOf(keys), got, what)
}

type AnySchema = v.GenericSchema & { readonly [key: string]: unknown }

/** Paths of keys that the schema does not name, at most `most` of them. */
function unknownKeys(schema: AnySchema, input: unknown, most = 100): string[] {
  const found: string[] = []
  const keys: PathKey[] = []
  const walk = (s: AnySchema, value: unknown): void => {
    if (found.length >= most || value === null || typeof value !== 'object') return
    const enter = (inner: AnySchema, key: PathKey, entry: unknown): void => {
      if (entry === null || typeof entry !== 'object') return
      keys.push(key)
      walk(inner, entry)
      keys.pop()
    }
    if ('wrapped' in s) walk(s.wrapped as AnySchema, value)
    else if (s.type === 'array')
      (value as unknown[]).forEach((entry, i) => {
        enter(s.item as AnySchema, i, entry)
      })
    else if (s.type === 'record')
      for (const [key, entry] of Object.entries(value)) enter(s.value as AnySchema, key, entry)
    else if (s.type === 'variant') {
      const tag = s.key as string
      const option = (s.options as AnySchema[]).find(
        (o) =>
          (o.entries as Record<string, AnySchema>)[tag]?.literal === (value as Record<string, unknown>)[tag],
      )
      if (option) walk(option, value)
    } else if (s.type === 'loose_object' || s.type === 'object') {
      const entries = s.entries as Record<string, AnySchema>
      for (const key of Object.keys(value)) {
        const inner = Object.hasOwn(entries, key) ? entries[key] : undefined
        if (inner) enter(inner, key, (value as Record<string, unknown>)[key])
        else if (found.length < most) found.push(pathOf([...keys, key]))
      }
    }
  }
  walk(schema, input)
  return found
}

/**
 * Checks plain data against `schema`, then against `meaning` (what a schema cannot say).
 * Unknown keys are kept and told as notices.
 */
export function parseWith<S extends v.GenericSchema>(
  schema: S,
  { value, faults, odd, notices: mended }: Plain,
  meaning: (value: v.InferOutput<S>) => readonly Issue[],
): Parsed<v.InferOutput<S>> {
  if (faults.length > 0) return { ok: false, issues: faults }
  const result = v.safeParse(schema, value)
  const wrong = result.success ? [] : result.issues.slice(0, MOST_ISSUES).map(fromSchema)
  const told = new Set(wrong.map(({ path }) => path))
  const issues = [...wrong, ...odd.filter(({ path }) => !told.has(path))].slice(0, MOST_ISSUES)
  if (!result.success || issues.length > 0) return { ok: false, issues }
  const meant = meaning(result.output)
  if (meant.length > 0) return { ok: false, issues: meant.slice(0, MOST_ISSUES) }
  const unknown = unknownKeys(schema as unknown as AnySchema, value).map((path) => ({
    path,
    message: 'not known to this version; kept as it is',
  }))
  return { ok: true, value: result.output, notices: [...mended, ...unknown] }
}

/** JSON text to a value, with the place of a fault; `maxBytes` guards a page against a file that is no design. */
export function parseText(text: string, maxBytes: number): Parsed<unknown> {
  if (typeof text !== 'string')
    return { ok: false, issues: [issue('', show(text), 'the text of a JSON file')] }
  if (text.length > maxBytes)
    return { ok: false, issues: [issue('', `${text.length} characters`, `at most ${maxBytes}`)] }
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/, '')), notices: [] }
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error)
    return { ok: false, issues: [issue('', `not JSON (${message})`, 'a whole JSON file')] }
  }
}

/**
 * Format and version of a file, and its way up to the current version.
 * `migrations[n]` turns a file of version n into one of version n + 1.
 */
export function upgrade(
  plain: Plain,
  format: string,
  current: number,
  migrations: Readonly<Record<number, (old: Record<string, unknown>) => Record<string, unknown>>>,
): { readonly ok: true; readonly plain: Plain } | { readonly ok: false; readonly issues: readonly Issue[] } {
  const fail = (path: string, received: string, expected: string) =>
    ({ ok: false, issues: [issue(path, received, expected)] }) as const
  const { value, faults } = plain
  if (faults.length > 0) return { ok: false, issues: faults }
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    return fail('', show(value), 'an object')
  let file = value as Record<string, unknown>
  if (file.format !== format) return fail('format', show(file.format), `"${format}"`)
  const { version } = file
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fail('version', show(version), `a whole number from 1 to ${current}`)
  if (version > current)
    return fail('version', `${version}, made by a newer version of Leadline`, `at most ${current}`)
  for (let from = version; from < current; from++) {
    const step = migrations[from]
    if (!step) return fail('version', String(version), `a version that can be read, up to ${current}`)
    file = step(file)
  }
  return { ok: true, plain: { ...plain, value: file } }
}
