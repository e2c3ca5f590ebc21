import type { Finding, Severity, Waves } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { findingIn } from '../words/finding-words.ts'
import { english } from '../words/language.ts'
import type { Subject } from '../words/messages.ts'
import type { Check, Found, Judged } from './check.ts'
import { CHECKS } from './registry.ts'

export type { Check, Found } from './check.ts'
export { CHECKS } from './registry.ts'

const RANK: Record<Severity, number> = { stop: 0, warn: 1, note: 2 }

/** What must not be built first; else as they come. */
export const inOrder = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity])

/** What one check found, as data for everyone. `more`: its words, where they are not among the first. */
export const toFindings = (
  { code, severity, basis }: Pick<Check, 'code' | 'severity' | 'basis'>,
  found: readonly Found[],
  more?: readonly Subject[],
): Finding[] =>
  found.map(({ parts, values, remedy }) => ({
    code,
    severity,
    parts,
    values,
    text: findingIn({ code, values }, 'text', english('metric'), more),
    basis,
    remedy: remedy ?? null,
  }))

/** Runs every check of the kit: what must not be built first, then in the registry's order. */
export function findAll(kit: Kit, waves: Waves | null): Finding[] {
  const judged: Judged = { ...kit, waves }
  return inOrder(CHECKS.flatMap((check) => toFindings(check, check.find(judged))))
}
