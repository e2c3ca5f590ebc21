/** Each different pair of legs from the shore: set heights, spacing, the brace between its clamps. */

import { type Dock, formatLength, type Pair, type Vec3 } from '../../rules/index.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/say.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { levelEye } from '../projection.ts'
import { dot } from '../vec.ts'
import { outlinesFrom } from './outlines.ts'
import { numberOf } from './plan.ts'
import { boundsOf, EARTH, type View, type ViewDimension, type ViewPath } from './view.ts'

/** Bed shown beyond the legs, m. */
const ASIDE = 0.2
/** Rows of upright dimension lines, mm on paper: beside the low end figures lie level, and take more room. */
const CLAMPS = 4
const SET_LOW = 17
const SET_HIGH = 6
/** Pairs whose figures differ by less look the same: half of what is read in the water, m. */
const SAME = 0.00635

/** Pairs that look alike, in the Dock's order. Legs of none are alone. */
export function alikePairs(dock: Dock): readonly (readonly Pair[])[] {
  const legs = new Map(dock.legs.map((leg) => [leg.id, leg]))
  const groups = new Map<string, Pair[]>()
  for (const pair of dock.pairs) {
    const key = [
      ...leftFirst(dock, pair).map((id) => {
        const { setHeight, stock, pad } = legs.get(id)!
        return `${Math.round(setHeight / (2 * SAME))} ${stock} ${pad}`
      }),
      Math.round(pair.spacing / SAME),
      pair.brace?.code,
      pair.brace && leftFirst(dock, pair).indexOf(pair.brace.low),
    ].join('\n')
    const group = groups.get(key)
    if (group) group.push(pair)
    else groups.set(key, [pair])
  }
  return [...groups.values()]
}

/** The two legs of a pair from left to right as drawn: looking lakeward, or along the shore for a pair along the dock. */
function leftFirst(dock: Dock, { legs: ids }: Pair): readonly [string, string] {
  const [a, b] = ids.map((id) => dock.legs.find((leg) => leg.id === id)!) as [Leg, Leg]
  const across = Math.abs(a.y - b.y) >= Math.abs(a.x - b.x)
  return (across ? a.y > b.y : a.x < b.x) ? [a.id, b.id] : [b.id, a.id]
}
type Leg = Dock['legs'][number]

export function pairView(drawn: Drawn, alike: readonly Pair[]): View {
  const { dock, design, catalog, bed } = drawn
  const t = wordsOf(DRAWING, drawn)
  const pair = alike[0]!
  const [a, b] = leftFirst(dock, pair).map((id) => dock.legs.find((leg) => leg.id === id)!) as [Leg, Leg]
  const span = Math.hypot(b.x - a.x, b.y - a.y)
  const right: Vec3 = [(b.x - a.x) / span, (b.y - a.y) / span, 0]
  const eye = levelEye(right)
  const mine = new Set([a.id, b.id, pair.id])
  const frames = new Set([a.section, b.section])
  const shown = outlinesFrom(
    dock.placements.filter(
      ({ kind, of }) =>
        (mine.has(of) && kind !== 'set-bolt' && kind !== 'pad-bolt') || (kind === 'frame' && frames.has(of)),
    ),
    catalog,
    eye,
    (kind) => kind === 'frame',
  )
  const s = (leg: Leg): number => dot(right, [leg.x, leg.y, 0])
  const [sa, sb] = [s(a), s(b)]
  const ground = Array.from({ length: 41 }, (_, i): Point => {
    const along = sa - ASIDE + ((sb - sa + 2 * ASIDE) * i) / 40
    const [x, y] = [a.x + right[0] * (along - sa), a.y + right[1] * (along - sa)]
    return [along, bed.bedAt(x, y)]
  })
  const own = boundsOf([...shown.flatMap(({ path }) => path.points), ...ground])
  const bottom = own.y0 - 0.12
  const earth: ViewPath = {
    layer: 'BED',
    points: [[sa - ASIDE, bottom], ...ground, [sb + ASIDE, bottom]],
    closed: true,
    fill: EARTH,
    bare: true,
  }
  const floor: ViewPath = { layer: 'BED', points: ground, closed: false }
  const water: ViewPath[] =
    Math.max(...ground.map(([, z]) => z)) < 0
      ? [
          {
            layer: 'WATER',
            points: [
              [sa - ASIDE, 0],
              [sb + ASIDE, 0],
            ],
            closed: false,
          },
        ]
      : []
  const deck = design.dock.deckHeight
  // Where no stock length will do: dashes from the bed to the deck.
  const missing = [a, b].flatMap((leg, i): ViewPath[] =>
    leg.stock === null
      ? [
          {
            layer: 'LEG',
            points: [
              [i === 0 ? sa : sb, leg.bed],
              [i === 0 ? sa : sb, design.dock.deckHeight],
            ],
            closed: false,
            hidden: true,
          },
        ]
      : [],
  )
  const { brace } = pair
  const upright = (
    leg: Leg,
    [from, to]: readonly [number, number],
    row: number,
    text: number,
  ): ViewDimension => ({
    from: [leg === a ? sa : sb, from],
    to: [leg === a ? sa : sb, to],
    along: 'y',
    side: leg === a ? 'left' : 'right',
    off: row,
    line: leg === a ? own.x0 : own.x1,
    text: formatLength(text, drawn),
  })
  const low = brace && (brace.low === a.id ? a : b)
  const high = brace && (low === a ? b : a)
  // Nearest the leg where the clamps go on it, outside of that its set height.
  const heights: ViewDimension[] =
    brace && low && high
      ? [
          upright(low, [low.bed, brace.lowZ], CLAMPS, brace.lowZ - low.bed),
          upright(low, [brace.lowZ, brace.highZ], CLAMPS, brace.rise),
          upright(low, [low.bed, deck], CLAMPS + SET_LOW, low.setHeight),
          upright(high, [high.bed, brace.highZ], CLAMPS, brace.highZ - high.bed),
          upright(high, [high.bed, deck], CLAMPS + SET_HIGH, high.setHeight),
        ]
      : [upright(a, [a.bed, deck], CLAMPS, a.setHeight), upright(b, [b.bed, deck], CLAMPS, b.setHeight)]
  // From hole to hole, where the Dock has it.
  const placed = brace && dock.placements.find(({ kind, of }) => kind === 'brace' && of === pair.id)
  const holes: ViewDimension[] = []
  if (brace && placed) {
    const run = Math.sqrt(Math.max(0, brace.stock ** 2 - brace.rise ** 2))
    const from = dot(right, placed.at)
    const to = from + (low === a ? run : -run)
    holes.push({
      from: [from, brace.lowZ],
      to: [to, brace.highZ],
      along: 'slope',
      side: 'above',
      off: 4,
      text: formatLength(brace.stock, drawn),
    })
  }
  const meters = (value: number) => ({ value, unit: 'm' })
  const numbers = alike.map((one) =>
    leftFirst(dock, one)
      .map((id) => numberOf(dock, id))
      .join(' + '),
  )
  return {
    title: t('pair', { legs: numbers.join(', ') }),
    captions: brace
      ? [
          t('brace-is', {
            brace: brace.code,
            low: numberOf(dock, brace.low),
          }),
          t('brace-clear', { low: meters(brace.lowClearance), high: meters(brace.highClearance) }),
        ]
      : [t('no-brace')],
    paths: [earth, ...water, floor, ...missing, ...shown.map(({ path }) => path)],
    notes: [a, b].map((leg, i) => ({
      at: [i === 0 ? sa : sb, deck + (leg.aboveDeck ?? 0)],
      text: `${numberOf(dock, leg.id)}`,
      size: 2.8,
      bold: true,
      prefer: 'above',
    })),
    dimensions: [
      ...heights,
      ...holes,
      {
        from: [sa, bottom],
        to: [sb, bottom],
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
