/** What a check is: a rule with a stable code, run over the kit, that says what it found as data. Words come from `words/` by code. */
import type { Figure, PatchOperation, Remedy, Severity, Waves } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { round6 } from '../numbers.ts'

export interface Found {
  /** Ids of sections, legs, pairs, joints or extras that it is about. */
  readonly parts: readonly string[]
  readonly values: Readonly<Record<string, Figure>>
  readonly remedy?: Remedy | null
}

/** What a check sees: the kit and its waves. */
export type Judged = Kit & { readonly waves: Waves | null }

export interface Check {
  readonly code: string
  readonly severity: Severity
  readonly basis: string
  find(kit: Judged): readonly Found[]
}

export { COMMON, SHOP } from '../basis.ts'

export const meters = (value: number): Figure => ({ value: round6(value), unit: 'm' })
export const squareMeters = (value: number): Figure => ({ value: round6(value), unit: 'm2' })
export const slope = (value: number): Figure => ({ value: round6(value), unit: 'slope' })
export const number = (value: number): Figure => ({ value, unit: 'count' })
export const millimeters = (value: number): Figure => ({ value: round6(value * 1000), unit: 'mm' })
export const newtons = (value: number): Figure => ({ value: round6(value), unit: 'N' })
export const newtonMeters = (value: number): Figure => ({ value: round6(value), unit: 'Nm' })
export const pascals = (value: number): Figure => ({ value: round6(value), unit: 'Pa' })
export const share = (value: number): Figure => ({ value: round6(value), unit: 'share' })
export const factor = (value: number): Figure => ({ value: round6(value), unit: 'factor' })
/** An id, a code, or a name of the user's or the shop's own: never a word of ours. */
export const text = (value: string): Figure => ({ value, unit: 'text' })
/** A word of ours: the language files have a table of the name that the figure has among `values`. */
export const key = (value: string): Figure => ({ value, unit: 'key' })
/** The name of a case of loads, which screens put in words. */
export const loadCase = (value: string): Figure => ({ value, unit: 'case' })
/** Ids, all of them: a sentence says the first few, and how many more. */
export const names = (ids: readonly string[]): Figure => ({ value: ids, unit: 'text' })

export const remedy = (
  key: string,
  patch: readonly PatchOperation[],
  values: Readonly<Record<string, Figure>> = {},
): Remedy => ({ key, values, patch })

export const replace = (path: string, value: unknown): PatchOperation => ({ op: 'replace', path, value })
export const remove = (path: string): PatchOperation => ({ op: 'remove', path })

/** Of several, the one with the greatest figure. */
export function worst<T>(list: readonly T[], figure: (item: T) => number): T {
  return list.reduce((most, item) => (figure(item) > figure(most) ? item : most))
}
