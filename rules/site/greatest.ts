/** The greatest of any run of a list, told in one step: of runs as long as each power of 2 it is kept (a sparse table). */
export function greatestOf(list: Float64Array): (from: number, to: number) => number {
  const rows = [list]
  for (let half = 1; 2 * half <= list.length; half *= 2) {
    const before = rows.at(-1)!
    const row = new Float64Array(list.length - 2 * half + 1)
    for (let i = 0; i < row.length; i++) row[i] = Math.max(before[i]!, before[i + half]!)
    rows.push(row)
  }
  return (from, to) => {
    if (to <= from) return Number.NEGATIVE_INFINITY
    const k = 31 - Math.clz32(to - from)
    const row = rows[k]!
    return Math.max(row[from]!, row[to - 2 ** k]!)
  }
}
