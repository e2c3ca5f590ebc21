/**
 * A Dock in pieces, for the way from a worker to the page: one of thousands of sections comes as a hundred thousand pieces, and to take it
 * in at once holds up the page for as long as it would have taken to place it there. Each message is taken in by itself.
 */
import type { Dock } from '../../rules/index.ts'

/** Entries of a list, or of a table, in one message. */
const MOST = 1000

/** Entries of what stands at the path: added to a list, put into a table, or put there as it is. */
export interface Slice {
  readonly path: readonly string[]
  readonly value: unknown
  readonly as: 'list' | 'table' | 'whole'
}

const isTable = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export function* slicesOf(dock: Dock): Generator<Slice> {
  yield* slices([], dock, 2)
}

function* slices(path: readonly string[], value: unknown, depth: number): Generator<Slice> {
  if (Array.isArray(value) && value.length > MOST)
    for (let i = 0; i < value.length; i += MOST) yield { path, value: value.slice(i, i + MOST), as: 'list' }
  else if (isTable(value) && depth > 0) {
    yield { path, value: {}, as: 'table' }
    for (const [key, inner] of Object.entries(value)) yield* slices([...path, key], inner, depth - 1)
  } else if (isTable(value) && Object.keys(value).length > MOST) {
    const entries = Object.entries(value)
    for (let i = 0; i < entries.length; i += MOST)
      yield { path, value: Object.fromEntries(entries.slice(i, i + MOST)), as: 'table' }
  } else yield { path, value, as: 'whole' }
}

/** Puts slices together again, in the order in which they were made. */
export function gather(): { add(slice: Slice): void; dock(): Dock } {
  const root: Record<string, unknown> = {}
  return {
    add({ path, value, as }) {
      if (path.length === 0) return
      const inner = path.slice(0, -1).reduce((at, key) => at[key] as Record<string, unknown>, root)
      const key = path.at(-1)!
      const there = inner[key]
      if (as === 'list' && Array.isArray(there)) for (const entry of value as unknown[]) there.push(entry)
      else if (as === 'table' && isTable(there)) Object.assign(there, value)
      else inner[key] = value
    },
    dock: () => Object.freeze(root) as unknown as Dock,
  }
}
