/** What is not safely kept is told on every screen, with the file that saves it; so is a clock that cannot be right. */
import { useEffect, useState } from 'react'
import { count, text } from '../words/index.ts'
import { useBegun, useSay } from './lake.ts'
import { useSaveRecord } from './use-save-record.ts'

export function Kept() {
  const { keeper } = useBegun()
  const save = useSaveRecord()
  const [, again] = useState(0)
  useEffect(() => keeper.subscribe(() => again((times) => times + 1)), [keeper])
  const { kept, clockDoubt: doubt } = keeper
  const { t } = useSay()
  if (kept.state === 'kept' && doubt === null) return null
  return (
    <div className="kept" role="status">
      {kept.state !== 'kept' && (
        <>
          <p>{t(`kept.${kept.why ?? 'failed'}`, { entries: count(kept.entries) })}</p>
          <div className="two">
            <button type="button" onClick={save}>
              {t('kept.save')}
            </button>
            <button type="button" onClick={() => void keeper.save()}>
              {t('kept.again')}
            </button>
          </div>
        </>
      )}
      {doubt && (
        <p>
          {t('kept.clock', { newest: text(doubt.newest.slice(0, 10)), now: text(doubt.now.slice(0, 10)) })}
        </p>
      )}
    </div>
  )
}
