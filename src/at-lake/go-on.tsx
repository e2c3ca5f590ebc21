/** On the page that plans docks: one is being set up, and a touch leads back to what comes next. */
import { useState } from 'react'
import { useLeadline } from '../state/store.ts'
import { count, text } from '../words/index.ts'
import { useSay } from './lake.ts'
import { goOnWith, keptUnderWay } from './under-way.ts'

export function GoOn() {
  const set = useLeadline((s) => s.set)
  const { t } = useSay()
  const [now] = useState(() => keptUnderWay())
  if (!now) return null
  return (
    <div className="notices">
      <div className="notice" role="status">
        <div>
          <p>
            {t('under-way.title', {
              name: text(now.name || t('home.unnamed')),
              set: count(now.set),
              all: count(now.all),
            })}
          </p>
          <button
            type="button"
            className="main"
            onClick={() => {
              goOnWith(now.id)
              set({ atLake: true })
            }}
          >
            {t('home.go-on')}
          </button>
        </div>
      </div>
    </div>
  )
}
