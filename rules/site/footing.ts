import type { BottomKind } from '../catalog/index.ts'
import type { Bed } from './bed.ts'

/** Firm ground this little under the bottom is the bottom, m. */
const SAME = 0.01

/** What a foot pad stands on: the bottom; or, where firm ground was sounded under muck or clay, that (sand, since a rod tells no more). */
export function footingAt({ bottomAt, bedAt, firmAt }: Bed, x: number, y: number): BottomKind {
  const bottom = bottomAt(x, y)
  const soft = bottom === 'muck' || bottom === 'clay'
  return soft && bedAt(x, y) - firmAt(x, y) >= SAME ? 'sand' : bottom
}
