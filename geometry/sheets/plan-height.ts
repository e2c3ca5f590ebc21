/** How high the picture of a dock from above is on a paper. */
import { hullBox } from '../../rules/layout/berth.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { boatsIn } from '../boats.ts'
import type { Drawn } from '../drawn.ts'

/** With its boats, mm: more for one that reaches sideways. */
export function planHeight(drawn: Drawn): number {
  const deck = footprintOfAll(drawn.dock.sections)
  if (!deck) return 0
  const boxes = [deck, ...boatsIn(drawn).map(hullBox)]
  const [low, high] = [Math.min(...boxes.map(({ y0 }) => y0)), Math.max(...boxes.map(({ y1 }) => y1))]
  return Math.min(76, Math.max(42, (130 * (high - low)) / (deck.x1 - deck.x0)))
}
