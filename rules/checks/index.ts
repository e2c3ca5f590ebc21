import type { Finding, Severity } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { findingText } from '../words/index.ts'
import { CHECKS } from './registry.ts'

export type { Check, Found } from './check.ts'
export { CHECKS } from './registry.ts'

const RANK: Record<Severity, number> = { stop: 0, warn: 1, note: 2 }

/** Runs every check: what must not be built first, then in the registry's order. */
export function findAll(kit: Kit): Finding[] {
  const findings: Finding[] = []
  for (const check of CHECKS)
    for (const found of check.find(kit))
      findings.push({
        code: check.code,
        severity: check.severity,
        parts: found.parts,
        values: found.values,
        text: findingText({ code: check.code, values: found.values }, 'text'),
        basis: check.basis,
        remedy: found.remedy ?? null,
      })
  return findings.sort((a, b) => RANK[a.severity] - RANK[b.severity])
}
