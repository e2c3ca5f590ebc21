/** Where the dock goes to, of a shop whose freight goes by that: kept in the design, so that page, papers and request have the same total. */
import { useEffect, useId, useState } from 'react'
import type { Design } from '../../rules/index.ts'
import type { Estimate } from '../../rules/papers/quote.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { REQUEST } from '../words/request.ts'

export function ZoneField() {
  const { t } = useWords(REQUEST)
  const zones = useLeadline((s) => s.catalog.quote?.zones)
  const chosen = useLeadline((s) => s.design.job?.zone)
  const edit = useLeadline((s) => s.edit)
  const named = useNames()
  const id = useId()
  if (!zones || zones.length === 0) return null
  const choose = (code: string): void => {
    edit((design): Design => {
      const { zone: _, ...job } = design.job ?? {}
      return { ...design, job: code === '' ? job : { ...job, zone: code } }
    })
  }
  return (
    <>
      <div className="paper-options">
        <label htmlFor={id}>{t('request.zone')}</label>
        <select
          id={id}
          value={zones.some(({ code }) => code === chosen) ? chosen : ''}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          <option value="">{t('request.zone-none')}</option>
          {zones.map((zone) => (
            <option key={zone.code} value={zone.code}>
              {named(zone)}
            </option>
          ))}
        </select>
      </div>
      <Total />
    </>
  )
}

/** What it comes to with tax and freight: the estimate's own figures. A shop's quote has terms of its own beside them. */
function Total() {
  const { t, money, priced, lined } = useWords(REQUEST)
  const isCustomer = useLeadline((s) => s.audience === 'customer')
  const made = useEstimate()
  if (!priced || !made || made.stops > 0 || made.freight.by === 'absent') return null
  const { freight, total } = made
  if (freight.price === null) return <p className="hint">{t('request.freight-open')}</p>
  return (
    <p className="hint">
      {lined && t('request.freight', { price: text(money(freight.price)) })}{' '}
      {isCustomer && t('request.total', { price: text(money(total)) })}
    </p>
  )
}

/** Null until it is worked out. */
function useEstimate(): Estimate | null {
  const dock = useDock()
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const stale = useLeadline((s) => s.stale)
  const [made, setMade] = useState<Estimate | null>(null)
  useEffect(() => {
    let over = false
    setMade(null)
    if (!stale)
      import('../../rules/papers/quote.ts').then(
        // No day is in it that a price hangs on.
        ({ estimate }) => over || setMade(estimate(dock, design, catalog, { date: '2000-01-01' })),
        () => {},
      )
    return () => {
      over = true
    }
  }, [dock, design, catalog, stale])
  return made
}
