/** When to stop, in words that are read in a glance. On every screen on which somebody is in or over the water. */
import { useSay } from './lake.ts'

export function Stops() {
  const { t } = useSay()
  return (
    <div className="stop">
      <p>
        <b>{t('stop.lightning')}</b>
      </p>
      <p>{t('stop.others')}</p>
    </div>
  )
}
