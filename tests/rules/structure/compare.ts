/** Comparing results of whole frames. */
import { expect } from 'vitest'

/** All six (or however many) numbers of all rows agree to a part of the largest of their kind. */
export function expectRowsClose(
  actual: readonly (readonly number[])[],
  expected: readonly (readonly number[])[],
  part: number,
): void {
  for (const half of [0, 3]) {
    const slice = (rows: readonly (readonly number[])[]): number[] =>
      rows.flatMap((row) => row.slice(half, half + 3))
    const a = slice(actual)
    const e = slice(expected)
    const size = Math.max(...e.map(Math.abs), 1e-12)
    e.forEach((value, i) => {
      expect(Math.abs(a[i]! - value) / size).toBeLessThanOrEqual(part)
    })
  }
}
