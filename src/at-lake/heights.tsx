/** How each leg stands, as it was written down: the table that goes into the boathouse. */
import { Fragment, useState } from 'react'
import { type SeasonState, seasonState, seasonsOf } from '../../rules/record/index.ts'
import { Select } from '../ui/select.tsx'
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { levelText } from './level.tsx'
import { legNumberOf, sectionName } from './names.ts'
import { PutRight } from './put-right.tsx'
import { Tape } from './tape.tsx'
import { TwoPhones } from './two-phones.tsx'

export function Heights() {
  const begun = useBegun()
  const { t } = useSay()
  const { record, season, state, last } = begun
  const seasons = seasonsOf(record).filter((one) => seasonState(record, one).legs.some(({ set }) => set))
  const isSet = state.legs.some(({ set }) => set)
  // What nobody has written down yet is no table: how it stood last is.
  const [year, setYear] = useState(isSet || !last ? season : last.season)
  const shown = year === season ? state : seasonState(record, year)
  const years = [...new Set([...seasons, ...(isSet ? [season] : [])])].reverse()
  return (
    <Frame title={t('home.heights')} home={() => begun.go({ at: 'home' })}>
      <Head of={t('heights.title', { season: year })} />
      {years.length > 1 && (
        <div className="text-field">
          <label htmlFor="lake-heights-year">{t('heights.year')}</label>
          <Select id="lake-heights-year" value={year} options={years} wordOf={(one) => one} set={setYear} />
        </div>
      )}
      <HeightsTable of={shown} />
      {shown.legs.some(({ set }) => set) && <PutRight key={year} of={shown} />}
      <div className="ways">
        <button type="button" onClick={() => begun.go({ at: 'share' })}>
          {t('home.share')}
        </button>
      </div>
    </Frame>
  )
}

export function HeightsTable({ of: state }: { readonly of: SeasonState }) {
  const begun = useBegun()
  const say = useSay()
  const { t, length } = say
  const { record } = begun
  const rise = record.rise ?? 0
  const planned = record.rise !== null
  const lengths = (code: string | null): number | undefined =>
    begun.project?.catalog.legs.find((leg) => leg.code === code)?.length
  return (
    <>
      {state.level && <p>{levelText(state.level.level, begun, say)}</p>}
      {state.conflicts.length > 0 && <TwoPhones conflicts={state.conflicts} />}
      <table className="lake-table">
        <caption className="unseen">{t('heights.title', { season: state.season })}</caption>
        <thead>
          <tr>
            <th scope="col">{t('coming.leg')}</th>
            {planned && <th scope="col">{t('heights.frame')}</th>}
            <th scope="col">{t('heights.deck')}</th>
            <th scope="col" className="beside">
              {t('coming.stock')}
            </th>
          </tr>
        </thead>
        <tbody>
          {state.legs.map(({ leg, set }, i) => {
            const stock = set?.length ?? lengths(set?.stock ?? null)
            const begins = leg.section !== null && leg.section !== state.legs[i - 1]?.leg.section
            return (
              <Fragment key={leg.id}>
                {begins && leg.section !== null && (
                  <tr>
                    <th scope="rowgroup" colSpan={planned ? 4 : 3}>
                      {sectionName(leg.section, record, say)}
                    </th>
                  </tr>
                )}
                <tr>
                  <th scope="row">{legNumberOf(leg.id, record)}</th>
                  {planned && (
                    <td className="length">
                      <Tape of={set ? length(set.frame ?? set.height - rise) : '–'} />
                    </td>
                  )}
                  <td className="length">
                    <Tape of={set ? length(set.height) : '–'} />
                    {stock !== undefined && (
                      <small className="under">
                        {t('coming.stock')} {length(stock)}
                      </small>
                    )}
                  </td>
                  <td className="length beside">{stock === undefined ? '–' : length(stock)}</td>
                </tr>
              </Fragment>
            )
          })}
        </tbody>
      </table>
      <p className="hint">{t('heights.hint')}</p>
    </>
  )
}
