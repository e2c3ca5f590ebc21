/** Names of load cases in words: `0.6D+W high left` as someone would say it. */
import type { Finding, Say } from '../../rules/index.ts'
import { loadCaseOf } from '../../rules/structure/dock/load-cases.ts'
import { text } from './index.ts'
import type { LoadWord } from './loads.ts'

/** An id that is none of them is told as it is. */
export function caseInWords(id: string, { t }: { readonly t: Say<LoadWord> }): string {
  const known = loadCaseOf(id)
  if (!known) return id
  const { act, level, toward } = known
  if (level)
    return t(`case.${act}` as LoadWord, {
      from: text(t(`case.from.${toward}` as LoadWord)),
      level: text(t(`case.level.${level}`)),
    })
  return t(['case', act, toward].filter((word) => word !== null).join('.') as LoadWord)
}

/** The figures of a finding, its case of loads as words. */
export function withCaseInWords<F extends Pick<Finding, 'values'>>(
  finding: F,
  words: { readonly t: Say<LoadWord> },
): F {
  const named = finding.values.case
  if (named === undefined) return finding
  return { ...finding, values: { ...finding.values, case: text(caseInWords(String(named.value), words)) } }
}
