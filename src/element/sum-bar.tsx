/** Always in sight: can it be built, what it costs and weighs, and the way to ask for it. */
import { useState } from 'react'
import { Mark, useVerdict } from '../panel/findings.tsx'
import { usePrice } from '../panel/use-price.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'

const request = chunk(() => import('../quote-request/request-dialog.tsx').then((m) => m.Request))

/** It is opened, and brought into sight. */
function unfold(fold: HTMLDetailsElement | null): void {
  if (!fold) return
  fold.open = true
  fold.scrollIntoView({ block: 'start' })
}

export function SumBar() {
  // A number: asked for once more, what did not come is fetched again.
  const [asked, setAsked] = useState(0)
  const { findings, papers } = useHandles()
  const dock = useDock()
  const { t, mass, priced } = useWords()
  const stale = useLeadline((s) => s.stale)
  const { standing, mark, short } = useVerdict()
  const price = usePrice()
  const audience = useLeadline((s) => s.audience)
  return (
    <div className="sum">
      {asked > 0 && (
        <div className="asked">
          <Lazy key={asked} chunk={request} props={{ close: () => setAsked(0) }} />
        </div>
      )}
      <div className="sum-bar" part="sum">
        <button
          type="button"
          className={`short quiet ${standing}`}
          // Not by an address: the fragment of the page is not ours to change here.
          onClick={() => findings.current?.scrollIntoView({ block: 'start' })}
        >
          <Mark state={mark} />
          <span>{short}</span>
          <span className="unseen">{t('sum.show')}</span>
        </button>
        <p className="figures">
          <strong>{stale ? t('takes.working') : priced ? price.short : mass(dock.totals.mass)}</strong>
          {priced && <span>{stale ? '' : price.plus}</span>}
        </p>
        {audience === 'customer' && (
          <button type="button" className="main" disabled={stale} onClick={() => setAsked(asked + 1)}>
            {t('quote.ask')}
          </button>
        )}
        {audience === 'shop' && (
          <button type="button" className="main" disabled={stale} onClick={() => unfold(papers.current)}>
            {t('quote.make')}
          </button>
        )}
        <slot name="actions" />
      </div>
    </div>
  )
}
