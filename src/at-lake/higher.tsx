/** By how much the lake stood higher or lower than at another time. */
import { text } from '../words/index.ts'
import { Measure, Pick, type Typed, typedFrom } from './fields.tsx'
import { useBegun, useSay } from './lake.ts'

export interface Above {
  readonly typed: Typed
  /** Null: not said yet. */
  readonly higher: boolean | null
}

export const aboveFrom = (kept: unknown): Above => {
  const { typed, higher } = Object(kept) as { readonly [K in keyof Above]?: unknown }
  return { typed: typedFrom(typed), higher: typeof higher === 'boolean' ? higher : null }
}

interface Props extends Above {
  /** The season when it was set; null: the day of the survey. */
  readonly than: string | null
  readonly put: (to: Above) => void
  /** Of a season long past. */
  readonly stood?: boolean
}

export function Higher({ typed, higher, than, put, stood = false }: Props) {
  const { project } = useBegun()
  const { t } = useSay()
  const word = (way: 'higher' | 'lower') =>
    stood
      ? t(`right.${way}`, { than: text(t(project ? 'level.than-survey' : 'level.than-first')) })
      : than === null
        ? t(`level.${way}`)
        : t(`level.${way}-last`, { season: text(than) })
  return (
    <>
      <Pick<'higher' | 'lower'>
        legend={t(stood ? 'right.level' : 'level.which')}
        value={higher === null ? null : higher ? 'higher' : 'lower'}
        options={[
          { value: 'higher', label: word('higher') },
          { value: 'lower', label: word('lower') },
        ]}
        set={(to) => put({ typed, higher: to === 'higher' })}
      />
      <Measure label={t('level.by')} kind="change" typed={typed} set={(to) => put({ typed: to, higher })} />
    </>
  )
}
