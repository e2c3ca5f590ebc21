/** In what one catalog differs from another, a place at a time: entries of lists are told apart by their codes, not by where they stand. */
import type { PathKey } from '../../rules/issue.ts'
import { isList, isObject, type Json, type Path, same } from './draft.ts'

export interface Change {
  /** `moved`: the entries of a list stand in another order. */
  readonly kind: 'added' | 'removed' | 'changed' | 'moved'
  /** Where it is in the one that is now; of what was removed, where it was. */
  readonly path: Path
  readonly before: Json | undefined
  readonly after: Json | undefined
  /** Name of the entry that it is in or of, as the shop calls it; empty where it is in none. */
  readonly of: string
}

/** All of them, in the order of the file that is now. */
export function changesBetween(before: Json, after: Json): Change[] {
  return compare(before, after, [], '')
}

function compare(
  before: Json | undefined,
  after: Json | undefined,
  path: readonly PathKey[],
  of: string,
): Change[] {
  if (same(before, after)) return []
  if (isList(before) && isList(after) && isCoded(before) && isCoded(after))
    return compareCoded(before, after, path)
  if (isObject(before) && isObject(after)) {
    const keys = [...Object.keys(after), ...Object.keys(before).filter((key) => !Object.hasOwn(after, key))]
    return keys.flatMap((key) =>
      compare(
        Object.hasOwn(before, key) ? before[key] : undefined,
        Object.hasOwn(after, key) ? after[key] : undefined,
        [...path, key],
        of,
      ),
    )
  }
  const kind = before === undefined ? 'added' : after === undefined ? 'removed' : 'changed'
  return [{ kind, path, before, after, of }]
}

const codeOf = (one: Json): string | null => (isObject(one) && typeof one.code === 'string' ? one.code : null)

/** Every entry has a code of its own. */
function isCoded(list: readonly Json[]): boolean {
  const codes = list.map(codeOf)
  return codes.every((code) => code !== null) && new Set(codes).size === codes.length
}

function compareCoded(before: readonly Json[], after: readonly Json[], path: readonly PathKey[]): Change[] {
  const known = new Map(before.map((one) => [codeOf(one), one]))
  const now = new Set(after.map(codeOf))
  const changes = [
    ...after.flatMap((one, i): Change[] => {
      const code = codeOf(one)
      const old = known.get(code)
      const at = [...path, i]
      const name = nameOf(one)
      return old === undefined
        ? [{ kind: 'added', path: at, before: undefined, after: one, of: name }]
        : compare(old, one, at, name)
    }),
    ...before.flatMap((one, i): Change[] =>
      now.has(codeOf(one))
        ? []
        : [{ kind: 'removed', path: [...path, i], before: one, after: undefined, of: nameOf(one) }],
    ),
  ]
  return changes.length > 0 || before.length === 0
    ? changes
    : [{ kind: 'moved', path, before: before.map(codeOf), after: after.map(codeOf), of: '' }]
}

const nameOf = (one: Json): string => (isObject(one) ? String(one.name ?? one.code ?? '') : '')
