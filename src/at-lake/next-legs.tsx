/** How deep it will be at the legs to come, by all that was measured: a leg that will be too short is carried out now, not later. */
import { count, meters } from '../words/index.ts'
import { isGuess } from './guess.ts'
import { useBegun, useSay } from './lake.ts'

/** So many legs are looked ahead. */
const AHEAD = 4

export function NextLegs({ after }: { readonly after: string }) {
  const { day, state } = useBegun()
  const { t, length } = useSay()
  if (!day) return null
  const all = day.stations.flatMap(({ legs }) => legs)
  const done = new Set(state.legs.filter(({ set, sounding }) => set || sounding).map(({ leg }) => leg.id))
  const here = all.findIndex(({ leg }) => leg === after)
  const coming = all.slice(here + 1).filter(({ leg }) => !done.has(leg))
  const shown = coming.slice(0, AHEAD)
  if (shown.length === 0 || !shown.some(({ measured }) => measured === null)) return null
  return (
    <details className="coming">
      <summary>{t('coming.title')}</summary>
      <table className="lake-table">
        <thead>
          <tr>
            <th scope="col">{t('coming.leg')}</th>
            <th scope="col">{t('coming.depth')}</th>
            <th scope="col">{t('coming.stock')}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ leg, number, expected, stock, planned, limit }) => (
            <tr key={leg}>
              <td>{number}</td>
              <td>
                {expected.depth < 0
                  ? t('coming.dry')
                  : isGuess(expected)
                    ? t('coming.about', { depth: meters(expected.depth) })
                    : t('measure.give', { depth: meters(expected.depth), off: meters(2 * expected.sd) })}
              </td>
              <td>
                {stock ? length(stock.length) : t('coming.none')}
                {stock &&
                  planned &&
                  stock.code !== planned.code &&
                  ` ${t('coming.not', { length: meters(planned.length) })}`}
                {limit.reasons.some((reason) => reason.startsWith('brace')) && ` ${t('coming.brace')}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">{t('coming.hint', { count: count(2) })}</p>
    </details>
  )
}
