/** The boats at the dock: what each is, how large, where it lies, and the water under it. */
import { lowLevel, underKeel } from '../../../rules/clearance/keel.ts'
import { beamOf, END_BOAT, mooredOf } from '../../../rules/layout/berth.ts'
import { USUAL_LENGTHS } from '../../../rules/structure/strength/usual-boats.ts'
import { BOATS } from '../../../rules/words/boats.ts'
import { EXACT } from '../../../rules/words/figures.ts'
import { useLeadline } from '../../state/store.ts'
import { Choice, Hint, Sign } from '../../ui/controls.tsx'
import { Fold } from '../../ui/fold.tsx'
import { LengthField, QuantityField } from '../../ui/quantity-field.tsx'
import { useWords } from '../../ui/use-words.ts'
import { massStep, parseMass } from '../../units/mass.ts'
import { nextStep } from '../../units/steps.ts'
import { meters } from '../../words/index.ts'
import { PEOPLE_AND_BOAT } from '../../words/people-and-boat.ts'
import * as change from './boat-edits.ts'
import { Place } from './place.tsx'

/** More than these on one page are no dock of ours. */
const MOST = 8

export function Boats() {
  const design = useLeadline((s) => s.design)
  const { dock, bed } = useLeadline((s) => s.project)
  const stale = useLeadline((s) => s.stale)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(PEOPLE_AND_BOAT)
  const boats = change.boatsOf(design)
  const placed = mooredOf(dock.sections)
  const more = change.addBoat(design, placed)
  return (
    <div className="control exposure">
      {/* Of no boat too the choice stands in the place of the first, so that it keeps the focus while arrows go through it. */}
      {(boats.length > 0 ? boats : [{ id: END_BOAT, boat: null }]).map(({ id, boat }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the first keeps its place in the list when it gets or loses a name.
        <div className="boat" key={i}>
          <Kinds id={id} first={i === 0} />
          {boat && <Called id={id} boat={boat} />}
          {boat && <Figures id={id} boat={boat} />}
          {boat && !stale && (
            <Place
              id={id}
              placed={placed}
              under={(berth) => underKeel(berth, bed, lowLevel(design.site.levels))}
            />
          )}
        </div>
      ))}
      {boats.length > 0 && boats.length < MOST && (
        <button type="button" className="quiet" disabled={more === design} onClick={() => edit(() => more)}>
          {t('carried.boat.another')}
        </button>
      )}
      {boats.length > 0 && <Hint>{t('carried.boat.storm')}</Hint>}
    </div>
  )
}

const KINDS = ['none', 'fishing', 'runabout', 'pontoon'] as const

function Kinds({ id, first }: { readonly id: string; readonly first: boolean }) {
  const kind = useLeadline((s) => change.kindOf(s.design, id))
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(PEOPLE_AND_BOAT)
  const hint = kind === 'none' ? 'carried.boat.without' : 'carried.boat.hint'
  return (
    <Choice<change.BoatKind>
      legend={t(first ? 'carried.boat' : 'carried.boat.other')}
      value={kind}
      columns={2}
      options={[...KINDS, ...(kind === 'own' ? (['own'] as const) : [])].map((value) => ({
        value,
        label: t(`carried.boat.${value}`),
      }))}
      hint={first && t(hint)}
      set={(to) => edit((d) => change.setKind(d, id, to))}
    />
  )
}

interface Of {
  readonly id: string
  readonly boat: change.Boat
}

function Figures({ id, boat }: Of) {
  const edit = useLeadline((s) => s.edit)
  const { units, t, mass } = useWords(PEOPLE_AND_BOAT)
  const field = (key: 'beam' | 'height' | 'draught', value: number) => (
    <LengthField
      label={t(`carried.boat.${key}`)}
      value={value}
      commit={(to) => edit((d) => change.setBoat(d, id, { [key]: to }))}
    />
  )
  return (
    <Fold summary={t('carried.boat.figures')}>
      <div className="pair">
        <LengthField
          label={t('carried.boat.length')}
          value={boat.length}
          commit={(to) => edit((d) => change.setLength(d, id, to))}
        />
        {field('beam', beamOf(boat))}
        {field('height', boat.height)}
        {field('draught', boat.draught)}
        <QuantityField
          label={t('carried.boat.mass')}
          value={boat.mass}
          shown={mass(boat.mass)}
          read={(typed) => {
            const value = parseMass(typed, units)
            const example = t(`example.mass.${units}`)
            return value === null ? { fault: 'mass.not-a-mass', example } : { value }
          }}
          next={(way, large) => Math.max(0, boat.mass + way * massStep(units, large))}
          commit={(to) => edit((d) => change.setBoat(d, id, { mass: to }))}
        />
      </div>
    </Fold>
  )
}

/** 'Pontoon, 20 ft', with a stepper of whole feet or half meters; what is no usual boat is told by its figures alone. */
function Called({ id, boat }: Of) {
  const kind = useLeadline((s) => change.kindOf(s.design, id))
  const own = useLeadline((s) => change.hasOwnFigures(s.design, id))
  const edit = useLeadline((s) => s.edit)
  const { t, units } = useWords(PEOPLE_AND_BOAT)
  const { t: named } = useWords(BOATS)
  if (kind === 'none' || kind === 'own') return null
  const step = units === 'imperial' ? EXACT.foot : 0.5
  const [least, most] = USUAL_LENGTHS[kind]
  const to = (way: 1 | -1): number => nextStep(boat.length, step, way)
  const lengthen = (way: 1 | -1) => edit((d) => change.setLength(d, id, to(way)))
  const slack = step / 1000
  return (
    <div className="control">
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset with its legend would not stand in a row. */}
      <div className="stepper called" role="group" aria-label={t('carried.boat.long')}>
        <output aria-live="polite">
          {named(`called.${kind}`, { length: meters(boat.length) })}
          {own && <small> {t('carried.boat.own-figures')}</small>}
        </output>
        <button
          type="button"
          aria-label={t('carried.boat.shorter')}
          disabled={to(-1) < least - slack}
          onClick={() => lengthen(-1)}
        >
          <Sign d="M4 9h10" />
        </button>
        <button
          type="button"
          aria-label={t('carried.boat.longer')}
          disabled={to(1) > most + slack}
          onClick={() => lengthen(1)}
        >
          <Sign d="M4 9h10M9 4v10" />
        </button>
      </div>
      {own && (
        <button type="button" className="quiet" onClick={() => edit((d) => change.setUsualFigures(d, id))}>
          {t('carried.boat.usual')}
        </button>
      )}
    </div>
  )
}
