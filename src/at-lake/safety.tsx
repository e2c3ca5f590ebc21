/** What hurts people at docks, ticked off one by one before anybody gets wet. */
import { DayLimit } from './day-limit.tsx'
import { Ticks } from './fields.tsx'
import { Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'

interface SafetyProps {
  readonly of: 'set-up' | 'out'
  /** Under which it is written down. */
  readonly at: string
  readonly next: () => void
}

const ALWAYS = ['pairs', 'vests', 'lightning', 'cold', 'power'] as const

export function Safety({ of, at, next }: SafetyProps) {
  const { add, state, project } = useBegun()
  const { t } = useSay()
  const posts = project?.dock.placements.some(({ kind }) => kind === 'anchor-post' || kind === 'auger')
  const names = [...ALWAYS, ...(posts && of === 'set-up' ? (['services'] as const) : [])]
  const keyOf = (name: string): string => `${at}.${name}`
  const items = names.map((name) => ({ key: keyOf(name), label: t(`safe.${name}`) }))
  const done = (key: string): boolean => state.done.includes(key)
  const all = items.every(({ key }) => done(key))
  return (
    <>
      <Head of={t('safe.title')} />
      {of === 'set-up' && <DayLimit />}
      <Ticks items={items} done={done} set={(key, to) => add({ kind: 'step', key, done: to })} />
      <p className="hint">{t('safe.screening')}</p>
      <div className="ways">
        {!all && <p className="hint">{t('safe.all')}</p>}
        <button
          type="button"
          className="main"
          disabled={!all}
          onClick={() => {
            if (!done(at)) add({ kind: 'step', key: at, done: true })
            next()
          }}
        >
          {t('safe.go')}
        </button>
      </div>
    </>
  )
}
