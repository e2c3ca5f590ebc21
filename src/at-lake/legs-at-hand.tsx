/** Which legs there are, by length: those of the plan, and what else lies on the shore. */
import { Stepper } from '../ui/controls.tsx'
import { meters } from '../words/index.ts'
import { Frame, Head } from './frame.tsx'
import { cameFrom, useBegun, useSay } from './lake.ts'

const MOST = 99

export function LegsAtHand() {
  const { go, project, record, atHand, setAtHand } = useBegun()
  const { t, length } = useSay()
  const planned = (code: string): number => record.legs.filter((leg) => leg.planned?.stock === code).length
  const counts = new Map((atHand ?? []).map(({ code, count }) => [code, count]))
  const countOf = (code: string): number => (atHand ? (counts.get(code) ?? 0) : planned(code))
  const legs = project?.catalog.legs ?? []
  const set = (code: string, to: number): void =>
    setAtHand(legs.map((leg) => ({ code: leg.code, count: leg.code === code ? to : countOf(leg.code) })))
  return (
    <Frame title={t('home.legs')} home={() => go({ at: 'home' })}>
      <Head of={t('legs.title')} />
      <p>{t('legs.lead')}</p>
      <div className="list">
        {legs.map(({ code, length: long }) => (
          <Stepper
            key={code}
            label={t('legs.of', { length: meters(long) })}
            fewer={t('legs.fewer', { length: meters(long) })}
            more={t('legs.more', { length: meters(long) })}
            value={countOf(code)}
            min={0}
            max={MOST}
            set={(to) => set(code, to)}
          />
        ))}
      </div>
      <p className="hint">
        {t('legs.hint', { shortest: length(Math.min(...legs.map((leg) => leg.length))) })}
      </p>
      <BackToWork />
    </Frame>
  )
}

/** Back to the station that one came from: the first at which there is something to do. */
function BackToWork() {
  const { go, page } = useBegun()
  const { t } = useSay()
  return (
    <div className="ways">
      <button type="button" className="main" onClick={() => go(cameFrom(page))}>
        {t('legs.done')}
      </button>
    </div>
  )
}
