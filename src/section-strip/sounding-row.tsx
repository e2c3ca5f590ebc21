/** A sounding as a row of the table: how far, where, how deep or high. */
import { useLeadline } from '../state/store.ts'
import { Sign } from '../ui/controls.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { Select } from '../ui/select.tsx'
import { DEPTHS } from '../words/depths.ts'
import { meters } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'
import { changeSounding, removeSounding } from './soundings.ts'

/** Lakeward or shoreward of the water's edge. The other two: lakeward but above the water, and shoreward but below it. */
type Where = 'out' | 'back' | 'out-high' | 'back-deep'

export function SoundingRow({ index }: { readonly index: number }) {
  const sounding = useLeadline((s) => s.design.site.soundings[index])
  const only = useLeadline((s) => s.design.site.soundings.length < 2)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(DEPTHS)
  if (!sounding) return null
  const { distance, offset, depth } = sounding
  const back = distance < 0
  const high = depth < 0
  const where = whereOf(distance, depth)
  const options: Where[] = ['out', 'back', ...(where === 'out' || where === 'back' ? [] : [where])]
  const set = (next: Where): void => {
    if (next !== 'out' && next !== 'back') return
    const sign = next === 'out' ? 1 : -1
    edit((d) =>
      changeSounding(d, index, {
        distance: sign * Math.abs(distance) + 0,
        depth: sign * Math.abs(depth) + 0,
      }),
    )
  }
  return (
    <tr data-row={index}>
      <td data-cell="distance">
        <LengthField
          label={t('depths.distance')}
          hideLabel
          value={Math.abs(distance)}
          commit={(to) => edit((d) => changeSounding(d, index, { distance: (back ? -to : to) + 0 }))}
        />
        {offset !== 0 && <small>{t('depths.aside', { offset: meters(Math.abs(offset)) })}</small>}
      </td>
      <td>
        <Select
          name={t('depths.where')}
          value={where}
          options={options}
          wordOf={(option) => t(`depths.${option}`)}
          set={set}
        />
      </td>
      <td data-cell="depth">
        <LengthField
          label={t('depths.depth')}
          hideLabel
          value={Math.abs(depth)}
          commit={(to) =>
            edit((d) => changeSounding(d, index, { depth: (high || where === 'back' ? -to : to) + 0 }))
          }
        />
      </td>
      <td>
        <button
          type="button"
          className="quiet icon"
          disabled={only}
          aria-label={t(back ? 'depths.remove-back' : 'depths.remove', {
            distance: meters(Math.abs(distance)),
          })}
          onClick={() => edit((d) => removeSounding(d, index))}
        >
          <Sign d="M5 5l8 8M13 5l-8 8" />
        </button>
      </td>
    </tr>
  )
}

const whereOf = (distance: number, depth: number): Where =>
  distance < 0 ? (depth <= 0 ? 'back' : 'back-deep') : depth < 0 ? 'out-high' : 'out'
