/** People and boat: what the dock must carry and hold, and what that comes to. */

import { underKeel } from '../../rules/clearance/keel.ts'
import { basisIn, type Figure } from '../../rules/index.ts'
import { USUAL_LENGTHS } from '../../rules/structure/strength/usual-boats.ts'
import { EXACT } from '../../rules/words/figures.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { Choice, Hint, Sign } from '../ui/controls.tsx'
import { LengthField, QuantityField } from '../ui/quantity-field.tsx'
import { useWords } from '../ui/use-words.ts'
import { massStep, parseMass } from '../units/mass.ts'
import { nextStep } from '../units/steps.ts'
import { meters, text } from '../words/index.ts'
import { PEOPLE_AND_BOAT, type PeopleAndBoatWord } from '../words/people-and-boat.ts'
import * as carry from './deck-load-edits.ts'

export function DeckLoads() {
  return (
    <div className="exposure">
      <People />
      <BoatKinds />
      <BoatFields />
    </div>
  )
}

const pressure = (value: number): Figure => ({ value, unit: 'Pa' })

function People() {
  const now = useLeadline((s) => carry.loadOf(s.design))
  const edit = useLeadline((s) => s.edit)
  const { t, language } = useWords(PEOPLE_AND_BOAT)
  const known = carry.LOADS.find((load) => Math.abs(load.pressure - now) < 0.5)
  const option = (key: string, value: number) => ({
    value: key,
    label: (
      <>
        {t('carried.load', { load: pressure(value) })}
        <small>{t(`carried.load.${key}` as PeopleAndBoatWord)}</small>
      </>
    ),
  })
  return (
    <div>
      <Choice
        legend={t('carried.people')}
        value={known ? String(known.psf) : 'own'}
        options={[
          ...carry.LOADS.map((load) => option(String(load.psf), load.pressure)),
          ...(known ? [] : [option('own', now)]),
        ]}
        hint={t('carried.people.hint')}
        set={(key) => {
          const load = carry.LOADS.find(({ psf }) => String(psf) === key)
          if (load) edit((d) => carry.setLoad(d, load.pressure))
        }}
      />
      <Hint>
        <Used />
      </Hint>
      {known && <Hint>{t('carried.from', { basis: text(basisIn(known.basis, { language })) })}</Hint>}
    </div>
  )
}

/** The resulting use, shown when it is known. */
function Used() {
  const { structure } = useDock()
  const whole = useLeadline(isJudged)
  const { t } = useWords(PEOPLE_AND_BOAT)
  if (!structure || structure.legs.length === 0) return whole ? null : t('carried.checking')
  const most = (list: readonly { readonly use: number }[]): Figure => ({
    value: list.reduce((high, { use }) => Math.max(high, use), 0),
    unit: 'share',
  })
  return t('carried.used', { legs: most(structure.legs), frames: most(structure.rails) })
}

const KINDS = ['none', 'fishing', 'runabout', 'pontoon'] as const

function BoatKinds() {
  const kind = useLeadline((s) => carry.boatKind(s.design))
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(PEOPLE_AND_BOAT)
  return (
    <Choice<carry.BoatKind>
      legend={t('carried.boat')}
      value={kind}
      columns={2}
      options={[...KINDS, ...(kind === 'own' ? (['own'] as const) : [])].map((value) => ({
        value,
        label: t(`carried.boat.${value}`),
      }))}
      hint={t(kind === 'none' ? 'carried.boat.without' : 'carried.boat.hint')}
      set={(to) => edit((d) => carry.setBoatKind(d, to))}
    />
  )
}

function BoatFields() {
  const boat = useLeadline((s) => s.design.dock.boat)
  const edit = useLeadline((s) => s.edit)
  const { units, t, mass } = useWords(PEOPLE_AND_BOAT)
  if (!boat) return null
  const field = (key: 'height' | 'draught') => (
    <LengthField
      label={t(`carried.boat.${key}`)}
      value={boat[key]}
      commit={(to) => edit((d) => carry.setBoat(d, { [key]: to }))}
    />
  )
  return (
    <>
      <Called boat={boat} />
      <div className="pair">
        <LengthField
          label={t('carried.boat.length')}
          value={boat.length}
          commit={(to) => edit((d) => carry.setBoatLength(d, to))}
        />
        {field('height')}
        {field('draught')}
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
          commit={(to) => edit((d) => carry.setBoat(d, { mass: to }))}
        />
      </div>
      <Choice
        legend={t('carried.boat.side')}
        value={boat.side}
        columns={2}
        options={(['left', 'right'] as const).map((side) => ({
          value: side,
          label: t(`carried.side.${side}`),
        }))}
        set={(side) => edit((d) => carry.setBoat(d, { side }))}
      />
      <UnderKeel boat={boat} />
      <Hint>{t('carried.boat.storm')}</Hint>
    </>
  )
}

/** 'Pontoon, 20 ft', with a stepper of whole feet or half meters; what is no usual boat is told by its figures alone. */
function Called({ boat }: { readonly boat: carry.Boat }) {
  const kind = useLeadline((s) => carry.boatKind(s.design))
  const own = useLeadline((s) => carry.hasOwnFigures(s.design))
  const edit = useLeadline((s) => s.edit)
  const { t, units } = useWords(PEOPLE_AND_BOAT)
  if (kind === 'none' || kind === 'own') return null
  const step = units === 'imperial' ? EXACT.foot : 0.5
  const [least, most] = USUAL_LENGTHS[kind]
  const to = (way: 1 | -1): number => nextStep(boat.length, step, way)
  const change = (way: 1 | -1) => edit((d) => carry.setBoatLength(d, to(way)))
  const slack = step / 1000
  return (
    <div className="control">
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset with its legend would not stand in a row. */}
      <div className="stepper called" role="group" aria-label={t('carried.boat.long')}>
        <output aria-live="polite">
          {t(`carried.boat.called.${kind}`, { length: meters(boat.length) })}
          {own && <small> {t('carried.boat.own-figures')}</small>}
        </output>
        <button
          type="button"
          aria-label={t('carried.boat.shorter')}
          disabled={to(-1) < least - slack}
          onClick={() => change(-1)}
        >
          <Sign d="M4 9h10" />
        </button>
        <button
          type="button"
          aria-label={t('carried.boat.longer')}
          disabled={to(1) > most + slack}
          onClick={() => change(1)}
        >
          <Sign d="M4 9h10M9 4v10" />
        </button>
      </div>
      {own && (
        <button type="button" className="quiet" onClick={() => edit(carry.setUsualFigures)}>
          {t('carried.boat.usual')}
        </button>
      )}
    </div>
  )
}

/** With the lake at its lowest; silent while the dock is being placed. */
function UnderKeel({ boat }: { readonly boat: carry.Boat }) {
  const { dock, bed, design } = useLeadline((s) => s.project)
  const stale = useLeadline((s) => s.stale)
  const { t } = useWords(PEOPLE_AND_BOAT)
  const under = stale ? null : underKeel(dock.sections, bed, boat, Math.min(0, design.site.levels.low))
  if (under === null) return null
  const water = meters(Math.abs(under))
  return <Hint>{t(under < 0 ? 'carried.boat.touches' : 'carried.boat.under', { water })}</Hint>
}
