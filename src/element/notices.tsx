/** What is told once: a file opened, a link copied, a file that could not be used and why. */

import { useHost } from '../state/host.ts'
import { useLeadline } from '../state/store.ts'
import { Sign } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'

export function Notices() {
  const notice = useLeadline((s) => s.notice)
  const set = useLeadline((s) => s.set)
  const host = useHost()
  const { t } = useWords()
  const done = (): void => set({ notice: null })
  return (
    <div className="notices" role="status">
      {notice && (
        <div className={notice.bad ? 'notice bad' : 'notice'} part="notice">
          <div>
            <p>{t(notice.key)}</p>
            {notice.details?.map((line) => (
              <p key={line} className="hint">
                {line}
              </p>
            ))}
            {notice.offer === 'other' && (
              <button
                type="button"
                onClick={() => {
                  done()
                  host.showOther()
                }}
              >
                {t('keep.show-other')}
              </button>
            )}
            {notice.offer === 'reload' && (
              <button type="button" onClick={() => host.reload()}>
                {t('part.reload')}
              </button>
            )}
          </div>
          <button type="button" className="quiet icon" aria-label={t('notice.close')} onClick={done}>
            <Sign d="M5 5l8 8M13 5l-8 8" />
          </button>
        </div>
      )}
    </div>
  )
}
