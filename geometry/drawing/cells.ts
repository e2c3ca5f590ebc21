/** Boxes on a sheet, and things by where they stand, so that only near ones are asked. mm. */

export interface Box {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

export const overlap = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1

export const within = (inner: Box, outer: Box): boolean =>
  inner.x0 >= outer.x0 && inner.x1 <= outer.x1 && inner.y0 >= outer.y0 && inner.y1 <= outer.y1

export interface Cells<T> {
  add(extent: Box, item: T): void
  /** Whether it is so of one whose extent comes near to a box. */
  some(near: Box, isSo: (item: T) => boolean): boolean
  /** Of how many it is so. */
  count(near: Box, isSo: (item: T) => boolean): number
}

/** About as wide as a short label. */
const CELL = 8
/** Rounding parts nothing that touches. */
const TOUCH = 1e-6
/** Two cells of one key cost time and nothing else: what is in them is asked all the same. */
const KEYS = 1 << 16

function* keysOf({ x0, y0, x1, y1 }: Box): Generator<number> {
  const [j0, j1] = [Math.floor((y0 - TOUCH) / CELL), Math.floor((y1 + TOUCH) / CELL)]
  for (let i = Math.floor((x0 - TOUCH) / CELL); i <= Math.floor((x1 + TOUCH) / CELL); i++)
    for (let j = j0; j <= j1; j++) yield i * KEYS + j
}

export function makeCells<T>(): Cells<T> {
  const cells = new Map<number, T[]>()
  return {
    add(extent, item) {
      for (const key of keysOf(extent)) {
        const list = cells.get(key)
        if (list) list.push(item)
        else cells.set(key, [item])
      }
    },
    some(near, isSo) {
      for (const key of keysOf(near)) if (cells.get(key)?.some(isSo)) return true
      return false
    },
    count(near, isSo) {
      const found = new Set<T>()
      for (const key of keysOf(near))
        for (const item of cells.get(key) ?? []) if (!found.has(item) && isSo(item)) found.add(item)
      return found.size
    },
  }
}
