/** Where somebody is to stand in the water, and it is over the chest there today: nobody works standing in that. */
import type { Day } from '../../rules/at-lake/index.ts'
import type { Crew } from '../../rules/papers/steps/step.ts'

/** Of a grown person who is not tall, m over the feet. Common practice, no source. */
const CHEST = 1.2

/** How deep it is at the deepest leg of the section that they stand beside, m; null: not over the chest, or nobody stands in it. */
export function tooDeepFor(
  crew: readonly Crew[],
  section: string | null,
  { stations }: Pick<Day, 'stations'>,
): number | null {
  if (!crew.some(({ place, people }) => place === 'water' && people > 0)) return null
  const legs = stations.find((one) => one.section === section)?.legs ?? []
  const deepest = Math.max(0, ...legs.map(({ depth }) => depth))
  return deepest > CHEST ? deepest : null
}
