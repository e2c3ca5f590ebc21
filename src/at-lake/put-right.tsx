/** A figure of the table that was written down wrong, said once more in its place; what stood there before is shown, and stays. */
import { useState } from 'react'
import { putRight, type SeasonState } from '../../rules/record/index.ts'
import { Select } from '../ui/select.tsx'
import { count, meters } from '../words/index.ts'
import { Measure, NOTHING, type Typed } from './fields.tsx'
import { useBegun, useSay } from './lake.ts'
import { legOfLevel } from './level-of-leg.ts'
import { legNumberOf } from './names.ts'
import { claimText } from './two-phones.tsx'

export function PutRight({ of: state }: { readonly of: SeasonState }) {
  const { record, keeper } = useBegun()
  const { t } = useSay()
  const [leg, setLeg] = useState('')
  const [height, setHeight] = useState<Typed>(NOTHING)
  const [depth, setDepth] = useState<Typed>(NOTHING)
  const own = state.legs.find((one) => one.leg.id === leg)
  const choose = (to: string): void => {
    setLeg(to)
    setHeight(NOTHING)
    setDepth(NOTHING)
  }
  const rise = record.rise ?? 0
  const deck = height.value === null ? null : height.value + rise
  // Where the lake was found from a leg its depth is put right where it was measured: the whole dock goes with it.
  const sounded = own?.sounding && legOfLevel(state, record) !== leg
  const write = (): void => {
    if (!own) return
    const right = {
      ...(deck === null ? {} : { height: deck }),
      ...(depth.value === null ? {} : { depth: depth.value }),
    }
    for (const said of putRight(record, own, state, right)) keeper.add(said, state.season)
    setHeight(NOTHING)
    setDepth(NOTHING)
  }
  return (
    <div className="list">
      <div className="text-field">
        <label htmlFor="lake-right">{t('right.title')}</label>
        <Select
          id="lake-right"
          value={leg}
          options={['', ...state.legs.filter(({ set }) => set).map((one) => one.leg.id)]}
          wordOf={(id) =>
            id === '' ? t('wear.none') : t('leg.number', { n: count(legNumberOf(id, record)) })
          }
          set={choose}
        />
      </div>
      {own && (
        <>
          <Measure
            label={t(record.rise === null ? 'set.other-field' : 'set.other-frame')}
            kind="leg"
            typed={height}
            set={setHeight}
          />
          {deck !== null && record.rise !== null && <p>{t('right.to-deck', { deck: meters(deck) })}</p>}
          {sounded && <Measure label={t('right.depth')} kind="depth" typed={depth} set={setDepth} />}
          <button
            type="button"
            className="main"
            disabled={height.value === null && depth.value === null}
            onClick={write}
          >
            {t('right.write')}
          </button>
          <Before leg={leg} season={state.season} />
        </>
      )}
    </div>
  )
}

/** All that was ever written of the leg's height and depth in that season, the last one last. */
function Before({ leg, season }: { readonly leg: string; readonly season: string }) {
  const begun = useBegun()
  const say = useSay()
  const told = begun.record.entries.filter(
    (entry) =>
      (entry.kind === 'set' || entry.kind === 'sounding') && entry.leg === leg && entry.season === season,
  )
  return (
    <>
      <p className="hint">{say.t('right.before')}</p>
      <ul>
        {told.map((entry) => (
          <li key={entry.id}>{claimText(entry, begun, say)}</li>
        ))}
      </ul>
    </>
  )
}
