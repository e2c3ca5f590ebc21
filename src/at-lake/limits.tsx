/** What does not go as planned at a leg, in plain words, and what to do: measure again, take another leg, or stop and call the shop. */
import type { Day, LegAt } from '../../rules/at-lake/index.ts'
import { atLeast } from '../../rules/numbers.ts'
import { meters, text } from '../words/index.ts'
import { ShopNumber } from './call.tsx'
import { aside, toLevel, useBegun, useSay } from './lake.ts'
import { braceName, legsNamed } from './names.ts'

/** @param said the shop said how to go on: what was the matter stays in sight, and stops nobody any more */
export function Limits({ at, said = false }: { readonly at: LegAt; readonly said?: boolean }) {
  const { project, go, page, day, record } = useBegun()
  const { t } = useSay()
  const { say, reasons } = at.limit
  const depth = at.measured?.depth ?? at.expected.depth
  const off = depth - at.others.depth
  const brace = at.brace?.code && project ? braceName(at.brace.code, project.catalog) : ''
  const values = {
    off: meters(Math.abs(off)),
    needs: meters(at.needs?.length ?? 0),
    length: meters(at.stock?.length ?? at.planned?.length ?? 0),
    brace: text(brace),
    legs: text(legsNamed(keptFor(at, day), record)),
  }
  const short = reasons.some((reason) => reason === 'no-leg' || reason === 'on-reserve')
  const lines = reasons.map((reason) =>
    reason === 'differs'
      ? t(off > 0 ? 'limit.deeper' : 'limit.shallower', values)
      : reason === 'no-leg' && at.needs === null
        ? t('limit.no-leg-made', values)
        : t(`limit.${reason}`, values),
  )
  if (short && keptFor(at, day).length > 0) lines.push(t('limit.kept-for', values))
  return (
    <div className={said ? 'care' : 'stop'}>
      <p>
        <b>{t(said ? 'limit.said' : say === 'measure-again' ? 'limit.again' : 'limit.stop')}</b>
      </p>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {!said && short && (
        <button type="button" onClick={() => go(aside('legs', page))}>
          {t('leg.others')}
        </button>
      )}
      {!said && (
        <button type="button" onClick={() => go(toLevel(page))}>
          {t('level.again')}
        </button>
      )}
      {!said && say === 'stop-and-call' && <ShopNumber />}
    </div>
  )
}

/** Legs farther on for which those are kept that would be long enough here. */
export function keptFor({ leg, needs }: LegAt, day: Pick<Day, 'stations'> | null): string[] {
  if (!day || !needs) return []
  return day.stations
    .flatMap(({ legs }) => legs)
    .filter((one) => one.leg !== leg && one.set === null && atLeast(one.stock?.length ?? 0, needs.length))
    .map((one) => one.leg)
}
