/** What stands in the way of going on: at a leg, or for the whole dock. It stands until it is mended, wherever one comes from. */
import type { LegAt } from '../../rules/at-lake/index.ts'
import type { SeasonRecord, SeasonState } from '../../rules/record/index.ts'
import type { Begun } from './lake.ts'
import type { Stage } from './stages.ts'

/** The lake may be this far over the highest that it was planned for, m. */
const BEYOND = 0.05

/** A deck that is not over the water is on no day where it belongs. */
export const isFlooded = (
  { kind }: Pick<Stage, 'kind'>,
  { day, state }: Pick<Begun, 'day' | 'state'>,
): boolean => kind !== 'level' && state.level !== null && day !== null && day.overWater <= 0

/** The planned deck is under that water, and nobody planned for such a lake: the level must be wrong. */
export function mustBeWrong(
  level: number,
  { deckHeight, design }: Pick<SeasonRecord, 'deckHeight' | 'design'>,
): boolean {
  if (deckHeight === null || level < deckHeight) return false
  const site = design?.site
  const said = site && !site.assumed?.some((one) => one === 'levels' || one === 'levels.high')
  return !said || level > Math.max(0, site.levels.high) + BEYOND
}

/** Under which it is written down that the shop says how to go on, at this depth. */
export const saidKey = ({ leg, depth }: Pick<LegAt, 'leg' | 'depth'>): string =>
  `go-on/${leg}/${Math.round(depth * 100)}`

/** The leg must not be set as things are. */
export const stopsAt = ({ limit }: Pick<LegAt, 'limit'>): boolean =>
  limit.say === 'measure-again' || limit.say === 'stop-and-call'

/** That which no word of the shop mends: another leg must come, or another place. */
export const cannotBeSet = ({ stock, heights, limit }: Pick<LegAt, 'stock' | 'heights' | 'limit'>): boolean =>
  stock === null || heights.frame <= 0 || limit.reasons.includes('frame-in-bed')

/** It stands there, measured or not, is not set, and nobody was told how to go on. */
export const stillStops = (at: LegAt, { done }: Pick<SeasonState, 'done'>): boolean =>
  stopsAt(at) && at.set === null && !done.includes(saidKey(at))
