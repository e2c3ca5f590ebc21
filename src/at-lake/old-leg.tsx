/** A leg of a dock without a plan: how it stands is measured once; in the years after it follows from the lake's level. */
import { useState } from 'react'
import { deckOf } from '../../rules/record/index.ts'
import { count, meters } from '../words/index.ts'
import { Measure, NOTHING, type Typed, typedFrom } from './fields.tsx'
import { Figure, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { legNumberOf, placeOf } from './names.ts'
import { TwoPhones } from './two-phones.tsx'

export function OldLeg({ leg, next }: { readonly leg: string; readonly next: () => void }) {
  const { record, state, last, add, keeper } = useBegun()
  const say = useSay()
  const { t, length } = say
  const named = record.legs.find(({ id }) => id === leg)
  const own = state.legs.find((one) => one.leg.id === leg)
  const was = last?.legs.find((one) => one.leg.id === leg)?.set
  const level = state.level?.level ?? 0
  // The deck stays where it was, or goes with the lake: then each leg is longer by as much as the lake rose.
  const stood = last?.legs.find((one) => one.leg.id === leg)?.deck ?? (last && deckOf(last))
  const rose = state.today && stood != null ? state.today.deck - stood : 0
  const told = own?.set?.height ?? (was ? was.height + rose : null)
  const [typed, setTyped] = useState<Typed>(() => typedFrom(keeper.draft(`leg/${leg}`) ?? NOTHING))
  const height = typed.value ?? told
  const put = (to: Typed): void => {
    keeper.keepDraft(`leg/${leg}`, to)
    setTyped(to)
  }
  return (
    <>
      <Head
        of={t(was ? 'set.title' : 'old.leg', { n: count(legNumberOf(leg, record)) })}
        where={named && placeOf(named, record, say)}
      />
      {told !== null && <Figure value={length(told)} of={t('set.deck-old')} />}
      {was && (
        <p className="good">
          {t(
            Math.abs(rose) < 0.003 ? 'set.as-last' : rose > 0 ? 'set.more-than-last' : 'set.less-than-last',
            {
              by: meters(Math.abs(rose)),
            },
          )}
        </p>
      )}
      <TwoPhones conflicts={state.conflicts.filter(({ of }) => of === leg)} />
      <Measure label={t(told === null ? 'old.stands' : 'old.other')} kind="leg" typed={typed} set={put} />
      <p className="hint">{t('old.how')}</p>
      {was && (
        <p className="care">
          <b>{t('old.bolts')}</b>
        </p>
      )}
      <div className={height === null ? 'ways' : 'ways pinned'}>
        <button
          type="button"
          className="main"
          disabled={height === null}
          onClick={() => {
            if (height === null) return
            add({
              kind: 'set',
              leg,
              stock: null,
              height,
              level,
              how: typed.value === null ? 'as-planned' : 'measured',
            })
            keeper.keepDraft(`leg/${leg}`, null)
            next()
          }}
        >
          {t(was ? 'set.done' : 'wear.keep')}
        </button>
      </div>
      <button type="button" className="quiet" onClick={next}>
        {t('old.skip')}
      </button>
    </>
  )
}
