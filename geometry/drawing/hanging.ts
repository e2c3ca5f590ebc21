/**
 * How a section is hung on the one that stands, in four pictures seen from the side; and, read backwards, how it is lifted out. At the
 * dock's own heights, the section and its neighbor simplified. Common practice, no source.
 */
import { sectionProperties } from '../../rules/index.ts'
import type { Drawn } from '../drawn.ts'
import { label } from '../paper/blocks.ts'
import type { Mark, Point } from '../paper/marks.ts'
import { paintView } from './paint.ts'
import { person } from './people.ts'
import { EARTH, SMALLEST, type View, type ViewPath } from './view.ts'

export const HANGING = ['carry', 'legs-down', 'over', 'drop'] as const
export type HangingStep = (typeof HANGING)[number]

/** What a picture needs of the dock, m. The deck's surface is at 0, the end of the section that stands at x = 0. */
interface Measures {
  readonly length: number
  /** Of the frame. */
  readonly depth: number
  readonly water: number
  readonly bed: number
  /** Of the leg, and how far it stands over the deck when set. */
  readonly leg: number
  readonly above: number
}

/** Of the section that stands, shown; lake shown beyond the one that is hung; a hip's height. m */
const SHOWN = 1.9
const BEYOND = 0.45
const HIP = 0.85
const BRACKET = 0.07
/** Ground under the feet, that words stand in. */
const GROUND = 0.42
const LEG = 0.05
const IN = 0.14
const HUNG = '#cfe2ee'

/** The first section that is hung, or null in a dock where none is. */
function measuresOf({ dock, design, catalog }: Drawn): Measures | null {
  const hung = dock.workOrder
    .map((id) => dock.sections.find((section) => section.id === id))
    .find((section) => section?.role === 'following' && dock.legs.some((leg) => leg.section === section.id))
  const leg = hung && dock.legs.find(({ section }) => section === hung.id)
  const frame = hung && catalog.frames.find(({ code }) => code === hung.frame)
  if (!hung || !leg || !frame) return null
  const rail = catalog.stock[frame.rail]
  return {
    length: hung.length,
    depth: rail ? sectionProperties(rail).height : 0.15,
    water: -design.dock.deckHeight,
    bed: -leg.setHeight,
    leg: leg.stock ?? leg.setHeight,
    above: leg.aboveDeck ?? 0,
  }
}

const box = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]

/** A section whose shoreward upper corner is at `at`, its lake end lower by `drop`, its legs run down by `down` under its deck. */
function section(at: Point, drop: number, down: number, m: Measures, of: 'stands' | 'hung'): ViewPath[] {
  const turn = Math.asin(-drop / m.length)
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const put = (points: readonly Point[]): Point[] =>
    points.map(([x, y]) => [at[0] + c * x - s * y, at[1] + s * x + c * y])
  const axis = m.length - IN
  return [
    {
      layer: 'LEG',
      points: put(box(axis - LEG / 2, -down, axis + LEG / 2, m.leg - down)),
      closed: true,
      fill: '#ffffff',
    },
    {
      layer: 'FRAME',
      points: put(box(0, -m.depth, m.length, 0)),
      closed: true,
      fill: of === 'hung' ? HUNG : '#ffffff',
    },
  ]
}

/** What stands already: cut off at the left, its legs at the lake end, the hook bracket on its edge. */
const standing = (m: Measures): ViewPath[] => [
  ...section([-m.length, 0], 0, -m.bed, m, 'stands'),
  { layer: 'JOINT', points: box(0, -m.depth, BRACKET, -m.depth * 0.35), closed: true, fill: '#39434a' },
]

const line = (points: readonly Point[]): ViewPath => ({ layer: 'JOINT', points, closed: false })

function arrow([x, y]: Point, [dx, dy]: Point): ViewPath[] {
  const size = Math.hypot(dx, dy)
  const [u, v] = [dx / size, dy / size]
  const tip: Point = [x + dx, y + dy]
  const barb = (side: number): Point => [
    tip[0] - 0.16 * u + side * 0.08 * v,
    tip[1] - 0.16 * v - side * 0.08 * u,
  ]
  return [
    line([[x, y], tip]),
    { layer: 'JOINT', points: [tip, barb(1), barb(-1)], closed: true, fill: '#39434a' },
  ]
}

/** Where nobody stands: under it and lakeward of it. */
const keepOut = (x0: number, m: Measures): ViewPath[] => {
  const [x1, top, foot] = [m.length + BEYOND, m.water + 0.02, m.bed]
  const hatch: ViewPath[] = []
  for (let x = x0; x < x1; x += 0.28)
    hatch.push({
      layer: 'CONTOUR',
      points: [
        [x, foot],
        [Math.min(x1, x + (top - foot) * 0.7), Math.min(top, foot + (x1 - x) / 0.7)],
      ],
      closed: false,
    })
  return hatch
}

function stepOf(step: HangingStep, m: Measures): { paths: ViewPath[]; clear: number } {
  const [shore, lake] = [-0.55, -1.35]
  switch (step) {
    case 'carry':
      // Legs drawn up: nothing hangs under it.
      return {
        paths: [
          ...person([-1.55, 0]),
          ...person([-0.45, 0]),
          ...section([-1.95, HIP], 0, m.depth, m, 'hung'),
          ...arrow([0.75, HIP + 0.35], [0.9, 0]),
        ],
        clear: 0.3,
      }
    case 'legs-down': {
      const x = -m.length + 0.35
      return {
        paths: [
          ...person([-1.55, m.depth]),
          ...person([-0.35, m.depth]),
          ...section([x, m.depth], 0, -m.bed, m, 'hung'),
          ...arrow([0.55, m.depth - 0.15], [0, m.bed * 0.55]),
        ],
        clear: 0.5,
      }
    }
    case 'over': {
      // On its own feet at the lake end, on the deck's edge at the other.
      const drop = m.depth
      return {
        paths: [
          ...person([lake, 0]),
          ...person([shore, 0]),
          ...section([-0.12, m.depth], drop, -m.bed, m, 'hung'),
          line([
            [lake + 0.2, 0.95],
            [m.length - 0.25, m.depth - drop + m.above * 0.6],
          ]),
          ...arrow([0.5, m.depth + 0.45], [0.9, 0]),
        ],
        clear: 0.3,
      }
    }
    case 'drop':
      return {
        paths: [
          ...person([lake, 0]),
          ...person([shore, 0]),
          ...section([0.03, 0], 0, -m.bed, m, 'hung'),
          ...arrow([0.35, 0.75], [0, -0.6]),
        ],
        clear: 0.3,
      }
  }
}

export interface HangingWords {
  readonly rope: string
  readonly nobody: string
}

function viewOf(step: HangingStep, m: Measures): Pick<View, 'bounds' | 'paths'> {
  const bounds = {
    x0: -SHOWN,
    x1: m.length + BEYOND,
    y0: m.bed - GROUND,
    y1: Math.max(1.85, HIP + m.leg - m.depth + 0.1),
  }
  const { paths, clear } = stepOf(step, m)
  const cut = (path: ViewPath): ViewPath => ({
    ...path,
    points: path.points.map(([x, y]): Point => [Math.max(bounds.x0, Math.min(bounds.x1, x)), y]),
  })
  return {
    bounds,
    paths: (
      [
        {
          layer: 'BED',
          points: box(bounds.x0, bounds.y0, bounds.x1, m.bed),
          closed: true,
          fill: EARTH,
          bare: true,
        },
        line([
          [bounds.x0, m.bed],
          [bounds.x1, m.bed],
        ]),
        {
          layer: 'WATER',
          points: [
            [bounds.x0, m.water],
            [bounds.x1, m.water],
          ],
          closed: false,
        },
        ...keepOut(clear, m),
        ...standing(m),
        ...paths,
      ] as ViewPath[]
    ).map(cut),
  }
}

/** One of the pictures as wide as `width`, mm, its upper left corner at 0, 0; null for a dock in which nothing is hung. */
export function hangingPicture(
  drawn: Drawn,
  step: HangingStep,
  width: number,
  words: HangingWords,
): { readonly marks: readonly Mark[]; readonly height: number } | null {
  const m = measuresOf(drawn)
  if (!m) return null
  const { bounds, paths } = viewOf(step, m)
  const scale = ((bounds.x1 - bounds.x0) * 1000) / width
  const height = ((bounds.y1 - bounds.y0) * 1000) / scale
  const on = (x: number, y: number): Point => [
    ((x - bounds.x0) * 1000) / scale,
    height - ((y - bounds.y0) * 1000) / scale,
  ]
  const view: View = { title: '', paths, notes: [], dimensions: [], bounds }
  return {
    height,
    marks: [
      ...paintView(view, [0, height], scale).marks,
      label(on(m.length * 0.6, m.bed - GROUND * 0.75), words.nobody, {
        size: SMALLEST,
        weight: 'bold',
        anchor: 'middle',
      }),
      ...(step === 'over' ? [label(on(0.3, 1.05), words.rope, { size: SMALLEST })] : []),
    ],
  }
}
