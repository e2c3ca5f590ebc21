/** How to measure, drawn: the line from the bank outward, rods on it, the fixed mark. Of no lake, and to no scale. */
import type { PaperWords } from '../../rules/words/papers.ts'
import { label, moved } from '../paper/blocks.ts'
import { type Block, block } from '../paper/flow.ts'
import type { Ink, Mark, Point, Stroke } from '../paper/marks.ts'
import { GRAY, INK, SIZE, WATER } from '../paper/style.ts'

const GROUND: Ink = '#f3ede0'
const EARTH: Ink = '#7a6340'

/** mm, from the upper left corner of the sketch. */
const HEIGHT = 37
const INSET = 8
/** The stretched line, and the surface of the water. */
const TAPE = 4
const SURFACE = 15

const SMALL = { size: SIZE.tiny, ink: GRAY }
const THIN: Stroke = { width: 0.18, ink: GRAY }
const DASHED: Stroke = { ...THIN, dash: [0.8, 0.8] }

export function surveySketch(width: number, t: PaperWords): Block {
  const site = siteOf(width)
  const marks = [
    ...groundAndWater(site),
    ...tape(site, t),
    ...rods(site),
    ...depths(site, t),
    ...fixedMark(site, t),
  ]
  return block(HEIGHT, (x, y) => moved(marks, x, y), { before: 3.5 })
}

/** Where everything is, mm. */
interface Site {
  readonly width: number
  readonly bed: readonly Point[]
  readonly bedAt: (x: number) => number
  /** Of the water. */
  readonly edge: number
  /** Rods stand here; the third goes through soft bottom to firm ground at `firm`. */
  readonly rods: readonly [number, number, number]
  readonly firm: number
}

function siteOf(width: number): Site {
  const edge = width * 0.27
  const bed: readonly Point[] = [
    [INSET, 6.5],
    [width * 0.12, 7.5],
    [edge, SURFACE],
    [width * 0.45, 20.5],
    [width * 0.63, 25],
    [width * 0.82, 31],
    [width - INSET, 33],
  ]
  const bedAt = (x: number): number => {
    const after = bed.findIndex(([bx]) => bx >= x)
    const [[x0, y0], [x1, y1]] = [bed[after - 1]!, bed[after]!]
    return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)
  }
  const third = width * 0.82
  return { width, bed, bedAt, edge, rods: [width * 0.45, width * 0.63, third], firm: bedAt(third) + 3.6 }
}

const groundAndWater = ({ width, bed, edge, rods: [, , third], firm }: Site): Mark[] => [
  path([...bed, [width - INSET, HEIGHT], [INSET, HEIGHT]], null, GROUND),
  path(bed, { width: 0.35, ink: EARTH }),
  // Firm ground under soft, where the water is deep.
  path(
    [
      [width * 0.7, 31.5],
      [third, firm],
      [width - INSET, 36.4],
    ],
    { width: 0.25, ink: EARTH, dash: [1.6, 1.2] },
  ),
  level(SURFACE, edge, width - INSET, { width: 0.3, ink: WATER }),
]

/** The stretched line, with its distances from the water's edge. */
const tape = ({ width, edge, rods }: Site, t: PaperWords): Mark[] => [
  level(TAPE, INSET + 3, width - INSET - 3, { width: 0.22, ink: INK }),
  ...[INSET + 3, edge, ...rods].map((x) => plumb(x, 2.8, 5.2, { width: 0.22, ink: INK })),
  label([edge, 1.9], '0', { size: SIZE.tiny, weight: 'bold', anchor: 'middle' }),
  label([edge + 1.6, 8.4], t('water-edge'), SMALL),
  plumb(edge, 5.2, SURFACE, DASHED),
  label([(edge + rods[0]) / 2, 3.2], t('distance'), { ...SMALL, anchor: 'middle' }),
  tip(rods[0], TAPE, 1, 0),
]

/** Those that stop at the bed, and the one that goes on to firm ground. */
const rods = ({ bedAt, rods: [first, second, third], firm }: Site): Mark[] =>
  [
    { x: first, foot: bedAt(first) },
    { x: second, foot: bedAt(second) },
    { x: third, foot: firm },
  ].map(({ x, foot }) => plumb(x, 9.5, foot, { width: 0.5, ink: INK }))

/** Depth from the water down, firm depth where the rod stops. */
const depths = ({ bedAt, rods: [, second, third], firm }: Site, t: PaperWords): Mark[] => [
  plumb(second + 2.5, SURFACE, bedAt(second + 2.5), THIN),
  tip(second + 2.5, SURFACE, 0, -1),
  tip(second + 2.5, bedAt(second + 2.5), 0, 1),
  label([second + 4, (SURFACE + bedAt(second)) / 2 + 1.4], t('survey-col-depth'), SMALL),
  plumb(third + 2.5, SURFACE, firm, THIN),
  tip(third + 2.5, SURFACE, 0, -1),
  tip(third + 2.5, firm, 0, 1),
  label([third + 4, (SURFACE + bedAt(third)) / 2 + 1.4], t('survey-col-firm'), SMALL),
]

/** On the bank, and its height over the water. */
function fixedMark({ width, edge }: Site, t: PaperWords): Mark[] {
  const x = width * 0.085
  return [
    { kind: 'circle', at: [x, 5.7], radius: 1, stroke: null, fill: INK },
    level(SURFACE, x, edge, DASHED),
    plumb(x, 6.9, SURFACE, THIN),
    tip(x, SURFACE, 0, 1),
    label([x + 2, SURFACE + 3.4], t('survey-mark-over'), SMALL),
  ]
}

const path = (points: readonly Point[], stroke: Stroke | null, fill: Ink | null = null): Mark => ({
  kind: 'path',
  points,
  closed: fill !== null,
  stroke,
  fill,
})

const level = (y: number, from: number, to: number, stroke: Stroke): Mark =>
  path(
    [
      [from, y],
      [to, y],
    ],
    stroke,
  )

const plumb = (x: number, from: number, to: number, stroke: Stroke): Mark =>
  path(
    [
      [x, from],
      [x, to],
    ],
    stroke,
  )

/** Of an arrow that points along `dx`, `dy`. */
const tip = (x: number, y: number, dx: number, dy: number): Mark =>
  path(
    [
      [x, y],
      [x - dx * 1.8 - dy * 0.55, y - dy * 1.8 - dx * 0.55],
      [x - dx * 1.8 + dy * 0.55, y - dy * 1.8 + dx * 0.55],
    ],
    null,
    INK,
  )
