/** Each different pair of legs from the shore: set heights, spacing, the brace between its clamps. */

import { type Dock, formatLength, type Pair, type Vec3 } from '../../rules/index.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { wrapText } from '../paper/text.ts'
import { type Eye, levelEye } from '../projection.ts'
import { dot } from '../vec.ts'
import { outlinesFrom, type Shown } from './outlines.ts'
import {
  type Bounds,
  boundsOf,
  EARTH,
  SMALLEST,
  type View,
  type ViewDimension,
  type ViewPath,
} from './view.ts'

/** Bed shown beyond the legs, m. */
const ASIDE = 0.2
/** Rows of upright dimension lines, mm on paper: beside the low end figures lie level, and take more room. */
const CLAMPS = 4
const SET_LOW = 17
const SET_HIGH = 6
/** Lines of captions that list legs are broken at, mm. */
const LIKE = 60
/** Pairs whose figures differ by less than this count as alike: half of the reading accuracy in the water, m. */
const SAME = 0.00635

/** Groups of pairs that look alike, in the Dock's order. */
export function alikePairs(dock: Dock): readonly (readonly Pair[])[] {
  return groupsBy(
    dock,
    ({ setHeight, stock, pad }) => `${Math.round(setHeight / (2 * SAME))} ${stock} ${pad}`,
    // Of legs that are alike, lengthwise ones hang by what else is on them.
    ({ along, brace }) => (along && brace ? Math.round(brace.highClearance / (2 * SAME)) : 0),
  )
}

/** Groups of pairs that one picture shows and a table tells apart: the same brace the same way round, pads and spacing. In the Dock's order. */
export function pairsByBrace(dock: Dock): readonly (readonly Pair[])[] {
  return groupsBy(dock, ({ stock, pad }) => `${stock === null} ${pad}`)
}

/** Pairs of one spacing with the same brace the same way round, and legs of which the same is told. */
function groupsBy(
  dock: Dock,
  told: (leg: Leg) => string,
  hung: (pair: Pair) => number = () => 0,
): readonly (readonly Pair[])[] {
  const groups = new Map<string, Pair[]>()
  for (const pair of dock.pairs) {
    const ends = leftFirst(dock, pair)
    const key = [
      ...ends.map(told),
      Math.round(pair.spacing / SAME),
      hung(pair),
      pair.brace?.code,
      ends.findIndex(({ id }) => id === pair.brace?.low),
    ].join('\n')
    const group = groups.get(key)
    if (group) group.push(pair)
    else groups.set(key, [pair])
  }
  return [...groups.values()]
}

/**
 * The view of a group of alike pairs, drawn from the first one.
 * @param others built as those, with heights of their own that the table of legs has
 */
export function pairView(drawn: Drawn, alike: readonly Pair[], others: readonly Pair[] = []): View {
  const { dock } = drawn
  const t = wordsOf(DRAWING, drawn)
  const one = asSeen(drawn, alike[0]!)
  const { pair, left, right } = one
  const shown = shownParts(drawn, one)
  const ground = groundOf(drawn, one)
  const own = boundsOf([...shown.flatMap(({ path }) => path.points), ...ground])
  const bottom = own.y0 - 0.12
  return {
    title: t('pair', {
      legs: numbersOf(dock, alike),
    }),
    captions: [
      ...captionsOf(drawn, pair),
      ...(others.length === 0
        ? []
        : wrapText(t('pairs-like', { legs: numbersOf(dock, others) }), LIKE, SMALLEST)),
    ],
    paths: [
      ...bedAndWater(ground, bottom, one),
      ...missingLegs(drawn, one),
      ...shown.map(({ path }) => path),
    ],
    notes: [left, right].map(({ leg, s }) => ({
      at: [s, drawn.design.dock.deckHeight + (leg.aboveDeck ?? 0)],
      text: `${legNumber(dock, leg.id)}`,
      size: 2.8,
      bold: true,
      prefer: 'above',
    })),
    dimensions: [
      ...heightDimensions(drawn, one, own),
      ...braceDimension(drawn, one),
      {
        from: [left.s, bottom],
        to: [right.s, bottom],
        along: 'x',
        side: 'below',
        off: 6,
        line: bottom,
        text: formatLength(pair.spacing, drawn),
      },
    ],
    bounds: { ...own, y0: bottom },
  }
}

/** `5 + 6, 9 + 10`, left ones first. */
const numbersOf = (dock: Dock, pairs: readonly Pair[]): string =>
  pairs
    .map((each) =>
      leftFirst(dock, each)
        .map(({ id }) => legNumber(dock, id))
        .join(' + '),
    )
    .join(', ')

type Leg = Dock['legs'][number]

/** The two legs of a pair from left to right as drawn: looking lakeward, or along the shore for a pair along the dock. */
function leftFirst(dock: Dock, { legs: [one, two] }: Pair): readonly [Leg, Leg] {
  const [a, b] = [legOf(dock, one), legOf(dock, two)]
  const across = Math.abs(a.y - b.y) >= Math.abs(a.x - b.x)
  return (across ? a.y > b.y : a.x < b.x) ? [a, b] : [b, a]
}

const legOf = (dock: Dock, id: string): Leg => dock.legs.find((leg) => leg.id === id)!

/** A leg and its horizontal place in the view, m. */
interface Stood {
  readonly leg: Leg
  readonly s: number
}

/** A pair with its legs from left to right, and the eye that looks at it. */
interface Seen {
  readonly pair: Pair
  readonly left: Stood
  readonly right: Stood
  readonly eye: Eye
}

function asSeen({ dock }: Drawn, pair: Pair): Seen {
  const [a, b] = leftFirst(dock, pair)
  const span = Math.hypot(b.x - a.x, b.y - a.y)
  const right: Vec3 = [(b.x - a.x) / span, (b.y - a.y) / span, 0]
  const stood = (leg: Leg): Stood => ({ leg, s: dot(right, [leg.x, leg.y, 0]) })
  return { pair, left: stood(a), right: stood(b), eye: levelEye(right) }
}

/** The legs with all that is on them, and the frames of their sections. */
function shownParts({ dock, catalog }: Drawn, { pair, left, right, eye }: Seen): Shown[] {
  const own = new Set([left.leg.id, right.leg.id, pair.id])
  const frames = new Set([left.leg.section, right.leg.section])
  return outlinesFrom(
    dock.placements.filter(
      ({ kind, of }) =>
        (own.has(of) && kind !== 'set-bolt' && kind !== 'pad-bolt') || (kind === 'frame' && frames.has(of)),
    ),
    catalog,
    eye,
    (kind) => kind === 'frame',
  )
}

/** The bed from somewhat left of the pair to somewhat right of it. */
function groundOf({ bed }: Drawn, { left, right, eye }: Seen): Point[] {
  return Array.from({ length: 41 }, (_, i): Point => {
    const along = left.s - ASIDE + ((right.s - left.s + 2 * ASIDE) * i) / 40
    const { x, y } = left.leg
    return [along, bed.bedAt(x + eye.right[0] * (along - left.s), y + eye.right[1] * (along - left.s))]
  })
}

/** Earth down to `bottom`; water where any of the ground is under it. */
function bedAndWater(ground: readonly Point[], bottom: number, { left, right }: Seen): ViewPath[] {
  const earth: ViewPath = {
    layer: 'BED',
    points: [[left.s - ASIDE, bottom], ...ground, [right.s + ASIDE, bottom]],
    closed: true,
    fill: EARTH,
    bare: true,
  }
  const surface: ViewPath = {
    layer: 'WATER',
    points: [
      [left.s - ASIDE, 0],
      [right.s + ASIDE, 0],
    ],
    closed: false,
  }
  const dry = Math.max(...ground.map(([, z]) => z)) >= 0
  return [earth, ...(dry ? [] : [surface]), { layer: 'BED', points: ground, closed: false, earth: true }]
}

/** Where no stock length will do: dashes from the bed to the deck. */
const missingLegs = ({ design }: Drawn, { left, right }: Seen): ViewPath[] =>
  [left, right]
    .filter(({ leg }) => leg.stock === null)
    .map(({ leg, s }) => ({
      layer: 'LEG',
      points: [
        [s, leg.bed],
        [s, design.dock.deckHeight],
      ],
      closed: false,
      hidden: true,
    }))

/** Nearest the leg where the clamps go on it, outside of that its set height. */
function heightDimensions(drawn: Drawn, { pair, left, right }: Seen, own: Bounds): ViewDimension[] {
  const { design } = drawn
  const upright = (of: Stood, from: number, to: number, off: number, height: number): ViewDimension => ({
    from: [of.s, from],
    to: [of.s, to],
    along: 'y',
    side: of === left ? 'left' : 'right',
    off,
    line: of === left ? own.x0 : own.x1,
    text: formatLength(height, drawn),
  })
  const setHeight = (of: Stood, off: number): ViewDimension =>
    upright(of, of.leg.bed, design.dock.deckHeight, off, of.leg.setHeight)
  const { brace } = pair
  if (!brace) return [setHeight(left, CLAMPS), setHeight(right, CLAMPS)]
  const [low, high] = brace.low === left.leg.id ? [left, right] : [right, left]
  return [
    upright(low, low.leg.bed, brace.lowZ, CLAMPS, brace.lowZ - low.leg.bed),
    upright(low, brace.lowZ, brace.highZ, CLAMPS, brace.rise),
    setHeight(low, CLAMPS + SET_LOW),
    upright(high, high.leg.bed, brace.highZ, CLAMPS, brace.highZ - high.leg.bed),
    setHeight(high, CLAMPS + SET_HIGH),
  ]
}

/** From hole to hole, where the Dock has the brace in its place. */
function braceDimension(drawn: Drawn, { pair, left, eye }: Seen): ViewDimension[] {
  const { brace } = pair
  const placed = drawn.dock.placements.find(({ kind, of }) => kind === 'brace' && of === pair.id)
  if (!brace || !placed) return []
  const run = Math.sqrt(Math.max(0, brace.stock ** 2 - brace.rise ** 2))
  const from = dot(eye.right, placed.at)
  const to = from + (brace.low === left.leg.id ? run : -run)
  return [
    {
      from: [from, brace.lowZ],
      to: [to, brace.highZ],
      along: 'slope',
      side: 'above',
      off: 4,
      text: formatLength(brace.stock, drawn),
    },
  ]
}

function captionsOf(drawn: Drawn, { brace }: Pair): string[] {
  const t = wordsOf(DRAWING, drawn)
  if (!brace) return [t('no-brace')]
  const meters = (value: number) => ({ value, unit: 'm' })
  return [
    t('brace-is', {
      brace: brace.code,
      low: legNumber(drawn.dock, brace.low),
    }),
    t('brace-clear', { low: meters(brace.lowClearance), high: meters(brace.highClearance) }),
  ]
}
