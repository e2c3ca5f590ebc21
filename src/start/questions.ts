/** Which question a thing that is asked belongs to, and whether one is answered. */
import type { Design } from '../../rules/index.ts'
import { levelAssumed } from '../parameters/design-edits.ts'
import type { AskedAt } from '../state/store.ts'
import { missingIn } from './missing.ts'
import { answerOf } from './shore.ts'

export type Name = 'depths' | 'bank' | 'bottom' | 'levels' | 'wind'
export const ALL: readonly Name[] = ['depths', 'bank', 'bottom', 'levels', 'wind']

export function questionOf(at: AskedAt): Name {
  if (at === 'bank' || at === 'bottom' || at === 'wind') return at
  return at === 'levels.high' || at === 'levels.low' ? 'levels' : 'depths'
}

/** Those of which something has not been said, in the order in which they are asked. */
export function questionsLeft(design: Design): readonly Name[] {
  const missing = missingIn(design).map(questionOf)
  return ALL.filter((name) => missing.includes(name))
}

/** @param typed of which the answer is still being typed, and can be taken as it stands */
export function isAnswered(design: Design, name: Name, typed: readonly AskedAt[]): boolean {
  const has = (at: AskedAt, said: boolean): boolean => said || typed.includes(at)
  const known = (place: 'near' | 'far' | 'bank'): boolean => has(place, !answerOf(design, place).assumed)
  switch (name) {
    case 'depths':
      return (
        known('near') &&
        known('far') &&
        missingIn(design).every((at) => typeof at !== 'number' || typed.includes(at))
      )
    case 'bank':
      return known('bank')
    case 'levels':
      // Whoever knows one of the two has answered.
      return (['high', 'low'] as const).some((which) => has(`levels.${which}`, !levelAssumed(design, which)))
    default:
      return !design.site.assumed?.includes(name)
  }
}
