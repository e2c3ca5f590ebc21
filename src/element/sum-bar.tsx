/** Always in sight: does it stand, what it costs and weighs, and the way to ask for it. */
import { useState } from 'react'
import { verdictOf } from '../panel/facts.ts'
import { chunk, Later } from '../panel/later.tsx'
import { MARKS, Mark } from '../panel/stands.tsx'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { useWords } from '../words/use-words.ts'

const request = chunk(() => import('../panel/request.tsx').then((m) => m.Request))

export function SumBar() {
  // A number: asked for once more, what did not come is fetched again.
  const [asked, setAsked] = useState(0)
  const dock = useDock()
  const { t, money, mass } = useWords()
  const { standing } = verdictOf(dock, useLeadline(isJudged))
  return (
    <div className="sum">
      {asked > 0 && (
        <div className="asked">
          <Later key={asked} chunk={request} props={{ close: () => setAsked(0) }} />
        </div>
      )}
      <div className="sum-bar">
        <button
          type="button"
          className={`short quiet ${standing}`}
          onClick={(event) => {
            // Not by an address: the fragment of the page is not ours to change here.
            const root = event.currentTarget.getRootNode() as ShadowRoot
            root.querySelector('.stands')?.scrollIntoView({ block: 'center' })
          }}
        >
          <Mark state={MARKS[standing]} />
          <span>{t(`sum.${standing}`)}</span>
          <span className="unseen">{t('sum.show')}</span>
        </button>
        <p className="figures">
          <strong>{money(dock.totals.price)}</strong>
          <span>{mass(dock.totals.mass)}</span>
        </p>
        <button type="button" className="main" onClick={() => setAsked(asked + 1)}>
          {t('quote.ask')}
        </button>
      </div>
    </div>
  )
}
