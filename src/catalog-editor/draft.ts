/** A catalog while it is edited: plain JSON that may be wrong, changed without touching what was there before. */
import type { PathKey } from '../../rules/issue.ts'

export type Json = null | boolean | number | string | readonly Json[] | JsonObject
export interface JsonObject {
  readonly [key: string]: Json
}
export type Path = readonly PathKey[]

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const isList = (value: unknown): value is readonly Json[] => Array.isArray(value)

/** Undefined where there is nothing. */
export function valueAt(draft: Json | undefined, path: Path): Json | undefined {
  let value = draft
  for (const key of path) {
    if (isList(value)) value = typeof key === 'number' ? value[key] : undefined
    else if (isObject(value)) value = Object.hasOwn(value, key) ? value[String(key)] : undefined
    else return undefined
  }
  return value
}

/** With `value` at the path, and what the way there lacks; undefined takes out what is there, from a list too. */
export function withValue(draft: Json | undefined, path: Path, value: Json | undefined): Json {
  const [key, ...rest] = path
  if (key === undefined) return value ?? {}
  if (typeof key === 'number') {
    const list = isList(draft) ? draft : []
    if (value === undefined && rest.length === 0) return list.toSpliced(key, key < list.length ? 1 : 0)
    const next = withValue(list[key], rest, value)
    return key < list.length ? list.with(key, next) : [...list, next]
  }
  const object = isObject(draft) ? draft : {}
  const had = Object.hasOwn(object, key)
  if (value === undefined && rest.length === 0) {
    if (!had) return object
    const { [key]: _, ...others } = object
    return others
  }
  if (value === undefined && !had) return object
  return { ...object, [key]: withValue(had ? object[key] : undefined, rest, value) }
}

/** An entry of a list put where another is. */
export const moved = (list: readonly Json[], from: number, to: number): readonly Json[] => {
  const entry = list[from]
  return entry === undefined || to < 0 || to >= list.length
    ? list
    : list.toSpliced(from, 1).toSpliced(to, 0, entry)
}

/** A key of a record under another name, in its place. */
export const renamedKey = (record: JsonObject, from: string, to: string): JsonObject =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key === from ? to : key, value]))

/** By value; the order of keys tells nothing. */
export function same(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true
  if (isList(a) && isList(b)) return a.length === b.length && a.every((one, i) => same(one, b[i]))
  if (!isObject(a) || !isObject(b)) return false
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]))
  )
}

/** The keys of a place as issues name it: `frames[2].length`, `stock["rail-6x2"].wall`. */
export function keysOf(path: string): Path {
  const keys: PathKey[] = []
  for (const [, name, index, quoted] of path.matchAll(
    /([A-Za-z_$][\w$]*)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]/g,
  ))
    if (name !== undefined) keys.push(name)
    else if (index !== undefined) keys.push(Number(index))
    else if (quoted !== undefined) keys.push(unquoted(quoted))
  return keys
}

/** As it was shown; a code may have a backslash or a quote of its own in it. */
function unquoted(text: string): string {
  try {
    return String(JSON.parse(text))
  } catch {
    return text.slice(1, -1)
  }
}

export const samePath = (a: Path, b: Path): boolean =>
  a.length === b.length && a.every((key, i) => key === b[i])

export const isUnder = (path: Path, parent: Path): boolean =>
  path.length >= parent.length && parent.every((key, i) => key === path[i])
