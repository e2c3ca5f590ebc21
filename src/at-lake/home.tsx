/** Where one starts from: how far the dock is this season, what comes next, and all else that can be done. */
import { type ReactNode, useEffect } from 'react'
import { isWork, orderedKey, type SeasonState } from '../../rules/record/index.ts'
import { keepUnits } from '../state/kept-units.ts'
import { useLeadline } from '../state/store.ts'
import { count, text } from '../words/index.ts'
import { useCallWord } from './call.tsx'
import { Frame, Head } from './frame.tsx'
import { type Begun, type Page, useBegun, useLake, useSay } from './lake.ts'
import { nextStage } from './stages.ts'
import { TwoPhones } from './two-phones.tsx'
import { useOutStages, useSetUpStages } from './use-stages.ts'

export function Home() {
  const begun = useBegun()
  const lake = useLake()
  const { t } = useSay()
  const { record, go } = begun
  const call = useCallWord()
  const name = record.name || t('home.unnamed')
  return (
    <Frame title={t('title')}>
      <Head of={name} />
      <TwoPhones conflicts={begun.state.conflicts} />
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
          {t(call)}
        </button>
      </div>
    </Frame>
  )
}

/** How far it is: not begun, under way, standing, on its way out, out. */
function phaseOf(
  { state, record, project }: Begun,
  outBegun: boolean,
): 'new' | 'under-way' | 'stands' | 'coming-out' | 'out' {
  if (state.out.some(({ leg, section }) => leg === undefined && section === undefined)) return 'out'
  if (outBegun) return 'coming-out'
  const set = state.legs.filter((leg) => leg.set).length
  // Of a dock that stands already the level is written down when it is begun.
  if (!isUnderWay(state) || (set === 0 && !project && state.done.length === 0)) return 'new'
  return set >= record.legs.length ? 'stands' : 'under-way'
}

const isUnderWay = ({ legs, done, level }: Begun['state']): boolean =>
  legs.some(({ set }) => set) || done.some(isWork) || level !== null

type Phase = ReturnType<typeof phaseOf>

/** What comes next in each phase. */
const NEXT: Readonly<Record<Phase, () => ReactNode>> = {
  new: NotBegun,
  'under-way': UnderWay,
  stands: Standing,
  'coming-out': ComingOut,
  out: IsOut,
}

function Next() {
  const begun = useBegun()
  const out = useOutStages(begun)
  const Part =
    NEXT[
      phaseOf(
        begun,
        out.some(({ key }) => begun.state.done.includes(key)),
      )
    ]
  return (
    <div className="list">
      <Part />
    </div>
  )
}

interface WayProps {
  readonly label: string
  readonly more?: string
  readonly to: Page
  readonly main?: boolean
}

function Way({ label, more, to, main = false }: WayProps) {
  const { go } = useBegun()
  return (
    <button type="button" className={main ? 'main' : ''} onClick={() => go(to)}>
      {label}
      {more && <small>{more}</small>}
    </button>
  )
}

function useFigures() {
  const { state, season, record } = useBegun()
  const set = state.legs.filter((leg) => leg.set).length
  return { season: text(season), set: count(set), all: count(record.legs.length) }
}

/** Where the dock lies, as it was said last. */
const storedIn = ({ out }: SeasonState): string | undefined =>
  out.findLast(({ stored }) => stored !== undefined)?.stored

const FIRST: Page = { at: 'set-up', stage: 0 }

function NotBegun() {
  const { last, project, state } = useBegun()
  const { t } = useSay()
  const values = useFigures()
  // It stands already.
  if (!last && !project)
    return (
      <Way
        main
        to={{ at: 'set-up', stage: state.level ? 1 : 0 }}
        label={t('home.begin-old')}
        more={t('welcome.old-more')}
      />
    )
  const lies = last && storedIn(last)
  return last ? (
    <>
      {lies && <p className="good">{t('home.stored', { where: text(lies) })}</p>}
      <Way main to={FIRST} label={t('home.again', values)} more={t('home.again-more')} />
      <Way to={{ at: 'next' }} label={t('home.next')} />
    </>
  ) : (
    <Way main to={FIRST} label={t('home.begin')} more={t('home.begin-more')} />
  )
}

function UnderWay() {
  const begun = useBegun()
  const { t } = useSay()
  const values = useFigures()
  const stages = useSetUpStages(begun)
  const to: Page = { at: 'set-up', stage: nextStage(stages, begun.state, begun.day) }
  // biome-ignore lint/correctness/useExhaustiveDependencies: when it is opened.
  useEffect(() => {
    if (begun.goesOn()) begun.go(to)
  }, [])
  return (
    <>
      <p>{t('home.so-far', values)}</p>
      <Way main to={to} label={t('home.go-on')} />
    </>
  )
}

function Standing() {
  const begun = useBegun()
  const { t } = useSay()
  const values = useFigures()
  const stages = useSetUpStages(begun)
  const at = nextStage(stages, begun.state, begun.day)
  return (
    <>
      <p className="good">{t('home.stands', values)}</p>
      {at < stages.length ? (
        <Way main to={{ at: 'set-up', stage: at }} label={t('home.finish')} more={t('home.finish-more')} />
      ) : (
        <Way main to={{ at: 'check' }} label={t('home.check')} more={t('home.check-more')} />
      )}
      <Way to={{ at: 'out', stage: 0 }} label={t('home.out')} more={t('home.out-more')} />
    </>
  )
}

function ComingOut() {
  const begun = useBegun()
  const { t } = useSay()
  const stages = useOutStages(begun)
  return (
    <>
      <p>{t('home.coming-out')}</p>
      <Way main to={{ at: 'out', stage: nextStage(stages, begun.state) }} label={t('home.out-on')} />
    </>
  )
}

function IsOut() {
  const { season, setSeason, go, state } = useBegun()
  const { t } = useSay()
  const values = useFigures()
  const spring = String(Number(season) + 1)
  const stored = storedIn(state)
  const into = (page: Page) => (): void => {
    setSeason(spring)
    go(page)
  }
  return (
    <>
      <p className="good">
        {t('home.is-out', values)} {stored && t('home.stored', { where: text(stored) })}
      </p>
      <button type="button" className="main" onClick={into(FIRST)}>
        {t('home.again', { season: text(spring) })}
        <small>{t('home.again-more')}</small>
      </button>
      <button type="button" onClick={into({ at: 'next' })}>
        {t('home.next')}
      </button>
    </>
  )
}

/** What can be done at any time. */
function Others() {
  const { go, state, project, last } = useBegun()
  const { t } = useSay()
  const orders = state.wear.filter(({ order, id }) => order && !state.done.includes(orderedKey(id))).length
  const ways: readonly (readonly [Page['at'], string])[] = [
    ['heights', t('home.heights')],
    ...(last && isUnderWay(state) ? [['next', t('home.next')] as const] : []),
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
      onClick={() => {
        const to = units === 'imperial' ? 'metric' : 'imperial'
        keepUnits(to)
        set({ units: to })
      }}
    >
      {t(units === 'imperial' ? 'units.to-metric' : 'units.to-feet')}
    </button>
  )
}
