/** What a free edge takes while a dock is shaped by hand: the next section, and by which edge of its own. */

import type { Catalog, Frame } from '../../rules/catalog/index.ts'
import { cornerPieces } from '../../rules/catalog/straight.ts'
import type { Hung } from '../../rules/plan/free-edges.ts'

/** Of the dock's own frame standing out or lying along, or a corner piece by its code, to the left or to the right. */
export type NewSection = 'out' | 'beside' | `left ${string}` | `right ${string}`

export interface Offered {
  readonly frame: Frame
  readonly by: Hung
}

/** @param own the dock's own frame */
export function offeredOf(next: NewSection, { frames }: Pick<Catalog, 'frames'>, own: Frame): Offered {
  if (next === 'out' || next === 'beside') return { frame: own, by: next }
  const code = next.slice(next.indexOf(' ') + 1)
  const frame = frames.find((one) => one.code === code)
  return frame ? { frame, by: next.startsWith('left') ? 'out' : 'end' } : { frame: own, by: 'out' }
}

/** Corner pieces as wide as the dock's own frame: its run goes on from them. */
export const turnsFor = (catalog: Pick<Catalog, 'frames'>, own: Frame): readonly Frame[] =>
  cornerPieces(catalog).filter(({ width }) => Math.abs(width - own.width) < 1e-6)
