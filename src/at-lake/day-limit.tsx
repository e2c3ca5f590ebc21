/** What forbids to set up today, or at all: said before anything is carried. */
import { ShopNumber } from './call.tsx'
import { useBegun, useSay } from './lake.ts'

export function DayLimit() {
  const { day } = useBegun()
  const { t } = useSay()
  const reasons = day?.limit.reasons ?? []
  if (reasons.length === 0) return null
  return (
    <div className="stop">
      <p>
        <b>{t('limit.stop')}</b>
      </p>
      {reasons.map((reason) => (
        <p key={reason}>{t(`day.${reason}`)}</p>
      ))}
      <ShopNumber />
    </div>
  )
}
