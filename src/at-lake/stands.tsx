/** The dock stands: what is next, and how it stands. */
import { Head } from './frame.tsx'
import { HeightsTable } from './heights.tsx'
import { useBegun, useSay } from './lake.ts'

export function Stands() {
  const { go } = useBegun()
  const { t } = useSay()
  return (
    <>
      <Head of={t('stands.title')} />
      <p className="good">{t('stands.lead')}</p>
      <HeightsTable />
      <div className="ways">
        <button type="button" className="main" onClick={() => go({ at: 'check' })}>
          {t('stands.check')}
        </button>
        <button type="button" onClick={() => go({ at: 'share' })}>
          {t('stands.share')}
        </button>
        <button type="button" onClick={() => go({ at: 'home' })}>
          {t('stands.home')}
        </button>
      </div>
    </>
  )
}
