import type { Factor } from '../site/kriging.ts'

/** Lower factor of a positive definite matrix, row by row. */
export function choleskyOf(n: number, at: (i: number, k: number) => number): Factor {
  const rows: Float64Array[] = []
  for (let i = 0; i < n; i++) {
    const row = new Float64Array(i + 1)
    for (let k = 0; k <= i; k++) {
      const other = k === i ? row : rows[k]!
      let sum = at(i, k)
      for (let j = 0; j < k; j++) sum -= row[j]! * other[j]!
      row[k] = k === i ? Math.sqrt(sum) : sum / other[k]!
    }
    rows.push(row)
  }
  return { n, rows }
}
