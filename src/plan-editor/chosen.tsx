/** What can be done to the section that is chosen, by words and figures. */
import { useId } from 'react'
import { straightFrames } from '../../rules/catalog/straight.ts'
import type { PlacedSection } from '../../rules/layout/index.ts'
import type { Operation } from '../../rules/plan/operations.ts'
import { hangingOf, hangsOn, turned } from '../../rules/plan/spots.ts'
import type { Lying } from '../../rules/plan/troubles.ts'
import { useLeadline } from '../state/store.ts'
import { Hint } from '../ui/controls.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { Select } from '../ui/select.tsx'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { count, text } from '../words/index.ts'
import { PLAN_EDITOR } from '../words/plan-editor.ts'

interface ChosenProps {
  readonly lying: Lying
  readonly section: PlacedSection
  readonly name: string
  readonly moving: boolean
  readonly setMoving: (on: boolean) => void
  readonly perform: (operation: Operation) => boolean
  readonly remove: (id: string) => void
}

export function Chosen({ lying, section, name, moving, setMoving, perform, remove }: ChosenProps) {
  const catalog = useLeadline((s) => s.catalog)
  // A ramp lies straight before its hinge.
  const frames =
    section.role === 'ramp'
      ? straightFrames(catalog)
      : catalog.frames.filter(({ hidden, code }) => !hidden || code === section.frame.code)
  const own = useLeadline((s) => s.design.dock.frame)
  const { t } = useWords(PLAN_EDITOR)
  const named = useNames()
  const size = useId()
  const { id } = section
  const hanging = hangingOf(lying, id)
  const turn = turned(lying, id)
  const code = section.frame.code
  return (
    <fieldset className="chosen">
      <legend>{t('chosen', { section: text(name) })}</legend>
      <label htmlFor={size}>
        {t('size')}
        <Select
          id={size}
          value={code}
          options={frames.map((frame) => frame.code)}
          wordOf={(code) => named(frames.find((frame) => frame.code === code) ?? { code, name: code })}
          set={(to) => perform({ kind: 'frame', id, frame: to === own ? null : to })}
        />
      </label>
      {hanging ? (
        <>
          <LengthField
            label={t('along')}
            value={hanging.along}
            commit={(along) => {
              perform({ kind: 'hang', id, ...hanging, along })
              return []
            }}
          />
          <div className="buttons">
            <button type="button" onClick={() => turn && perform(turn)}>
              {t('turn')}
            </button>
            <button type="button" aria-pressed={moving} onClick={() => setMoving(!moving)}>
              {t('move')}
            </button>
            <button type="button" onClick={() => remove(id)}>
              {t('remove')}
            </button>
          </div>
          <Hint>{moving ? t('move.hint', { n: count(hangsOn(lying.plan, id).length + 1) }) : t('keys')}</Hint>
        </>
      ) : (
        <Hint>{t('begins')}</Hint>
      )}
    </fieldset>
  )
}
