/** People and boat: what the dock must carry and hold, and what that comes to. */
import type { Figure } from '../../rules/index.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { Choice, Hint } from '../ui/controls.tsx'
import { LengthField, QuantityField } from '../ui/quantity-field.tsx'
import { massStep, parseMass } from '../units/mass.ts'
import { text } from '../words/index.ts'
import { type MoreWord, useMoreWords } from '../words/use-more-words.ts'
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
  const { more } = useMoreWords()
  const known = carry.LOADS.find((load) => Math.abs(load.pressure - now) < 0.5)
  const option = (key: string, value: number) => ({
    value: key,
    label: (
      <>
        {more('carried.load', { load: pressure(value) })}
        <small>{more(`carried.load.${key}` as MoreWord)}</small>
      </>
    ),
  })
  return (
    <div>
      <Choice
        legend={more('carried.people')}
        value={known ? String(known.psf) : 'own'}
        options={[
          ...carry.LOADS.map((load) => option(String(load.psf), load.pressure)),
          ...(known ? [] : [option('own', now)]),
        ]}
        hint={more('carried.people.hint')}
        set={(key) => {
          const load = carry.LOADS.find(({ psf }) => String(psf) === key)
          if (load) edit((d) => carry.setLoad(d, load.pressure))
        }}
      />
      <Hint>
        <Used />
      </Hint>
      {known && <Hint>{more('why.from', { basis: text(known.basis) })}</Hint>}
    </div>
  )
}

/** The resulting use, shown when it is known. */
function Used() {
  const { structure } = useDock()
  const whole = useLeadline(isJudged)
  const { more } = useMoreWords()
  if (!structure || structure.legs.length === 0) return whole ? null : more('carried.checking')
  const most = (list: readonly { readonly use: number }[]): Figure => ({
    value: list.reduce((high, { use }) => Math.max(high, use), 0),
    unit: 'share',
  })
  return more('carried.used', { legs: most(structure.legs), frames: most(structure.rails) })
}

const KINDS = ['none', 'fishing', 'runabout', 'pontoon'] as const

function BoatKinds() {
  const kind = useLeadline((s) => carry.boatKind(s.design))
  const edit = useLeadline((s) => s.edit)
  const { more } = useMoreWords()
  return (
    <Choice<carry.BoatKind>
      legend={more('carried.boat')}
      value={kind}
      columns={2}
      options={[...KINDS, ...(kind === 'own' ? (['own'] as const) : [])].map((value) => ({
        value,
        label: more(`carried.boat.${value}`),
      }))}
      hint={more(kind === 'none' ? 'carried.boat.without' : 'carried.boat.hint')}
      set={(to) => edit((d) => carry.setBoatKind(d, to))}
    />
  )
}

function BoatFields() {
  const boat = useLeadline((s) => s.design.dock.boat)
  const edit = useLeadline((s) => s.edit)
  const { units, more, mass } = useMoreWords()
  if (!boat) return null
  const field = (key: 'length' | 'height' | 'draught') => (
    <LengthField
      label={more(`carried.boat.${key}`)}
      value={boat[key]}
      commit={(to) => edit((d) => carry.setBoat(d, { [key]: to }))}
    />
  )
  return (
    <>
      <div className="pair">
        {field('length')}
        {field('height')}
        {field('draught')}
        <QuantityField
          label={more('carried.boat.mass')}
          value={boat.mass}
          shown={mass(boat.mass)}
          read={(typed) => {
            const value = parseMass(typed, units)
            const example = units === 'imperial' ? '2000 lb' : '900 kg'
            return value === null ? { fault: 'mass.not-a-mass', example } : { value }
          }}
          next={(way, large) => Math.max(0, boat.mass + way * massStep(units, large))}
          commit={(to) => edit((d) => carry.setBoat(d, { mass: to }))}
        />
      </div>
      <Choice
        legend={more('carried.boat.side')}
        value={boat.side}
        columns={2}
        options={(['left', 'right'] as const).map((side) => ({
          value: side,
          label: more(`carried.side.${side}`),
        }))}
        set={(side) => edit((d) => carry.setBoat(d, { side }))}
      />
      <Hint>{more('carried.boat.storm')}</Hint>
    </>
  )
}
