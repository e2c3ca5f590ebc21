/** Whether a dock is in the middle of being set up. Apart from what the page that plans asks for, which has no need of the record's rules. */
import { isWork, type SeasonState } from '../../rules/record/index.ts'
import type { UnderWay } from './under-way.ts'

/** Begun and not at its end: null where nothing was done yet, all legs stand, or it comes out again. */
export function underWayOf(
  { legs, done, out }: Pick<SeasonState, 'legs' | 'done' | 'out'>,
  { id, name }: Pick<UnderWay, 'id' | 'name'>,
): UnderWay | null {
  const set = legs.filter((leg) => leg.set).length
  const begun = done.some(isWork) || legs.some((leg) => leg.set || leg.sounding)
  const ends = set >= legs.length || out.length > 0 || done.some((key) => key.startsWith('out/'))
  return begun && !ends ? { id, name, set, all: legs.length } : null
}
