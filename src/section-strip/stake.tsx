/** What stays on shore, that the papers measure from. */
import type { Design, Issue } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { Hint } from '../ui/controls.tsx'
import { LengthField, QuantityField } from '../ui/quantity-field.tsx'
import { Select } from '../ui/select.tsx'
import { useWords } from '../ui/use-words.ts'
import { STAKE } from '../words/stake.ts'
import { nameMark, nameStake, placeMark, placeStake } from './stake-edits.ts'

export function Stake() {
  const { stake, benchmark } = useLeadline((s) => s.design.site)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(STAKE)
  return (
    <>
      <p className="hint">{t('hint')}</p>
      <Name
        label={t('stake')}
        example={t('stake.example')}
        value={stake?.name ?? ''}
        commit={(name) => edit((d: Design) => nameStake(d, name))}
      />
      {stake && (
        <Far
          label={t('stake.far')}
          hint={t('stake.hint')}
          value={0 - stake.x}
          words={[t('stake.behind'), t('stake.out')]}
          commit={(back) => edit((d) => placeStake(d, back))}
        />
      )}
      <Name
        label={t('mark')}
        example={t('mark.example')}
        value={benchmark?.name ?? ''}
        commit={(name) => edit((d: Design) => nameMark(d, name))}
      />
      {benchmark && (
        <Far
          label={t('mark.far')}
          hint={t('mark.hint')}
          value={benchmark.above}
          words={[t('mark.over'), t('mark.under')]}
          commit={(above) => edit((d) => placeMark(d, above))}
        />
      )}
    </>
  )
}

interface NameProps {
  readonly label: string
  readonly example: string
  readonly value: string
  readonly commit: (name: string) => readonly Issue[]
}

function Name({ label, example, value, commit }: NameProps) {
  return (
    <QuantityField
      label={label}
      value={value}
      shown={value}
      placeholder={example}
      read={(typed) => ({ value: typed })}
      next={() => value}
      commit={commit}
    />
  )
}

const SIGNS = ['plus', 'minus'] as const

interface FarProps {
  readonly label: string
  readonly hint: string
  readonly value: number
  /** Of a value over 0, and of one under it. */
  readonly words: readonly [string, string]
  readonly commit: (to: number) => readonly Issue[]
}

/** A length without a sign; to which side it is is asked once there is one. */
function Far({ label, hint, value, words, commit }: FarProps) {
  const sign = value < 0 ? -1 : 1
  return (
    <>
      <LengthField label={label} value={Math.abs(value)} commit={(to) => commit(sign * to)} />
      {value !== 0 && (
        <Select
          name={label}
          value={value < 0 ? 'minus' : 'plus'}
          options={SIGNS}
          wordOf={(one) => words[one === 'plus' ? 0 : 1]}
          set={(to) => commit(to === 'plus' ? Math.abs(value) : 0 - Math.abs(value))}
        />
      )}
      <Hint>{hint}</Hint>
    </>
  )
}
