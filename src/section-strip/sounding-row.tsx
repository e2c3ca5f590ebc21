/** A sounding as a row of the table: how far, where, how deep or high. */
import type { Design } from '../../rules/index.ts'
import { useLeadline, useLeadlineStore } from '../state/store.ts'
import { Sign } from '../ui/controls.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { Select } from '../ui/select.tsx'
import { useWords } from '../ui/use-words.ts'
import { DEPTHS } from '../words/depths.ts'
import { meters } from '../words/index.ts'
import { useAsks } from './asks.tsx'
import type { Said } from './draft-row.tsx'
import { inTheWay } from './more-soundings.ts'
import { changeSounding, confirmSounding, removeSounding } from './soundings.ts'

/** Lakeward or shoreward of the water's edge. The other two: lakeward but above the water, and shoreward but below it. */
type Where = 'out' | 'back' | 'out-high' | 'back-deep'

interface SoundingRowProps {
  readonly index: number
  /** Where it is shown. */
  readonly row: number
  /** The last one that was filled in: what is doubtful in it is asked about here. */
  readonly lately: Said | null
}

export function SoundingRow({ index, row, lately }: SoundingRowProps) {
  const sounding = useLeadline((s) => s.design.site.soundings[index])
  const only = useLeadline((s) => s.design.site.soundings.length < 2)
  const edit = useLeadline((s) => s.edit)
  const store = useLeadlineStore()
  const { t } = useWords(DEPTHS)
  const askDistance = useAsks('distance')
  const askDepth = useAsks('depth')
  const askHeight = useAsks('height')
  if (!sounding) return null
  const { distance, offset, depth, assumed = false } = sounding
  const from = lately && near(lately.distance, distance) && near(lately.depth, depth) ? lately.typed : null
  const back = distance < 0
  const high = depth < 0
  const where = whereOf(distance, depth)
  const options: Where[] = ['out', 'back', ...(where === 'out' || where === 'back' ? [] : [where])]
  const move = (to: number) => {
    const place = (back ? -to : to) + 0
    if (inTheWay(store.getState().design, index, place))
      return t(place < 0 ? 'depths.taken-back' : 'depths.taken', { place: meters(to) })
    return edit((d) => changeSounding(d, index, { distance: place }))
  }
  return (
    <tr data-row={row}>
      <td data-cell="distance">
        <LengthField
          label={t('depths.distance')}
          hideLabel
          value={Math.abs(distance)}
          commit={move}
          ask={askDistance}
          from={from?.distance}
        />
        {offset !== 0 && <small>{t('depths.aside', { offset: meters(Math.abs(offset)) })}</small>}
      </td>
      <td>
        <Select
          name={t('depths.where')}
          value={where}
          options={options}
          wordOf={(option) => t(`depths.${option}`)}
          set={(next) => edit((d) => placed(d, index, next))}
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
          ask={high ? askHeight : askDepth}
          from={from?.depth}
          unsaid={assumed}
        />
        {assumed && <Guess confirm={() => edit((d) => confirmSounding(d, index))} />}
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

/** Lakeward or shoreward by as much: with that it is a depth, or a height. */
function placed(design: Design, index: number, where: Where): Design {
  const sounding = design.site.soundings[index]
  if (!sounding || (where !== 'out' && where !== 'back')) return design
  const sign = where === 'out' ? 1 : -1
  return changeSounding(design, index, {
    distance: sign * Math.abs(sounding.distance) + 0,
    depth: sign * Math.abs(sounding.depth) + 0,
  })
}

/** Nobody has measured it. */
function Guess({ confirm }: { readonly confirm: () => void }) {
  const { t } = useWords(DEPTHS)
  return (
    <div className="guess">
      <small>{t('depths.guess')}</small>
      <button type="button" className="quiet" onClick={confirm}>
        {t('depths.confirm')}
      </button>
    </div>
  )
}

/** A Design keeps six decimals. */
const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6

const whereOf = (distance: number, depth: number): Where =>
  distance < 0 ? (depth <= 0 ? 'back' : 'back-deep') : depth < 0 ? 'out-high' : 'out'
