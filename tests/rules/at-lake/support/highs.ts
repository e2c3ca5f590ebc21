/** Programs as HiGHS reads them. */
import highs, { type LegacyHighs } from 'highs'

export const solver = (): Promise<LegacyHighs> => highs()

/** A sum of unknowns as text: `+ 2 x - 1 y`. */
export const sum = (terms: readonly (readonly [number, string])[]): string =>
  terms
    .filter(([factor]) => factor !== 0)
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor).toFixed(12)} ${name}`)
    .join(' ')

export interface Program {
  readonly objective: string
  readonly rows: readonly string[]
  /** Unknowns that may be negative, and those that are 0 or 1. */
  readonly free?: readonly string[]
  readonly binary?: readonly string[]
}

/** Least value and the unknowns; null where nothing satisfies all. */
export function least(
  solve: LegacyHighs,
  { objective, rows, free = [], binary = [] }: Program,
): { value: number; of: (name: string) => number } | null {
  const text = [
    'Minimize',
    ` obj: ${objective}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${row}`),
    'Bounds',
    ...free.map((name) => ` ${name} free`),
    ...(binary.length > 0 ? ['Binary', ` ${binary.join(' ')}`] : []),
    'End',
  ].join('\n')
  const found = solve.solve(text, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 })
  if (found.Status !== 'Optimal') return null
  const columns = found.Columns as Record<string, { Primal?: number }>
  return { value: found.ObjectiveValue, of: (name) => columns[name]?.Primal ?? 0 }
}
