/**
 * The least of a linear function of free variables under a handful of inequalities `a v <= b`: the simplex method on the dual, which has a
 * row a variable and a column an inequality (Chvátal, Linear Programming, 1983, chapters 3 and 5), in the end with Bland's rule, so that it ends.
 */

export interface Inequality {
  readonly a: readonly number[]
  readonly b: number
}

export interface Least {
  readonly value: number
  readonly at: readonly number[]
}

const EPSILON = 1e-9
/** So many pivots go by the steepest column, as that is quicker. */
const STEEP = 200
/** Pivots before it is given up: rounding may turn in circles where arithmetic would not. */
const MOST = 2000

/** Null where nothing satisfies all of them. `objective` must be bounded below by them. */
export function leastUnder(objective: readonly number[], all: readonly Inequality[]): Least | null {
  const rows = objective.length
  const columns = all.length + rows
  const width = columns + 1
  // Dual: least of b y with -a' y = objective, y >= 0; an artificial variable a row to begin with.
  const table = objective.map((target, i) => {
    const row = new Float64Array(width)
    const sign = target < 0 ? -1 : 1
    all.forEach(({ a }, k) => {
      row[k] = -a[i]! * sign
    })
    row[all.length + i] = 1
    row[columns] = target * sign
    return row
  })
  const basis = objective.map((_, i) => all.length + i)
  const first = costRow(width, (k) => (k >= all.length && k < columns ? 1 : 0), basis, table)
  if (!descend(table, first, basis, columns, all.length)) return null
  if (Math.abs(first[columns]!) > 1e-7) return null
  const costs = costRow(width, (k) => all[k]?.b ?? 0, basis, table)
  if (!descend(table, costs, basis, all.length, all.length)) return null
  // The variables are what the artificial columns cost.
  const at = objective.map((target, i) => costs[all.length + i]! * (target < 0 ? -1 : 1))
  return { value: objective.reduce((sum, c, i) => sum + c * at[i]!, 0), at }
}

function costRow(
  width: number,
  cost: (column: number) => number,
  basis: readonly number[],
  table: readonly Float64Array[],
): Float64Array {
  const row = new Float64Array(width)
  for (let k = 0; k < width - 1; k++) row[k] = cost(k)
  basis.forEach((column, i) => {
    const c = cost(column)
    if (c !== 0) for (let k = 0; k < width; k++) row[k] = row[k]! - c * table[i]![k]!
  })
  return row
}

/** False where there is no least, or it was given up. Columns from `own` on are artificial, and leave first. */
function descend(
  table: readonly Float64Array[],
  costs: Float64Array,
  basis: number[],
  columns: number,
  own: number,
): boolean {
  const last = costs.length - 1
  for (let pivots = 0; pivots < MOST; pivots++) {
    let enter = -1
    for (let k = 0; k < columns; k++) {
      if (costs[k]! >= -EPSILON || (enter >= 0 && costs[k]! >= costs[enter]!)) continue
      enter = k
      if (pivots >= STEEP) break
    }
    if (enter < 0) return true
    let leave = -1
    let least = Number.POSITIVE_INFINITY
    table.forEach((row, i) => {
      const by = row[enter]!
      // An artificial variable that is still in at 0 must not grow.
      const stuck = basis[i]! >= own && columns === own && Math.abs(by) > EPSILON
      if (by <= EPSILON && !stuck) return
      const ratio = stuck ? 0 : row[last]! / by
      if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && leave >= 0 && basis[i]! < basis[leave]!)) {
        least = ratio
        leave = i
      }
    })
    if (leave < 0) return false
    pivot(table, costs, leave, enter)
    basis[leave] = enter
  }
  return false
}

function pivot(table: readonly Float64Array[], costs: Float64Array, leave: number, enter: number): void {
  const row = table[leave]!
  const by = row[enter]!
  for (let k = 0; k < row.length; k++) row[k] = row[k]! / by
  for (const other of [...table, costs]) {
    if (other === row) continue
    const factor = other[enter]!
    if (factor === 0) continue
    for (let k = 0; k < row.length; k++) other[k] = other[k]! - factor * row[k]!
  }
}
