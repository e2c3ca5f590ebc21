/** The figures of a finding: what it says with numbers, its case in words, and what it goes by. */
import { type Finding, findingText } from '../../rules/index.ts'
import { text } from '../words/index.ts'
import { useLoadWords } from '../words/use-load-words.ts'
import { caseInWords } from './cases.ts'

export function Figures({ finding }: { readonly finding: Finding }) {
  const words = useLoadWords()
  const { units, lang, loads } = words
  const { values } = finding
  const named = values.case
  const said =
    named === undefined
      ? finding
      : { ...finding, values: { ...values, case: text(caseInWords(String(named.value), words)) } }
  return (
    <>
      <p>{findingText(said, 'text', units, lang)}</p>
      <p className="hint">{loads('basis', { basis: text(finding.basis) })}</p>
    </>
  )
}
