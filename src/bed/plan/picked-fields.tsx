/** What is picked in the plan, typed. */

import { changeSounding } from '../../section-strip/soundings.ts'
import { useLeadline } from '../../state/store.ts'
import { LengthField } from '../../ui/quantity-field.tsx'
import { Select } from '../../ui/select.tsx'
import { useWords } from '../../ui/use-words.ts'
import { BED_PLAN } from '../../words/bed-plan.ts'
import { meters } from '../../words/index.ts'
import { changeObstacle, type Obstacle } from './edits.ts'
import type { Picked } from './plan-view.ts'

interface Props {
  readonly picked: Picked
  remove(): void
}

const KINDS: readonly Obstacle['kind'][] = ['boulder', 'stump', 'other']
const SIZES = ['length', 'width', 'height'] as const
/** Directions that are chosen from, degrees: a boulder's is not told finer. */
const HEADINGS = ['0', '45', '90', '135'] as const

export function PickedFields({ picked: { what, index }, remove }: Props) {
  const { t } = useWords(BED_PLAN)
  return (
    <div className="picked">
      {what === 'sounding' ? <SoundingFields index={index} /> : <ObstacleFields index={index} />}
      <button type="button" onClick={remove}>
        {t('remove')}
      </button>
    </div>
  )
}

function SoundingFields({ index }: { readonly index: number }) {
  const { t } = useWords(BED_PLAN)
  const one = useLeadline((s) => s.design.site.soundings[index])
  const edit = useLeadline((s) => s.edit)
  if (!one) return null
  const field = (key: 'distance' | 'offset' | 'depth') => (
    <LengthField
      label={t(`field.${key}`)}
      value={one[key]}
      commit={(to) => (edit((d) => changeSounding(d, index, { [key]: to })).length > 0 ? t('refused') : '')}
    />
  )
  return (
    <>
      {field('distance')}
      {field('offset')}
      {field('depth')}
    </>
  )
}

function ObstacleFields({ index }: { readonly index: number }) {
  const { t } = useWords(BED_PLAN)
  const one = useLeadline((s) => s.design.site.obstacles?.[index])
  const edit = useLeadline((s) => s.edit)
  if (!one) return null
  const heading = HEADINGS.find((way) => Number(way) === one.heading) ?? HEADINGS[0]
  return (
    <>
      <Select
        name={t('kind')}
        value={one.kind}
        options={KINDS}
        wordOf={(kind) => t(`kind.${kind}`)}
        set={(kind) => edit((d) => changeObstacle(d, index, { kind }))}
      />
      {SIZES.map((key) => (
        <LengthField
          key={key}
          label={t(`field.${key}`)}
          value={one[key]}
          commit={(to) =>
            edit((d) => changeObstacle(d, index, { [key]: to })).length > 0
              ? t('size', { least: meters(0.02), most: meters(30) })
              : ''
          }
        />
      ))}
      <Select
        name={t('heading')}
        value={heading}
        options={HEADINGS}
        wordOf={(way) => t(`heading.${way}`)}
        set={(way) => edit((d) => changeObstacle(d, index, { heading: Number(way) }))}
      />
    </>
  )
}
