/** The year that is written down, as the clock has it or as somebody says: a phone's clock may be wrong. */
import { useState } from 'react'
import { text } from '../words/index.ts'
import { useBegun, useSay } from './lake.ts'

export function SeasonField() {
  const { season, setSeason } = useBegun()
  const { t } = useSay()
  const [open, setOpen] = useState(false)
  if (!open)
    return (
      <button type="button" className="quiet" onClick={() => setOpen(true)}>
        {t('season.is', { season: text(season) })}
      </button>
    )
  const to = (by: number) => (): void => setSeason(String(Number(season) + by))
  return (
    <div className="two">
      <button type="button" onClick={to(-1)}>
        {t('season.to', { season: text(String(Number(season) - 1)) })}
      </button>
      <button type="button" onClick={to(1)}>
        {t('season.to', { season: text(String(Number(season) + 1)) })}
      </button>
    </div>
  )
}
