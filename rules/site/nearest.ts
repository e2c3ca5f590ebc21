/** The nearest of many places: a tree over them, halved along x and y in turn (Bentley 1975). */

/** So few are looked through one by one. */
const LEAF = 16

/** Number of the nearest of the places (of several as near the first) if it is nearer than `within` (squared, m2); else -1. */
export type Nearest = (px: number, py: number, within: number) => number

export function nearestOf(x: Float64Array, y: Float64Array): Nearest {
  const order = Int32Array.from(x, (_, i) => i)
  const borders = new Float64Array(x.length)
  halve(order, borders, [x, y], 0, order.length, 0)
  return (px, py, within) => {
    let best = within
    let found = -1
    const look = (low: number, high: number, axis: 0 | 1): void => {
      if (high - low <= LEAF) {
        for (let k = low; k < high; k++) {
          const i = order[k]!
          const d = (x[i]! - px) ** 2 + (y[i]! - py) ** 2
          if (d < best || (d === best && found >= 0 && i < found)) {
            best = d
            found = i
          }
        }
        return
      }
      const middle = (low + high) >> 1
      const other = axis === 0 ? 1 : 0
      const border = borders[middle]! - (axis === 0 ? px : py)
      // The half that the place is in first; the other where it may hold one as near.
      if (border > 0) {
        look(low, middle, other)
        if (border * border <= best) look(middle, high, other)
      } else {
        look(middle, high, other)
        if (border * border <= best) look(low, middle, other)
      }
    }
    look(0, order.length, 0)
    return found
  }
}

/** Puts the smaller half along an axis before the greater, and so on within the halves. `borders`: by the place where a half begins. */
function halve(
  order: Int32Array,
  borders: Float64Array,
  by: readonly [Float64Array, Float64Array],
  low: number,
  high: number,
  axis: 0 | 1,
): void {
  if (high - low <= LEAF) return
  const list = by[axis]
  const middle = (low + high) >> 1
  select(order, list, low, high - 1, middle)
  borders[middle] = list[order[middle]!]!
  const other = axis === 0 ? 1 : 0
  halve(order, borders, by, low, middle, other)
  halve(order, borders, by, middle, high, other)
}

/** Has the one at `k` where it would stand if all were sorted, none greater before it and none less after it (Hoare 1961). */
function select(order: Int32Array, list: Float64Array, low: number, high: number, k: number): void {
  while (low < high) {
    const pivot = list[order[(low + high) >> 1]!]!
    let [i, j] = [low, high]
    while (i <= j) {
      while (list[order[i]!]! < pivot) i++
      while (list[order[j]!]! > pivot) j--
      if (i > j) break
      const moved = order[i]!
      order[i++] = order[j]!
      order[j--] = moved
    }
    if (k <= j) high = j
    else if (k >= i) low = i
    else return
  }
}
