/** The `add`, `replace` and `remove` of RFC 6902, which remedies are written in. The result is not checked: `parseDesign` does that. */

import type { PatchOperation } from '../dock.ts'
import { plainOf } from '../validation.ts'
import type { Design } from './schema.ts'

type Container = Record<string, unknown> | unknown[]

/** A design with a remedy's patch (RFC 6902) in it; the one given stays as it is. @throws where a path leads nowhere (a remedy was made for another design), or a value is no plain data. */
export function applyPatch(design: Design, patch: readonly PatchOperation[]): Design {
  const copy = JSON.parse(JSON.stringify(design)) as Design
  for (const operation of patch) applyOne(copy, operation)
  return copy
}

/** What is put into a design is JSON. */
function copyOf(given: unknown, path: string): unknown {
  const { value, faults, odd } = plainOf(given)
  const fault = faults[0] ?? odd[0]
  if (fault) throw new Error(`applyPatch: "${path}" with ${fault.message}`)
  return value
}

function applyOne(root: Design, { op, path, value }: PatchOperation): void {
  const keys = pointer(path)
  const last = keys.pop()
  if (last === undefined) throw new Error(`applyPatch: "${path}" is the whole design`)
  let at: unknown = root
  for (const key of keys) at = step(at, key, path)
  if (at === null || typeof at !== 'object') throw new Error(`applyPatch: nothing at "${path}"`)
  const container = at as Container
  if (Array.isArray(container)) {
    const index = last === '-' ? container.length : Number(last)
    const most = op === 'add' ? container.length : container.length - 1
    if (!/^(-|0|[1-9]\d*)$/.test(last) || index > most) throw new Error(`applyPatch: no place "${path}"`)
    if (op === 'add') container.splice(index, 0, copyOf(value, path))
    else if (op === 'remove') container.splice(index, 1)
    else container[index] = copyOf(value, path)
    return
  }
  if (last === '__proto__') throw new Error(`applyPatch: no place "${path}"`)
  if (op !== 'add' && !Object.hasOwn(container, last)) throw new Error(`applyPatch: nothing at "${path}"`)
  if (op === 'remove') delete container[last]
  else container[last] = copyOf(value, path)
}

/** RFC 6901: `~1` is a slash, `~0` a tilde. */
function pointer(path: string): string[] {
  if (path !== '' && path[0] !== '/') throw new Error(`applyPatch: "${path}" is no JSON pointer`)
  return path
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'))
}

function step(at: unknown, key: string, path: string): unknown {
  if (at === null || typeof at !== 'object' || !Object.hasOwn(at, key))
    throw new Error(`applyPatch: nothing at "${path}"`)
  return (at as Record<string, unknown>)[key]
}
