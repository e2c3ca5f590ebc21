/** A boat with one hull, open or with a deck before its well. */
import type { Hull, Station } from '../../../geometry/boats.ts'
import {
  AFT,
  ALLOY,
  between,
  FLOOR,
  GLASS,
  GRAY,
  NAVY,
  OLIVE,
  type Paint,
  type Pen,
  type Place,
  SEAT,
  stationAt,
  UP,
  WHITE,
} from './pen.ts'

/** Breadth of the gunwale, part of the beam. */
const GUNWALE = 0.06
/** The gunwale stands this far over the sheer, m. */
const CROWN = 0.012

/** Of its outside, by kind. */
interface Paints {
  readonly bottom: Paint
  readonly side: Paint
  readonly trim: Paint
}
const RUNABOUT: Paints = { bottom: NAVY, side: WHITE, trim: WHITE }
const FISHING: Paints = { bottom: ALLOY, side: OLIVE, trim: ALLOY }

export function drawHull(pen: Pen, hull: Hull): void {
  const runabout = hull.shape === 'runabout'
  const paints = runabout ? RUNABOUT : FISHING
  drawShell(pen, hull, paints)
  drawWellAndDecks(pen, hull, paints.trim)
  drawTransom(pen, hull, paints.side)
  if (runabout) {
    drawSeats(pen, hull)
    drawWindshield(pen, hull)
    drawConsole(pen, hull, paints.trim)
  } else drawThwarts(pen, hull)
}

/** Where bottom and side meet: half the breadth there, and its elevation. */
const chineOf = ({ half, keel, sheer }: Station): readonly [half: number, up: number] => [
  half * 0.87,
  between(keel, sheer, 0.3),
]

/** Half the breadth within the gunwales. */
const innerOf =
  ({ beam }: Hull) =>
  ({ half }: Station): number =>
    Math.max(0.02, half - GUNWALE * beam)

/** Bottom, sides and gunwales. */
function drawShell(pen: Pen, { stations, beam }: Hull, { bottom, side, trim }: Paints): void {
  for (const sign of [1, -1]) {
    const out = (at: Place): Place => [0, sign, at[2] < 0 ? -0.6 : 0.1]
    pen.sheet(
      stations.map((s) => {
        const [half, up] = chineOf(s)
        return [0, 0.55, 1].map((t): Place => [s.along, sign * half * t, between(s.keel, up, t ** 1.25)])
      }),
      bottom,
      () => [0, sign * 0.2, -1],
    )
    const rows = (from: number, to: number): Place[][] =>
      stations.map((s) => {
        const [half, up] = chineOf(s)
        return [from, (from + to) / 2, to].map(
          (t): Place => [s.along, sign * between(half, s.half, Math.sqrt(t)), between(up, s.sheer, t)],
        )
      })
    pen.sheet(rows(0, 0.3), bottom, out)
    pen.sheet(rows(0.3, 1), side, out)
    pen.sheet(
      stations.map((s): Place[] => [
        [s.along, sign * s.half, s.sheer],
        [s.along, sign * Math.max(0, s.half - GUNWALE * beam), s.sheer + CROWN],
      ]),
      trim,
      UP,
    )
  }
}

/** The well that is stood in, and the decks before and behind it. */
function drawWellAndDecks(pen: Pen, hull: Hull, trim: Paint): void {
  const { stations, floor } = hull
  const runabout = hull.shape === 'runabout'
  const inner = innerOf(hull)
  const from = 1
  const to = Math.round((stations.length - 1) * (runabout ? 0.62 : 0.8))
  const well = stations.slice(from, to + 1)
  for (const sign of [1, -1])
    pen.sheet(
      well.map((s): Place[] => [
        [s.along, sign * inner(s), s.sheer + CROWN],
        [s.along, sign * inner(s) * 0.94, floor],
      ]),
      runabout ? SEAT : GRAY,
      () => [0, -sign, 0],
    )
  const across = (s: Station, up: number, part = 1): Place[] =>
    [-1, 0, 1].map((t): Place => [s.along, t * inner(s) * part, up])
  pen.sheet(
    well.map((s) => across(s, floor, 0.94)),
    runabout ? FLOOR : GRAY,
    UP,
  )
  const deck = (s: Station): Place[] =>
    [-1, -0.5, 0, 0.5, 1].map(
      (t): Place => [s.along, t * inner(s), s.sheer + CROWN + (runabout ? 0.05 : 0.01) * (1 - t * t)],
    )
  pen.sheet(stations.slice(to).map(deck), trim, UP)
  pen.sheet(stations.slice(0, from + 1).map(deck), trim, UP)
  const walls: readonly (readonly [Station, () => Place])[] = [
    [stations[to]!, AFT],
    [stations[from]!, () => [1, 0, 0]],
  ]
  for (const [s, seen] of walls) pen.sheet([across(s, floor, 0.94), across(s, s.sheer + CROWN)], trim, seen)
}

function drawTransom(pen: Pen, { stations }: Hull, paint: Paint): void {
  const stern = stations[0]!
  const [chine, up] = chineOf(stern)
  pen.sheet(
    [
      [-1, 0, 1].map((t): Place => [stern.along, t * chine, t === 0 ? stern.keel : up]),
      [-1, 0, 1].map((t): Place => [stern.along, t * stern.half, stern.sheer]),
    ],
    paint,
    AFT,
  )
}

function drawThwarts(pen: Pen, hull: Hull): void {
  const { stations, floor } = hull
  const inner = innerOf(hull)
  for (const t of [0.2, 0.45, 0.7]) {
    const s = stationAt(stations, t)
    pen.box(
      [s.along - 0.14, -inner(s) * 0.95, floor + 0.1],
      [s.along + 0.14, inner(s) * 0.95, floor + 0.16],
      ALLOY,
    )
  }
}

/** A bench aft, and two seats side by side. */
function drawSeats(pen: Pen, hull: Hull): void {
  const { stations, beam, height, floor, length } = hull
  const deep = Math.min(0.5, length * 0.09)
  const seat = ({ along }: Station, a: number, b: number): void => {
    pen.box([along, a, floor], [along + deep, b, floor + height * 0.34], SEAT, 0.02)
    pen.box([along - 0.1, a, floor + 0.02], [along + 0.03, b, floor + height * 0.78], SEAT, 0.03)
  }
  const aft = stationAt(stations, 0.12)
  const half = innerOf(hull)(aft) * 0.88
  seat(aft, -half, half)
  for (const sign of [1, -1]) seat(stationAt(stations, 0.44), sign * beam * 0.1, sign * beam * 0.32)
}

/** The place along the hull of the windshield's foot, at the fore end of the well. */
const WINDSHIELD = 0.62

/** Around the fore end of the well, leaning aft. */
function drawWindshield(pen: Pen, hull: Hull): void {
  const { stations, height } = hull
  const inner = innerOf(hull)
  const foot = stationAt(stations, WINDSHIELD)
  const end = stationAt(stations, 0.5)
  const tall = 0.2 + 0.16 * height
  const lean = 0.28
  for (const sign of [1, -1]) {
    const low: Place[] = [
      [foot.along + 0.08, sign * 0.01, foot.sheer + 0.06],
      [foot.along - 0.02, sign * inner(foot) * 0.72, foot.sheer + 0.03],
      [end.along, sign * inner(end) * 0.98, end.sheer + 0.02],
    ]
    const high = low.map(([x, y, z], i): Place => [x - lean, y * 0.92, z + (i === 2 ? tall * 0.35 : tall)])
    pen.sheet([low, high], GLASS, () => [1, sign * 0.4, 0.6])
  }
}

/** Behind the windshield, before the one who steers. */
function drawConsole(pen: Pen, { stations, beam, floor }: Hull, trim: Paint): void {
  const { along, sheer } = stationAt(stations, WINDSHIELD)
  pen.box([along - 0.32, -beam * 0.34, floor], [along - 0.02, -beam * 0.1, sheer], trim, 0.03)
}
