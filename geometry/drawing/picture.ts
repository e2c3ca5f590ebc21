/** Small pictures for the papers that are read on the shore: a view in a box, as large as it goes, with its labels where there is room. */

import type { Crew } from '../../rules/papers/steps/step.ts'
import type { Drawn } from '../drawn.ts'
import type { Ink, Mark } from '../paper/marks.ts'
import { SIZE } from '../paper/style.ts'
import type { Box } from './cells.ts'
import { elevationView } from './elevation.ts'
import { placeLabels } from './labels.ts'
import { paintView, roomOf } from './paint.ts'
import { peopleAt, spanOf, topOf } from './people.ts'
import { planView } from './plan.ts'
import { type View, windowOf } from './view.ts'

export interface Picture {
  readonly marks: readonly Mark[]
  readonly width: number
  readonly height: number
}

export interface PictureOptions {
  /** Drawn no larger than 1 : this. */
  readonly largest?: number
  /** Dimension lines too; without them labels only. */
  readonly dimensions?: boolean
}

/** No higher than this, mm, and no larger than 1:40. */
const HIGHEST = 52
const LARGEST = 40
const AIR = 5
/** What a picture is about. */
const SHOWN: Ink = '#cfe2ee'
/** Dock shown behind a section that is being hung, of its length; and lake before it, m. */
const BEHIND = 1.6
const BEFORE = 1.4
/** Ground under the lowest foot, m. */
const UNDER = 0.7
/** Air over the tallest head, m. */
const OVER = 0.1

/**
 * Marks of a view in a box, as large as it goes, in its middle; nothing stands outside of the box but lines of it.
 *
 * @param box mm, y down
 */
export function picture(view: View, box: Box, options: PictureOptions = {}): Mark[] {
  const shown = options.dimensions ? view : { ...view, dimensions: [] }
  const [width, height] = [box.x1 - box.x0, box.y1 - box.y0]
  const { x0, x1, y0, y1 } = view.bounds
  const [wide, high] = [(x1 - x0) * 1000, (y1 - y0) * 1000]
  // Room for labels depends on the scale, and the other way round: coarser until both go in.
  let scale = Math.max(options.largest ?? 1, wide / width, high / height)
  const room = () => roomOf(shown, scale)
  for (let i = 0; i < 400; i++) {
    const { left, right, above, below } = room()
    if (wide / scale + left + right <= width && high / scale + above + below <= height) break
    scale *= 1.02
  }
  const { left, right, above, below } = room()
  const at = [
    box.x0 + left + (width - left - right - wide / scale) / 2,
    box.y0 + above + high / scale + (height - above - below - high / scale) / 2,
  ] as const
  const { marks, labels, segments } = paintView(shown, at, scale)
  // A label for which there is no room is left out: the box may be small, and figures are in tables.
  const placed = placeLabels(
    labels.map((label) => ({ ...label, optional: true })),
    { bounds: box, taken: [], segments },
  )
  return [...marks, ...placed.marks]
}

/**
 * The dock from its side as far as it stands when a section is hung, that section and its legs tinted, on its bed, and who stands where;
 * empty for a section that the Dock has not.
 */
export function stationPicture(
  drawn: Drawn,
  sectionId: string,
  box: Box,
  crew: readonly Crew[] = [],
): Mark[] {
  const { dock } = drawn
  const place = dock.workOrder.indexOf(sectionId)
  const section = dock.sections.find(({ id }) => id === sectionId)
  if (place < 0 || !section) return []
  const [from, to] = spanOf(section)
  const [left, right] = [from - BEHIND * section.length, to + BEFORE]
  // What is out of the picture is not drawn at all: a long dock has as many pictures as sections.
  const near = new Set(
    dock.sections
      .filter(({ x, length, width }) => x + length + width > left && x - length - width < right)
      .map(({ id }) => id),
  )
  const view = elevationView(
    drawn,
    dock.workOrder.slice(0, place + 1).filter((id) => near.has(id)),
  )
  const { x0, x1, y0, y1 } = view.bounds
  // Nor is ground far under it: the lake may be much deeper further out.
  const beds = dock.legs.filter(({ x }) => x > left && x < right).map(({ bed }) => bed)
  const lowest = Math.min(drawn.design.site.levels.low, ...beds) - UNDER
  const edges = { x0: Math.max(x0, left), x1: Math.min(x1, right) }
  const people = peopleAt(crew, section, {
    dock,
    deck: drawn.design.dock.deckHeight,
    bed: drawn.bed,
    from: edges.x0,
    to: edges.x1,
  })
  const part = { ...edges, y0: Math.max(y0, lowest), y1: Math.max(y1, (topOf(people) ?? y1) + OVER) }
  const [ground, ...rest] = view.paths
  // Behind the dock and its water, before the ground.
  const paths = ground ? [ground, ...people, ...rest] : []
  return picture(tinted(windowOf({ ...view, paths }, part), [sectionId]), box)
}

/** The dock from above; what belongs to the sections, legs, pairs, joints or extras of `highlightIds` tinted. */
export const planPicture = (drawn: Drawn, highlightIds: readonly string[], box: Box): Mark[] =>
  picture(readable(tinted(planView(drawn), highlightIds)), box)

/** Read at arm's length, off a photocopy. */
const readable = (view: View): View => ({
  ...view,
  notes: view.notes.map((note) => ({ ...note, bold: true, size: Math.max(note.size, SIZE.small) })),
})

const tinted = (view: View, ids: readonly string[]): View => ({
  ...view,
  paths: view.paths.map((path) =>
    path.fill && path.of?.some((id) => ids.includes(id)) ? { ...path, fill: SHOWN } : path,
  ),
})

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
  const height = ((y1 - y0) * 1000) / scale + 2 * AIR
  return {
    marks: picture(view, { x0: 0, y0: 0, x1: width, y1: height }, { largest: LARGEST }),
    width,
    height,
  }
}
