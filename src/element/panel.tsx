/** The panel: the few parameters, then the answers in the order in which they are asked for. */
import { cautionsIn } from '../../rules/index.ts'
import { FindingsPanel } from '../panel/findings.tsx'
import { Summary } from '../panel/summary.tsx'
import { Totals } from '../panel/totals.tsx'
import { Parameters } from '../parameters/parameters.tsx'
import { useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useHandles } from '../ui/handles.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'

const papers = chunk(() => import('../documents/documents-panel.tsx').then((m) => m.DocumentsPanel))
const why = chunk(() => import('../panel/reasons.tsx').then((m) => m.Reasons))

const legs = chunk(() => import('../panel/reasons.tsx').then((m) => m.LegTable))

/** Every leg with its heights and brace, in sight at once. */
function CrewLegs() {
  const { t } = useWords()
  return (
    <section className="answer crew-legs">
      <h2>{t('legs.title')}</h2>
      <Lazy chunk={legs} props={{}} />
    </section>
  )
}

export function Panel() {
  const { t, language } = useWords()
  const handles = useHandles()
  const crew = useLeadline((s) => s.audience === 'crew')
  // Keyed, so that what is open stays open where another audience has another order. Each sees first what they came for: the crew what stands where, everyone else what they may choose.
  const parameters = <Parameters key="parameters" />
  return (
    <div className="panel" part="panel">
      {!crew && parameters}
      <FindingsPanel key="findings" />
      <Summary key="summary" />
      {crew && <CrewLegs key="legs" />}
      <Totals key="totals" />
      {crew && parameters}
      <Fold key="why" className="answer why" title={t('why.title')}>
        <Lazy chunk={why} props={{}} />
      </Fold>
      <Fold key="papers" className="answer papers" title={t('papers.title')} handle={handles.papers}>
        <Lazy chunk={papers} props={{}} />
      </Fold>
      <Fold key="cautions" className="answer cautions" id="cautions" title={t('cautions.title')} print>
        <ul>
          {cautionsIn({ language }).map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Fold>
    </div>
  )
}
