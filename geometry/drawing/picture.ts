/** Small pictures for the papers that are read on the shore: the dock from its side, as far as it stands. */
import type { Mark } from '../paper/marks.ts'
import { elevationView } from './elevation.ts'
import { placeLabels } from './labels.ts'
import { paintView } from './paint.ts'
import type { Drawn } from './plan.ts'
import type { View } from './view.ts'

export interface Picture {
  readonly marks: readonly Mark[]
  readonly width: number
  readonly height: number
}

/** No higher than this, mm, and no larger than 1:40. */
const HIGHEST = 52
const LARGEST = 40
const AIR = 5

/** The whole dock from its side; null without one. */
export const wholePicture = (drawn: Drawn, width: number): Picture | null =>
  drawn.dock.sections.length === 0 ? null : pictureOf(elevationView(drawn), width)

/** The sections that stand, on the whole bed; null where none does. */
export function standingPicture(drawn: Drawn, standing: readonly string[], width: number): Picture | null {
  if (standing.length === 0) return null
  return pictureOf(elevationView(drawn, standing), width)
}

function pictureOf(view: View, width: number): Picture {
  const { x0, x1, y0, y1 } = view.bounds
  const scale = Math.max(LARGEST, ((x1 - x0) * 1000) / (width - 24), ((y1 - y0) * 1000) / (HIGHEST - 2 * AIR))
  const [w, h] = [((x1 - x0) * 1000) / scale, ((y1 - y0) * 1000) / scale]
  const left = (width - w) / 2
  const height = h + 2 * AIR
  const { marks, labels, segments } = paintView({ ...view, dimensions: [] }, [left, h + AIR], scale)
  const placed = placeLabels(labels, {
    bounds: { x0: 0, x1: width, y0: 0, y1: height },
    taken: [],
    segments,
  })
  return { marks: [...marks, ...placed.marks], width, height }
}
