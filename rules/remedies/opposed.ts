/** Findings that ask for opposite things, whether or not either step helps: one note for each of these. */
import { key } from '../checks/check.ts'
import { toFindings } from '../checks/index.ts'
import type { Figure, Finding } from '../dock.ts'
import { FOUND_LATER } from '../words/structure-words.ts'

/** What two remedies ask of the same thing, and which way. */
const ASKS: Readonly<Record<string, { readonly ask: 'deck' | 'sections'; readonly way: 1 | -1 }>> = {
  'raise-deck': { ask: 'deck', way: 1 },
  'lower-deck': { ask: 'deck', way: -1 },
  'more-sections': { ask: 'sections', way: 1 },
  'fewer-sections': { ask: 'sections', way: -1 },
}

const OPPOSED = {
  code: 'remedies-oppose',
  severity: 'note',
  basis: 'The remedies of the findings that it names',
} as const

export function opposed(findings: readonly Finding[]): Finding[] {
  const asking = (what: string, way: number): Finding | undefined =>
    findings.find(({ remedy }) => {
      const asks = remedy ? ASKS[remedy.key] : undefined
      return asks?.ask === what && asks.way === way
    })
  return (['deck', 'sections'] as const).flatMap((ask) => {
    const [first, second] = [asking(ask, 1), asking(ask, -1)]
    if (!first || !second) return []
    const values = { first: code(first), second: code(second), ask: key(ask) }
    return toFindings(OPPOSED, [{ parts: [], values }], FOUND_LATER)
  })
}

const code = (finding: Finding): Figure => ({ value: finding.code, unit: 'code' })
