import { round6 } from '../numbers.ts'
import { packagingOf } from '../papers/packaging.ts'
import { totalsOf } from '../parts/parts-list.ts'
import { FRAME_LIFT, liftingLimit } from '../structure/strength/lifting.ts'
import { type Check, factor } from './check.ts'

/** One at each corner of a frame. */
const CARRIERS = 4
const LIMIT = liftingLimit(FRAME_LIFT).limit

/** The heaviest section as carried is more than four people carry: the papers would ask for more hands. */
export const liftHeavy: Check = {
  code: 'lift-heavy',
  severity: 'note',
  basis:
    'What one person carries by the catalog, one at each corner: common practice, no published source; beside it NIOSH 94-110 (rev. 2021), a screen for dry ground only',
  find({ count, layout, shop }) {
    const { heaviestLift, heaviestSection } = totalsOf(count, layout, shop.catalog.currency)
    const each = heaviestLift / CARRIERS
    if (!heaviestSection || each <= packagingOf(shop.catalog).person / 1000 + 1e-6) return []
    const kg = (value: number) => ({ value: round6(value), unit: 'kg' })
    return [
      {
        parts: [heaviestSection],
        values: {
          section: { value: heaviestSection, unit: 'text' },
          mass: kg(heaviestLift),
          each: kg(each),
          limit: kg(LIMIT),
          index: factor(each / LIMIT),
        },
      },
    ]
  },
}
