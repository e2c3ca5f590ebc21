/** The panel: the few parameters, then the answers in the order in which they are asked for. */
import { cautionsIn } from '../../rules/index.ts'
import { Parameters } from '../parameters/parameters.tsx'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../words/use-words.ts'
import { FindingsPanel } from './findings.tsx'
import { Summary } from './summary.tsx'
import { Totals } from './totals.tsx'

const papers = chunk(() => import('../documents/documents-panel.tsx').then((m) => m.DocumentsPanel))
const why = chunk(() => import('./reasons.tsx').then((m) => m.Reasons))

export function Panel() {
  const { t, language } = useWords()
  return (
    <div className="panel" part="panel">
      <Parameters />
      <FindingsPanel />
      <Summary />
      <Totals />
      <Fold className="answer why" title={t('why.title')}>
        <Lazy chunk={why} props={{}} />
      </Fold>
      <Fold className="answer papers" title={t('papers.title')}>
        <Lazy chunk={papers} props={{}} />
      </Fold>
      <Fold className="answer cautions" id="cautions" title={t('cautions.title')} print>
        <ul>
          {cautionsIn({ language }).map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Fold>
    </div>
  )
}
