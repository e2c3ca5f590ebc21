/** Whether the leg that lies ready does, and if not which other: what is carried where so that the fewest legs are swapped. */
import type { LegAt } from '../../rules/at-lake/index.ts'
import { count, meters } from '../words/index.ts'
import { aside, useBegun, useSay } from './lake.ts'
import { legNumberOf } from './names.ts'

/** @param stop a stop stands: then nothing is told to be good */
export function LegInHand({ at, stop }: { readonly at: LegAt; readonly stop: boolean }) {
  const { day, record, project, go, page } = useBegun()
  const { t } = useSay()
  const { stock, planned, enough, heights } = at
  const moves = day?.assignment.moves ?? []
  const own = moves.find(({ to }) => to === at.leg)
  const lengthOf = (code: string): number =>
    project?.catalog.legs.find((leg) => leg.code === code)?.length ?? 0
  // The stop itself says so, and leads to the same.
  if (!stock && stop) return null
  if (!stock)
    return (
      <div className="stop">
        <p>
          <b>{t('leg.none')}</b>
        </p>
        {at.needs && <p>{t('leg.needs', { length: meters(at.needs.length) })}</p>}
        <button type="button" onClick={() => go(aside('legs', page))}>
          {t('leg.others')}
        </button>
      </div>
    )
  const over = Math.max(0, heights.aboveDeck ?? 0)
  const values = { length: meters(stock.length), over: meters(over), planned: meters(planned?.length ?? 0) }
  if (!own && stop) return null
  if (!own)
    return (
      <p className={enough === 'yes' ? 'good' : 'care'}>
        {t(enough === 'yes' ? 'leg.enough' : 'leg.reserve', values)}
      </p>
    )
  return (
    <div className="care">
      <p>
        <b>{t('leg.other', values)}</b>
      </p>
      {moves.map(({ code, from, to }) => (
        <p key={to}>
          {t(from === null ? 'leg.from-shore' : 'leg.swap', {
            length: meters(lengthOf(code)),
            to: count(legNumberOf(to, record)),
            from: count(legNumberOf(from ?? '', record)),
          })}
        </p>
      ))}
      {enough === 'reserve' && <p>{t('leg.reserve', values)}</p>}
      <button type="button" onClick={() => go(aside('legs', page))}>
        {t('leg.others')}
      </button>
    </div>
  )
}
