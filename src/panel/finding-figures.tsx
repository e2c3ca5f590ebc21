/** The figures of a finding: what it says with numbers, its case in words, and what it goes by. */
import { type Finding, findingIn } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { text } from '../words/index.ts'
import { useLoadWords } from '../words/use-load-words.ts'
import { caseInWords } from './load-case-words.ts'

export function Figures({ finding }: { readonly finding: Finding }) {
  const words = useLoadWords()
  const { units, lang, loads } = words
  const { values } = finding
  const more = useLeadline((s) => s.moreWords)
  const named = values.case
  const said =
    named === undefined
      ? finding
      : { ...finding, values: { ...values, case: text(caseInWords(String(named.value), words)) } }
  return (
    <>
      <p>{findingIn(said, 'text', units, lang, more)}</p>
      <p className="hint">{loads('basis', { basis: text(finding.basis) })}</p>
    </>
  )
}
