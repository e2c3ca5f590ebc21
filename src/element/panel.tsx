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

export function Panel() {
  const { t, language } = useWords()
  const handles = useHandles()
  const crew = useLeadline((s) => s.audience === 'crew')
  const shop = useLeadline((s) => s.catalog.shop)
  // Keyed, so that what is open stays open where another audience has another order. Each sees first what they came for: the crew what stands where, everyone else what they may choose.
  const parameters = <Parameters key="parameters" />
  const downloads = (
    <Fold key="papers" className="answer papers" title={t('papers.title')} handle={handles.papers}>
      <Lazy chunk={papers} props={{}} />
    </Fold>
  )
  return (
    <div className="panel" part="panel">
      {crew ? downloads : parameters}
      <FindingsPanel key="findings" />
      <Summary key="summary" />
      <Totals key="totals" />
      {/* Built as it was ordered: a stray tap on the shore changes nothing. */}
      {crew && (
        <Fold key="change" className="answer change" title={t('change.title')}>
          {parameters}
        </Fold>
      )}
      <Fold key="why" className="answer why" title={t('why.title')}>
        <Lazy chunk={why} props={{}} />
      </Fold>
      {!crew && downloads}
      {!crew && <ToLake />}
      <Fold key="cautions" className="answer cautions" id="cautions" title={t('cautions.title')} print>
        <ul>
          {cautionsIn({ language }, shop).map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Fold>
    </div>
  )
}

/** The way to the day at the lake: a crew's first, everyone else's last. */
export function ToLake() {
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  return (
    <button type="button" className="main" onClick={() => set({ atLake: true })}>
      {t('lake')}
    </button>
  )
}
