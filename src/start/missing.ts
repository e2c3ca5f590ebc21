import type { Design } from '../../rules/index.ts'
import { levelAssumed } from '../parameters/design-edits.ts'
import type { AskedAt } from '../state/store.ts'
import { placesAssumed } from './shore.ts'

/** What nobody has said of the shore, in the order in which it is asked. */
export function missingIn(design: Design): AskedAt[] {
  const places = placesAssumed(design)
  const { assumed = [] } = design.site
  return [
    ...places.filter((place) => place !== 'bank'),
    ...places.filter((place) => place === 'bank'),
    ...(assumed.includes('bottom') ? ['bottom' as const] : []),
    ...(['high', 'low'] as const)
      .filter((which) => levelAssumed(design, which))
      .map((which) => `levels.${which}` as const),
    ...(assumed.includes('wind') ? ['wind' as const] : []),
  ]
}
