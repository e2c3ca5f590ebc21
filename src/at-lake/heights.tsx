/** How each leg stands, as it was written down: the table that goes into the boathouse. */
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { levelText } from './level.tsx'
import { legNumberOf } from './names.ts'
import { TwoPhones } from './two-phones.tsx'

export function Heights() {
  const begun = useBegun()
  const { t } = useSay()
  return (
    <Frame title={t('home.heights')} home={() => begun.go({ at: 'home' })}>
      <Head of={t('heights.title', { season: begun.season })} />
      <HeightsTable />
      <div className="ways">
        <button type="button" onClick={() => begun.go({ at: 'share' })}>
          {t('home.share')}
        </button>
      </div>
    </Frame>
  )
}

export function HeightsTable() {
  const begun = useBegun()
  const say = useSay()
  const { t, length } = say
  const { state, record } = begun
  const rise = record.rise ?? 0
  const planned = record.rise !== null
  const lengths = (code: string | null): number | undefined =>
    begun.project?.catalog.legs.find((leg) => leg.code === code)?.length
  return (
    <>
      {state.level && <p>{levelText(state.level.level, begun, say)}</p>}
      {state.conflicts.length > 0 && <TwoPhones conflicts={state.conflicts} />}
      <table className="lake-table">
        <caption className="unseen">{t('heights.title', { season: begun.season })}</caption>
        <thead>
          <tr>
            <th scope="col">{t('coming.leg')}</th>
            {planned && <th scope="col">{t('heights.frame')}</th>}
            <th scope="col">{t('heights.deck')}</th>
            <th scope="col">{t('coming.stock')}</th>
          </tr>
        </thead>
        <tbody>
          {state.legs.map(({ leg, set }) => {
            const stock = set?.length ?? lengths(set?.stock ?? null)
            return (
              <tr key={leg.id}>
                <th scope="row">{legNumberOf(leg.id, record)}</th>
                {planned && <td>{set ? length(set.frame ?? set.height - rise) : '–'}</td>}
                <td>{set ? length(set.height) : '–'}</td>
                <td>{stock === undefined ? '–' : length(stock)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <p className="hint">{t('heights.hint')}</p>
    </>
  )
}
