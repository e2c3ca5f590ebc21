/** What lies on the bed, on the drawings: its outline, what it is and how high it stands. */

import { obstacleOutline, obstacleProfile } from '../../rules/site/obstacles.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import type { Drawn } from '../drawn.ts'
import { type Bounds, boundsOf, EARTH, SMALLEST, type View, windowOf } from './view.ts'

/** Of more than these those are named that there is room for. */
const NAMED = 8

/** As much of it as lies within the view's bounds. */
export function obstaclesFrom(
  seen: 'above' | 'side',
  drawn: Drawn,
  bounds: Bounds,
): Pick<View, 'paths' | 'notes'> {
  const { obstacles = [] } = drawn.design.site
  if (obstacles.length === 0) return NONE
  const t = wordsOf(DRAWING, drawn)
  const all = obstacles.map((one) => {
    const points = seen === 'above' ? obstacleOutline(one) : obstacleProfile(one, drawn.bed)
    const { x0, x1, y1 } = boundsOf(points)
    return {
      path: { layer: 'BED', points, closed: true, fill: EARTH } as const,
      note: {
        at: [(x0 + x1) / 2, seen === 'above' ? one.y : y1] as const,
        text: t(`obstacle.${one.kind}`, { id: one.id, height: { value: one.height, unit: 'm' } }),
        size: SMALLEST,
        prefer: 'right' as const,
        optional: obstacles.length > NAMED,
      },
    }
  })
  return windowOf(
    {
      title: '',
      paths: all.map(({ path }) => path),
      notes: all.map(({ note }) => note),
      dimensions: [],
      bounds,
    },
    bounds,
  )
}

const NONE = { paths: [], notes: [] }
