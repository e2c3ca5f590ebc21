/**
 * The border: unknown input meets a schema here and becomes a valid value or issues that name the path, the value and what was
 * expected. Never throws; inside the engine there are no further checks of shape.
 */
import * as v from 'valibot'

export interface Issue {
  /** As in `site.soundings[3].depth`; empty for the whole file. */
  readonly path: string
  /** What is wrong, what was expected. */
  readonly message: string
  readonly expected: string
  readonly received: string
}

/** Something kept and worth telling, such as a key that this version does not know. */
export interface Notice {
  readonly path: string
  readonly message: string
}

export type Parsed<T> =
  | { readonly ok: true; readonly value: T; readonly notices: readonly Notice[] }
  | { readonly ok: false; readonly issues: readonly Issue[] }

/** The most issues that one answer lists: enough to mend a file by, never a flood. */
const MOST_ISSUES = 50
const MOST_DEPTH = 40

export const issue = (path: string, received: string, expected: string): Issue => ({
  path,
  message: `${received}; expected ${expected}`,
  expected,
  received,
})

/** A value in few words, for a message. */
export function show(value: unknown): string {
  if (value === undefined) return 'missing'
  if (typeof value === 'string') return `"${value.length > 60 ? `${value.slice(0, 57)}…` : value}"`
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (value !== null && typeof value === 'object') return 'an object'
  return String(value)
}

type PathKey = string | number
export const pathOf = (keys: readonly PathKey[]): string =>
  keys.reduce<string>(
    (path, key) =>
      typeof key === 'number'
        ? `${path}[${key}]`
        : /^[A-Za-z_$][\w$]*$/.test(key)
          ? path === ''
            ? key
            : `${path}.${key}`
          : `${path}[${JSON.stringify(key)}]`,
    '',
  )

const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype'])

/** Keys that could reach an object's prototype, and nesting that no real file has. */
export function scan(input: unknown): Issue[] {
  const issues: Issue[] = []
  // One list of keys that grows and shrinks: a copy at each of a hundred thousand values is what takes time.
  const keys: PathKey[] = []
  const walk = (value: unknown): void => {
    if (value === null || typeof value !== 'object' || issues.length >= MOST_ISSUES) return
    if (keys.length > MOST_DEPTH) {
      issues.push(issue(pathOf(keys), 'nested too deeply', `at most ${MOST_DEPTH} levels`))
      return
    }
    const enter = (key: PathKey, inner: unknown): void => {
      keys.push(key)
      walk(inner)
      keys.pop()
    }
    if (Array.isArray(value)) {
      for (let i = 0; i < value.length; i++) enter(i, value[i])
      return
    }
    for (const key of Object.keys(value)) {
      if (FORBIDDEN.has(key)) issues.push(issue(pathOf([...keys, key]), 'key not allowed', 'another name'))
      else enter(key, (value as Record<string, unknown>)[key])
    }
  }
  walk(input)
  return issues
}

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
 * Checks `input` against `schema`, then against `meaning` (what a schema cannot say).
 * Unknown keys are kept and told as notices.
 */
export function parseWith<S extends v.GenericSchema>(
  schema: S,
  input: unknown,
  meaning: (value: v.InferOutput<S>) => readonly Issue[],
): Parsed<v.InferOutput<S>> {
  const unsafe = scan(input)
  if (unsafe.length > 0) return { ok: false, issues: unsafe }
  const result = v.safeParse(schema, input)
  if (!result.success) {
    const issues = result.issues.map(fromSchema)
    return { ok: false, issues: issues.slice(0, MOST_ISSUES) }
  }
  const wrong = meaning(result.output)
  if (wrong.length > 0) return { ok: false, issues: wrong.slice(0, MOST_ISSUES) }
  const notices = unknownKeys(schema as unknown as AnySchema, input).map((path) => ({
    path,
    message: 'not known to this version; kept as it is',
  }))
  return { ok: true, value: result.output, notices }
}

/** JSON text to a value, with the place of a fault; `maxBytes` guards a page against a file that is no design. */
export function parseText(text: string, maxBytes: number): Parsed<unknown> {
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
  input: unknown,
  format: string,
  current: number,
  migrations: Readonly<Record<number, (old: Record<string, unknown>) => Record<string, unknown>>>,
): Parsed<unknown> {
  const fail = (path: string, received: string, expected: string): Parsed<unknown> => ({
    ok: false,
    issues: [issue(path, received, expected)],
  })
  if (input === null || typeof input !== 'object' || Array.isArray(input))
    return fail('', show(input), 'an object')
  let file = input as Record<string, unknown>
  if (file.format !== format) return fail('format', show(file.format), `"${format}"`)
  const version = file.version
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fail('version', show(version), `a whole number from 1 to ${current}`)
  if (version > current)
    return fail('version', `${version}, made by a newer version of Leadline`, `at most ${current}`)
  for (let from = version; from < current; from++) {
    const step = migrations[from]
    if (!step) return fail('version', String(version), `a version that can be read, up to ${current}`)
    file = step(file)
  }
  return { ok: true, value: file, notices: [] }
}
