/** Always in sight: does it stand, what it costs and weighs, and the way to ask for it. */

import { verdictOf } from '../panel/facts.ts'
import { Mark } from '../panel/stands.tsx'
import { useDock } from '../state/store.ts'
import { useWords } from '../words/use-words.ts'

export function SumBar({ ask }: { readonly ask: () => void }) {
  const dock = useDock()
  const { t, money, mass } = useWords()
  const { stops, warnings } = verdictOf(dock)
  const state = stops > 0 ? 'stop' : warnings > 0 ? 'warn' : 'good'
  return (
    <div className="sum-bar">
      <button
        type="button"
        className={`short quiet ${state}`}
        onClick={(event) => {
          // Not by an address: the fragment of the page is not ours to change here.
          const root = event.currentTarget.getRootNode() as ShadowRoot
          root.querySelector('.stands')?.scrollIntoView({ block: 'center' })
        }}
      >
        <Mark state={state} />
        <span>{t(`sum.${state}`)}</span>
        <span className="unseen">{t('sum.show')}</span>
      </button>
      <p className="figures">
        <strong>{money(dock.totals.price)}</strong>
        <span>{mass(dock.totals.mass)}</span>
      </p>
      <button type="button" className="main" onClick={ask}>
        {t('quote.ask')}
      </button>
    </div>
  )
}
