/** Lot lines: two marks each, and how far to keep clear of them. */
import type { SideLine } from '../../../rules/design/schema.ts'
import { useLeadline } from '../../state/store.ts'
import { Hint } from '../../ui/controls.tsx'
import { LengthField } from '../../ui/quantity-field.tsx'
import { useWords } from '../../ui/use-words.ts'
import { text } from '../../words/index.ts'
import { LIMIT_WORDS } from '../../words/limits.ts'
import { setSides } from './edits.ts'

/** Where a new one begins, m to a side, and how far out its second mark is: both to be typed over. */
const NEW = { aside: 6, out: 15 } as const
const NO_SIDES: readonly SideLine[] = []

export function Sides() {
  const { t } = useWords(LIMIT_WORDS)
  const sides = useLeadline((s) => s.design.site.limits?.sides ?? NO_SIDES)
  const edit = useLeadline((s) => s.edit)
  const put = (list: readonly SideLine[]) => edit((d) => setSides(d, list))
  // They have no name but their number.
  const numbered = sides.map((side, i) => ({ side, number: i + 1 }))
  const add = (y: number): void => {
    put([...sides, { from: [0, y], to: [NEW.out, y], distance: 0 }])
  }
  return (
    <fieldset className="control list">
      <legend>{t('sides')}</legend>
      {numbered.map(({ side, number }) => (
        <Side
          key={number}
          number={number}
          side={side}
          put={(to) => put(sides.with(number - 1, to))}
          remove={() => put(sides.filter((one) => one !== side))}
        />
      ))}
      <button type="button" onClick={() => add(NEW.aside)}>
        {t('side.left')}
      </button>
      <button type="button" onClick={() => add(-NEW.aside)}>
        {t('side.right')}
      </button>
      {sides.length > 0 && <Hint>{t('side.hint')}</Hint>}
    </fieldset>
  )
}

function Side({
  number,
  side,
  put,
  remove,
}: {
  readonly number: number
  readonly side: SideLine
  readonly put: (to: SideLine) => ReturnType<Parameters<typeof LengthField>[0]['commit']>
  readonly remove: () => unknown
}) {
  const { t } = useWords(LIMIT_WORDS)
  const { from, to } = side
  const line = text(String(number))
  return (
    <fieldset className="control list">
      <legend>{t('side', { line })}</legend>
      <div className="pair">
        <LengthField
          label={t('side.from-x')}
          value={from[0]}
          commit={(x) => put({ ...side, from: [x, from[1]] })}
        />
        <LengthField
          label={t('side.from-y')}
          value={from[1]}
          commit={(y) => put({ ...side, from: [from[0], y] })}
        />
      </div>
      <div className="pair">
        <LengthField label={t('side.to-x')} value={to[0]} commit={(x) => put({ ...side, to: [x, to[1]] })} />
        <LengthField label={t('side.to-y')} value={to[1]} commit={(y) => put({ ...side, to: [to[0], y] })} />
      </div>
      <LengthField
        label={t('side.distance')}
        value={side.distance}
        commit={(distance) => put({ ...side, distance })}
      />
      <button type="button" onClick={remove}>
        {t('side.remove', { line })}
      </button>
    </fieldset>
  )
}
