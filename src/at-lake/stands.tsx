/** The dock stands: what is next, and how it stands. */
import { count } from '../words/index.ts'
import { Head } from './frame.tsx'
import { HeightsTable } from './heights.tsx'
import { useBegun, useSay } from './lake.ts'

export function Stands() {
  const { go, state, record } = useBegun()
  const { t } = useSay()
  const set = state.legs.filter((leg) => leg.set).length
  const all = record.legs.length
  return (
    <>
      {set >= all ? (
        <>
          <Head of={t('stands.title')} />
          <p className="good">{t('stands.lead')}</p>
        </>
      ) : (
        <Head of={t('home.so-far', { set: count(set), all: count(all) })} />
      )}
      <HeightsTable of={state} />
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
