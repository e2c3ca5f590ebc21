/** A figure of the table that was written down wrong, said once more in its place; what stood there before is shown, and stays. */
import { type Entry, putLevelRight, putRight, type SeasonState } from '../../rules/record/index.ts'
import { Select } from '../ui/select.tsx'
import { count, meters } from '../words/index.ts'
import { Measure, type Typed, typedFrom } from './fields.tsx'
import { aboveFrom, Higher } from './higher.tsx'
import { useBegun, useSay } from './lake.ts'
import { levelText } from './level.tsx'
import { levelOf } from './level-draft.ts'
import { legOfLevel } from './level-of-leg.ts'
import { legNumberOf } from './names.ts'
import { claimText } from './two-phones.tsx'
import { useDraft } from './use-draft.ts'

/** What of the season is put right, in the place of a leg's id. */
const LEVEL = 'level'

export function PutRight({ of: state }: { readonly of: SeasonState }) {
  const { record } = useBegun()
  const { t } = useSay()
  const place = `right/${state.season}`
  const [which, choose] = useDraft(place, (kept) => (typeof kept === 'string' ? kept : ''))
  const own = state.legs.find((one) => one.leg.id === which)
  const choices = [
    ...(state.level ? [LEVEL] : []),
    ...state.legs.filter(({ set }) => set).map((one) => one.leg.id),
  ]
  return (
    <div className="list">
      <div className="text-field">
        <label htmlFor="lake-right">{t('right.title')}</label>
        <Select
          id="lake-right"
          value={choices.includes(which) ? which : ''}
          options={['', ...choices]}
          wordOf={(id) =>
            id === ''
              ? t('wear.none')
              : id === LEVEL
                ? t('right.level')
                : t('leg.number', { n: count(legNumberOf(id, record)) })
          }
          set={choose}
        />
      </div>
      {own && <OfLeg key={which} own={own} state={state} place={`${place}/${which}`} />}
      {which === LEVEL && state.level && <OfLevel state={state} place={`${place}/${which}`} />}
    </div>
  )
}

interface OfProps {
  readonly state: SeasonState
  /** What stands in the fields is kept there. */
  readonly place: string
}

function OfLeg({ own, state, place }: OfProps & { readonly own: SeasonState['legs'][number] }) {
  const { record, keeper } = useBegun()
  const { t } = useSay()
  const [{ height, depth }, put, drop] = useDraft(place, figuresFrom)
  const leg = own.leg.id
  const rise = record.rise ?? 0
  const deck = height.value === null ? null : height.value + rise
  // Where the lake was found from a leg its depth is put right where it was measured: the whole dock goes with it.
  const sounded = own.sounding && legOfLevel(state, record) !== leg
  const write = (): void => {
    const right = {
      ...(deck === null ? {} : { height: deck }),
      ...(depth.value === null ? {} : { depth: depth.value }),
    }
    for (const said of putRight(record, own, state, right)) keeper.add(said, state.season)
    drop()
  }
  return (
    <>
      <Measure
        label={t(record.rise === null ? 'set.other-field' : 'set.other-frame')}
        kind="leg"
        typed={height}
        set={(to) => put({ height: to, depth })}
      />
      {deck !== null && record.rise !== null && <p>{t('right.to-deck', { deck: meters(deck) })}</p>}
      {sounded && (
        <Measure
          label={t('right.depth')}
          kind="depth"
          typed={depth}
          set={(to) => put({ height, depth: to })}
        />
      )}
      <button
        type="button"
        className="main"
        disabled={height.value === null && depth.value === null}
        onClick={write}
      >
        {t('right.write')}
      </button>
      <Before
        season={state.season}
        is={(entry) => (entry.kind === 'set' || entry.kind === 'sounding') && entry.leg === leg}
      />
    </>
  )
}

/** How the lake stood over the survey water, whatever it was told against. */
function OfLevel({ state, place }: OfProps) {
  const begun = useBegun()
  const say = useSay()
  const { t } = say
  const [{ typed, higher }, put, drop] = useDraft(place, aboveFrom)
  const right = levelOf(
    { way: 'said', typed, low: null, higher },
    { mark: undefined, last: null, beside: null },
  )
  const write = (): void => {
    if (!right) return
    for (const said of putLevelRight(state, right.level)) begun.keeper.add(said, state.season)
    drop()
  }
  return (
    <>
      <Higher stood typed={typed} higher={higher} than={null} put={put} />
      {right && <p>{levelText(right.level, begun, say)}</p>}
      <p className="hint">{t('right.level-hint')}</p>
      <button type="button" className="main" disabled={right === null} onClick={write}>
        {t('right.write')}
      </button>
      <Before season={state.season} is={({ kind }) => kind === 'level'} />
    </>
  )
}

interface Figures {
  readonly height: Typed
  readonly depth: Typed
}

const figuresFrom = (kept: unknown): Figures => {
  const { height, depth } = Object(kept) as { readonly [K in keyof Figures]?: unknown }
  return { height: typedFrom(height), depth: typedFrom(depth) }
}

interface BeforeProps {
  readonly season: string
  readonly is: (entry: Entry) => boolean
}

/** All that was ever written of it in that season, the last one last. */
function Before({ season, is }: BeforeProps) {
  const begun = useBegun()
  const say = useSay()
  const told = begun.record.entries.filter((entry) => entry.season === season && is(entry))
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
