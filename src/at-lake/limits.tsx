/** What does not go as planned at a leg, in plain words, and what to do: measure again, take another leg, or stop and call the shop. */
import type { LegAt } from '../../rules/at-lake/index.ts'
import { meters, text } from '../words/index.ts'
import { ShopNumber } from './call.tsx'
import { aside, toLevel, useBegun, useSay } from './lake.ts'
import { braceName } from './names.ts'

export function Limits({ at }: { readonly at: LegAt }) {
  const { project, go, page } = useBegun()
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
  }
  const lines = reasons.map((reason) =>
    reason === 'differs'
      ? t(off > 0 ? 'limit.deeper' : 'limit.shallower', values)
      : reason === 'no-leg' && at.needs === null
        ? t('limit.no-leg-made', values)
        : t(`limit.${reason}`, values),
  )
  return (
    <div className="stop">
      <p>
        <b>{t(say === 'measure-again' ? 'limit.again' : 'limit.stop')}</b>
      </p>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {reasons.some((reason) => reason === 'no-leg' || reason === 'on-reserve') && (
        <button type="button" onClick={() => go(aside('legs', page))}>
          {t('leg.others')}
        </button>
      )}
      <button type="button" onClick={() => go(toLevel(page))}>
        {t('level.again')}
      </button>
      {say === 'stop-and-call' && <ShopNumber />}
    </div>
  )
}
