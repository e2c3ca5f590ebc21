/** Before the first bolt is loosened: how every leg stands, by what is written down; and which stands otherwise. */
import { useState } from 'react'
import { putRight } from '../../rules/record/index.ts'
import { Select } from '../ui/select.tsx'
import { count } from '../words/index.ts'
import { Measure, NOTHING, type Typed } from './fields.tsx'
import { HeightsTable } from './heights.tsx'
import { useBegun, useSay } from './lake.ts'
import { legNumberOf } from './names.ts'

export function Stood() {
  const { state, record, add } = useBegun()
  const { t } = useSay()
  const [leg, setLeg] = useState('')
  const [typed, setTyped] = useState<Typed>(NOTHING)
  const own = state.legs.find((one) => one.leg.id === leg)
  const choose = (to: string): void => {
    setLeg(to)
    setTyped(NOTHING)
  }
  const write = (): void => {
    if (typed.value === null || !own) return
    for (const said of putRight(record, own, state, { height: typed.value }))
      add({ ...said, how: 'measured' })
    choose('')
  }
  return (
    <>
      <HeightsTable of={state} />
      <div className="text-field">
        <label htmlFor="lake-stood">{t('stood.other')}</label>
        <Select
          id="lake-stood"
          value={leg}
          options={['', ...record.legs.map(({ id }) => id)]}
          wordOf={(id) =>
            id === '' ? t('wear.none') : t('leg.number', { n: count(legNumberOf(id, record)) })
          }
          set={choose}
        />
      </div>
      {leg !== '' && (
        <>
          <Measure label={t('set.other-field')} kind="leg" typed={typed} set={setTyped} />
          <button type="button" disabled={typed.value === null} onClick={write}>
            {t('wear.keep')}
          </button>
        </>
      )}
    </>
  )
}
