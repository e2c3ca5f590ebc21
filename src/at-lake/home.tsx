/** Where one starts from: how far the dock is this season, what comes next, and all else that can be done. */
import { useLeadline } from '../state/store.ts'
import { count, text } from '../words/index.ts'
import { Frame, Head } from './frame.tsx'
import { type Begun, type Page, useBegun, useLake, useSay } from './lake.ts'
import { nextStage } from './stages.ts'
import { useOutStages, useSetUpStages } from './use-stages.ts'

export function Home() {
  const begun = useBegun()
  const lake = useLake()
  const { t } = useSay()
  const { record, go } = begun
  const name = record.name || t('home.unnamed')
  return (
    <Frame title={t('title')}>
      <Head of={name} />
      <Next />
      <Others />
      <div className="list">
        <UnitsChoice />
        <button type="button" className="quiet" onClick={() => lake.show(null)}>
          {t('home.other-dock')}
        </button>
        {lake.leave && (
          <button type="button" className="quiet" onClick={lake.leave}>
            {t('home.plan')}
          </button>
        )}
        <button type="button" className="quiet" onClick={() => go({ at: 'call' })}>
          {t('call.title')}
        </button>
      </div>
    </Frame>
  )
}

/** How far it is: not begun, under way, standing, on its way out, out. */
function phaseOf(
  { state, record }: Begun,
  outBegun: boolean,
): 'new' | 'under-way' | 'stands' | 'coming-out' | 'out' {
  if (state.out.some(({ leg, section }) => leg === undefined && section === undefined)) return 'out'
  if (outBegun) return 'coming-out'
  const set = state.legs.filter((leg) => leg.set).length
  if (set === 0 && state.done.length === 0 && state.level === null) return 'new'
  return set >= record.legs.length ? 'stands' : 'under-way'
}

function Next() {
  const begun = useBegun()
  const { t } = useSay()
  const { state, season, last, record, go, setSeason } = begun
  const setUp = useSetUpStages(begun)
  const out = useOutStages(begun)
  const outBegun = out.some(({ key }) => state.done.includes(key))
  const phase = phaseOf(begun, outBegun)
  const at = nextStage(setUp, state)
  const set = state.legs.filter((leg) => leg.set).length
  const values = { season: text(season), set: count(set), all: count(record.legs.length) }
  const on = { at: 'set-up', stage: at } as const
  const button = (label: string, to: Page, more?: string) => (
    <button type="button" className="main" onClick={() => go(to)}>
      {label}
      {more && <small>{more}</small>}
    </button>
  )
  switch (phase) {
    case 'new':
      return (
        <div className="list">
          {last
            ? button(t('home.again', values), { at: 'set-up', stage: 0 }, t('home.again-more'))
            : button(t('home.begin'), { at: 'set-up', stage: 0 }, t('home.begin-more'))}
          {last && (
            <button type="button" onClick={() => go({ at: 'next' })}>
              {t('home.next')}
            </button>
          )}
        </div>
      )
    case 'under-way':
      return (
        <div className="list">
          <p>{t('home.so-far', values)}</p>
          {button(t('home.go-on'), on)}
        </div>
      )
    case 'stands':
      return (
        <div className="list">
          <p className="good">{t('home.stands', values)}</p>
          {at < setUp.length
            ? button(t('home.finish'), on, t('home.finish-more'))
            : button(t('home.check'), { at: 'check' }, t('home.check-more'))}
          <button type="button" onClick={() => go({ at: 'out', stage: 0 })}>
            {t('home.out')}
            <small>{t('home.out-more')}</small>
          </button>
        </div>
      )
    case 'coming-out':
      return (
        <div className="list">
          <p>{t('home.coming-out', values)}</p>
          {button(t('home.out-on'), { at: 'out', stage: nextStage(out, state) })}
        </div>
      )
    case 'out': {
      const spring = String(Number(season) + 1)
      return (
        <div className="list">
          <p className="good">{t('home.is-out', values)}</p>
          <button
            type="button"
            className="main"
            onClick={() => {
              setSeason(spring)
              go({ at: 'set-up', stage: 0 })
            }}
          >
            {t('home.again', { season: text(spring) })}
            <small>{t('home.again-more')}</small>
          </button>
          <button
            type="button"
            onClick={() => {
              setSeason(spring)
              go({ at: 'next' })
            }}
          >
            {t('home.next')}
          </button>
        </div>
      )
    }
  }
}

/** What can be done at any time. */
function Others() {
  const { go, state, project } = useBegun()
  const { t } = useSay()
  const orders = state.wear.filter(({ order }) => order).length
  const ways: readonly (readonly [Page['at'], string])[] = [
    ['heights', t('home.heights')],
    ['wear', t('home.wear')],
    ...(orders > 0 ? [['shop', t('home.shop', { count: count(orders) })] as const] : []),
    ['share', t('home.share')],
    ...(project ? [['legs', t('home.legs')] as const] : []),
  ]
  return (
    <div className="list">
      {ways.map(([at, label]) => (
        <button type="button" key={at} onClick={() => at !== 'set-up' && at !== 'out' && go({ at })}>
          {label}
        </button>
      ))}
    </div>
  )
}

export function UnitsChoice() {
  const set = useLeadline((s) => s.set)
  const { t, units } = useSay()
  return (
    <button
      type="button"
      className="quiet"
      onClick={() => set({ units: units === 'imperial' ? 'metric' : 'imperial' })}
    >
      {t(units === 'imperial' ? 'units.to-metric' : 'units.to-feet')}
    </button>
  )
}
