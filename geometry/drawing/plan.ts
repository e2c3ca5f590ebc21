/** The dock from above: frames and decking, legs with their numbers, what lies under the deck in dashes, the lake's depths. */
import {
  type Bed,
  type Catalog,
  type Design,
  type Dock,
  formatLength,
  makeBed,
  type PartKind,
  type Units,
} from '../../rules/index.ts'
import { drawingWords } from '../../rules/words/drawing.ts'
import { bedMesh } from '../bed.ts'
import { contours } from '../contours.ts'
import type { Point } from '../paper/marks.ts'
import { ABOVE, placementsOfKinds, project } from './project.ts'
import { type Bounds, boundsOf, type View, type ViewDimension, type ViewNote, type ViewPath } from './view.ts'

export interface Drawn {
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  readonly units: Units
  readonly lang: string
}

/** Legs by number, as on every sheet: in the Dock's own order, from 1. */
export const numberOf = (dock: Dock, leg: string): number => dock.legs.findIndex(({ id }) => id === leg) + 1

const TOP: readonly PartKind[] = [
  'frame',
  'deck-panel',
  'bumper',
  'leg',
  'leg-cap',
  'anchor-post',
  'accessory',
  'hinge-bar',
]
const UNDER: readonly PartKind[] = ['foot-pad', 'brace', 'hook-bracket', 'auger']
const WHOLE: ReadonlySet<PartKind> = new Set([
  'deck-panel',
  'hook-bracket',
  'foot-pad',
  'auger',
  'bumper',
  'accessory',
])

/** Lake shown around the dock, m. */
export const AROUND = 1

/** Distances that plan and side both show, so that one stands over the other, m. */
export function rangeOf(dock: Dock): { readonly x0: number; readonly x1: number } {
  const xs = dock.sections.flatMap(({ x, heading, length, width }) => {
    const turn = (heading * Math.PI) / 180
    const [c, s] = [Math.cos(turn), Math.abs(Math.sin(turn)) * (width / 2)]
    return [x - s, x + s, x + c * length - s, x + c * length + s]
  })
  return {
    x0: Math.min(0, dock.ramp?.shoreX ?? 0, ...xs) - AROUND,
    x1: Math.max(0, ...xs) + AROUND,
  }
}

export function planView(drawn: Drawn): View {
  const { dock, design, catalog, units, lang } = drawn
  const t = drawingWords(lang, units)
  const top = project(placementsOfKinds(dock, TOP), catalog, ABOVE, (kind) => WHOLE.has(kind))
  const under = project(placementsOfKinds(dock, UNDER), catalog, ABOVE, (kind) => WHOLE.has(kind))
  const own = boundsOf([...top, ...under].flatMap(({ path }) => path.points))
  const bounds: Bounds = {
    ...rangeOf(dock),
    y0: own.y0 - AROUND,
    y1: own.y1 + AROUND,
  }
  const hidden = under.map(
    ({ path: { layer, points } }): ViewPath => ({ layer, points, closed: true, hidden: true }),
  )
  const lake = lakeLines(makeBed(design.site), bounds, drawn)
  return {
    title: t('plan'),
    paths: [...lake.paths, ...top.map(({ path }) => path), ...hidden],
    notes: [...sectionNotes(drawn), ...legNotes(drawn), ...lake.notes],
    dimensions: planDimensions(drawn, own),
    bounds,
  }
}

/** Depth lines, and the water's edge. */
function lakeLines(bed: Bed, bounds: Bounds, { units, lang }: Drawn): Pick<View, 'paths' | 'notes'> {
  const t = drawingWords(lang, units)
  const step = units === 'imperial' ? 0.3048 : 0.25
  const mesh = bedMesh(bed, bounds, 0.5)
  const most = Math.max(...mesh.depths)
  const depths = Array.from({ length: Math.max(0, Math.floor(most / step)) }, (_, i) => (i + 1) * step)
  const paths: ViewPath[] = []
  const notes: ViewNote[] = []
  for (const { depth, points } of contours(mesh, [0, ...depths])) {
    const line: Point[] = []
    for (let i = 0; i < points.length; i += 3) line.push([points[i]!, points[i + 1]!])
    paths.push({ layer: depth === 0 ? 'WATER' : 'CONTOUR', points: line, closed: false })
    const end = line.reduce((most, p) => (p[1] > most[1] ? p : most))
    if (depth > 0)
      notes.push({
        at: [end[0], bounds.y1],
        text: formatLength(depth, units),
        size: 2.2,
        prefer: 'above',
        optional: true,
      })
  }
  notes.push({
    at: [(bounds.x0 + Math.min(0, bounds.x1)) / 2, bounds.y1],
    text: t('shore'),
    size: 2.8,
    prefer: 'below',
    optional: true,
  })
  return { paths, notes }
}

const sectionNotes = ({ dock }: Drawn): ViewNote[] =>
  dock.sections.map(({ id, x, y, heading, length }) => {
    const turn = (heading * Math.PI) / 180
    return {
      at: [x + (Math.cos(turn) * length) / 2, y + (Math.sin(turn) * length) / 2],
      text: id,
      size: 3.2,
      bold: true,
      prefer: 'on',
    }
  })

const legNotes = ({ dock }: Drawn): ViewNote[] =>
  dock.legs.map(({ id, x, y }, i) => {
    const section = dock.sections.find((s) => s.id === dock.legs[i]!.section)!
    const turn = (section.heading * Math.PI) / 180
    // Outward from its section's middle line.
    const side = -Math.sin(turn) * (x - section.x) + Math.cos(turn) * (y - section.y)
    const out = Math.cos(turn) * Math.sign(side)
    return {
      at: [x, y],
      text: String(numberOf(dock, id)),
      size: 2.5,
      prefer:
        Math.abs(out) < 0.5 ? (Math.sin(turn) * side > 0 ? 'left' : 'right') : out > 0 ? 'above' : 'below',
    }
  })

/** Stations along the run, its width, and the whole dock both ways. */
function planDimensions({ dock, units }: Drawn, own: Bounds): ViewDimension[] {
  const run = dock.sections.filter(({ heading, role }) => heading === 0 && role !== 'ramp')
  const standing = dock.sections.find(({ role }) => role === 'standing')
  const aligned = standing ? run.filter(({ y }) => Math.abs(y - standing.y) < 1e-6) : []
  const list: ViewDimension[] = []
  const length = (value: number): string => formatLength(value, units)
  for (const { x, y, length: long } of aligned)
    list.push({
      from: [x, y],
      to: [x + long, y],
      along: 'x',
      side: 'below',
      off: 7,
      line: own.y0,
      text: length(long),
    })
  const last = aligned.at(-1)
  if (standing && last && aligned.length > 1)
    list.push({
      from: [standing.x, standing.y],
      to: [last.x + last.length, last.y],
      along: 'x',
      side: 'below',
      off: 14,
      line: own.y0,
      text: length(last.x + last.length - standing.x),
    })
  if (standing)
    list.push({
      from: [standing.x, standing.y - standing.width / 2],
      to: [standing.x, standing.y + standing.width / 2],
      along: 'y',
      side: 'left',
      off: 7,
      line: own.x0,
      text: length(standing.width),
    })
  if (last && own.y1 - own.y0 > last.width * 1.5)
    list.push({
      from: [own.x1, own.y0],
      to: [own.x1, own.y1],
      along: 'y',
      side: 'right',
      off: 7,
      line: own.x1,
      text: length(own.y1 - own.y0),
    })
  return list
}
