/** What the rules where the dock stands allow, as its owner was told: typed here, drawn and checked elsewhere. */

import type { Design, Figure, Issue } from '../../../rules/index.ts'
import { EXACT } from '../../../rules/index.ts'
import { useLeadline } from '../../state/store.ts'
import { Hint } from '../../ui/controls.tsx'
import { Fold } from '../../ui/fold.tsx'
import { QuantityField } from '../../ui/quantity-field.tsx'
import { useWords } from '../../ui/use-words.ts'
import { bareUnit, parseLength } from '../../units/parse.ts'
import { keyStep } from '../../units/steps.ts'
import { text } from '../../words/index.ts'
import { LIMIT_WORDS } from '../../words/limits.ts'
import { type Held, setLimit, setWaterWidth } from './edits.ts'
import { Sides } from './sides.tsx'

export function Limits() {
  const { t } = useWords(LIMIT_WORDS)
  return (
    <Fold className="control" summary={t('title')}>
      <Fields />
    </Fold>
  )
}

function Fields() {
  const { t } = useWords(LIMIT_WORDS)
  const own = useLeadline((s) => s.design.site.limits)
  const shop = useLeadline((s) => s.catalog.limits)
  const water = useLeadline((s) => s.design.site.waterWidth)
  const edit = useLeadline((s) => s.edit)
  const held = (which: Held) => ({
    label: t(which),
    value: own?.[which] ?? null,
    shop: shop?.[which],
    commit: (to: number | null) => edit((d: Design) => setLimit(d, which, to)),
  })
  const name = text(shop?.name ?? t('shop-unnamed'))
  const share = own?.share ?? shop?.share
  return (
    <>
      <Hint>{t('ask')}</Hint>
      {shop && (
        <Hint>
          {shop.source === undefined
            ? t('shop', { name })
            : t('shop-source', { name, source: text(shop.source) })}
        </Hint>
      )}
      <div className="pair">
        <Length {...held('reach')} />
        <Length {...held('width')} />
      </div>
      <div className="pair">
        <Area {...held('area')} />
        <Length {...held('depth')} />
      </div>
      <div className="pair">
        <Share {...held('share')} />
        <Length
          label={t('water')}
          value={water ?? null}
          shop={undefined}
          commit={(to) => edit((d) => setWaterWidth(d, to))}
        />
      </div>
      {share !== undefined && water === undefined && <Hint>{t('share-open')}</Hint>}
      <Sides />
    </>
  )
}

interface LimitProps {
  readonly label: string
  /** m, m2 or a part; null where the design has none. */
  readonly value: number | null
  /** What holds then. */
  readonly shop: number | undefined
  readonly commit: (to: number | null) => readonly Issue[]
}

/** Emptied it is no limit of one's own. */
function Length({ label, value, shop, commit }: LimitProps) {
  const { units, length, t: screen } = useWords()
  const { t } = useWords(LIMIT_WORDS)
  return (
    <QuantityField
      label={label}
      value={value}
      shown={value === null ? '' : length(value)}
      placeholder={shop === undefined ? t('none') : length(shop)}
      read={(typed) => {
        if (typed.trim() === '') return { value: null }
        const read = parseLength(typed, bareUnit(units))
        return read.ok
          ? { value: read.meters }
          : { fault: `length.${read.fault}`, example: screen(`example.length.${units}`) }
      }}
      next={(way, large) => (value ?? shop ?? 0) + way * keyStep(units, large)}
      commit={commit}
    />
  )
}

/** The number at a text's beginning; null of an empty one, NaN where there is none. */
const numberIn = (typed: string): number | null =>
  typed.trim() === '' ? null : Number.parseFloat(typed.trim().replace(',', '.'))

function Area({ label, value, shop, commit }: LimitProps) {
  const { units, figure, t } = useWords(LIMIT_WORDS)
  const unit = units === 'imperial' ? EXACT.foot ** 2 : 1
  const area = (of: number): Figure => ({ value: of, unit: 'm2' })
  return (
    <QuantityField<number | null>
      label={label}
      value={value}
      shown={value === null ? '' : figure(area(value))}
      placeholder={shop === undefined ? t('none') : figure(area(shop))}
      read={(typed) => {
        const n = numberIn(typed)
        return { value: n === null ? null : n * unit }
      }}
      next={(way, large) => Math.max(unit, (value ?? shop ?? 0) + way * unit * (large ? 10 : 1))}
      commit={(to) =>
        Number.isNaN(to) ? t('area.fault', { example: text(t(`example.area.${units}`)) }) : commit(to)
      }
    />
  )
}

function Share({ label, value, shop, commit }: LimitProps) {
  const { figure, t } = useWords(LIMIT_WORDS)
  const share = (of: number): Figure => ({ value: of, unit: 'share-fine' })
  return (
    <QuantityField<number | null>
      label={label}
      value={value}
      shown={value === null ? '' : figure(share(value))}
      placeholder={shop === undefined ? t('none') : figure(share(shop))}
      read={(typed) => {
        const n = numberIn(typed)
        return { value: n === null ? null : n / 100 }
      }}
      next={(way, large) => Math.min(1, Math.max(0.01, (value ?? shop ?? 0) + way * (large ? 0.1 : 0.01)))}
      commit={(to) => (to === null || (to >= 0.01 && to <= 1) ? commit(to) : t('share.fault'))}
    />
  )
}
