/** The figures of a finding: what it says with numbers, its case in words, and what it goes by. */
import { basisIn, type Finding, findingIn } from '../../rules/index.ts'
import { withLegNumbers } from '../../rules/words/leg-name.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { withCaseInWords } from '../words/load-case-words.ts'
import { LOADS } from '../words/loads.ts'

export function Figures({ finding }: { readonly finding: Finding }) {
  const words = useWords(LOADS)
  const { reader, t } = words
  const more = useLeadline((s) => s.foundLater)
  const dock = useDock()
  return (
    <>
      <p>{findingIn(withCaseInWords(withLegNumbers(finding, dock), words), 'text', reader, more)}</p>
      <p className="hint">{t('basis', { basis: text(basisIn(finding.basis, reader)) })}</p>
    </>
  )
}
