/** A pontoon boat: a deck on two tubes, with a fence around it. */
import type { Hull } from '../../../geometry/boats.ts'
import {
  AFT,
  ALLOY,
  between,
  FLOOR,
  GLASS,
  GRAY,
  MAROON,
  type Paint,
  type Pen,
  type Place,
  SEAT,
  stationAt,
  UP,
  WHITE,
} from './pen.ts'

/** Thickness of the deck, m. */
const SLAB = 0.06
/** The fence stands this far within the deck's edge, and is this thick, m. */
const RAIL = 0.05
const THICK = 0.035
/** Sides of a tube. */
const ROUND = 12

export function drawPontoon(pen: Pen, hull: Hull): void {
  drawTubes(pen, hull)
  drawDeck(pen, hull)
  drawSides(pen, hull)
  drawBenches(pen, hull)
  drawHelm(pen, hull)
}

/** Along a tube: closed astern, drawn to a nose that rises. */
const RINGS: readonly (readonly [t: number, size: number, rise: number])[] = [
  [0, 0.05, 0],
  [0, 1, 0],
  [0.86, 1, 0],
  [0.93, 0.86, 0.12],
  [0.975, 0.55, 0.38],
  [1, 0.06, 0.75],
]

/** Each with the beam that the deck rests on. */
function drawTubes(pen: Pen, { stations, beam, floor, length }: Hull): void {
  const low = stations[0]!.keel
  const r = Math.min((floor - SLAB - low) / 2, beam * 0.16)
  const middle = low + r
  for (const sign of [1, -1]) {
    const off = sign * (beam / 2 - r - 0.04)
    pen.sheet(
      RINGS.map(([t, size, rise]) =>
        Array.from({ length: ROUND + 1 }, (_, k): Place => {
          const a = (2 * Math.PI * k) / ROUND
          return [
            between(stations[0]!.along, length / 2, t),
            off + r * size * Math.cos(a),
            middle + r * rise + r * size * Math.sin(a),
          ]
        }),
      ),
      ALLOY,
      ([along, y, z]) => [along > length * 0.4 ? 0.4 : 0, y - off, z - middle],
    )
    pen.box([-length * 0.4, off - 0.03, middle + r * 0.7], [length * 0.4, off + 0.03, floor - SLAB], ALLOY)
  }
}

/** Its upper and its lower face. */
function drawDeck(pen: Pen, { stations, floor }: Hull): void {
  for (const up of [floor, floor - SLAB])
    pen.sheet(
      stations.map(({ along, half }) => [-1, 1].map((t): Place => [along, t * half, up])),
      up === floor ? FLOOR : GRAY,
      up === floor ? UP : () => [0, 0, -1],
    )
}

/** All around at one height; `inset`: within the deck's edge, m. */
interface Band {
  readonly from: number
  readonly to: number
  readonly paint: Paint
  readonly inset: number
}

/** Sides of the deck, then of the fence: a stripe between two white panels, seen from without and within. */
function drawSides(pen: Pen, hull: Hull): void {
  const { stations, floor, height } = hull
  const [low, high] = [between(floor, height, 0.42), between(floor, height, 0.68)]
  drawBand(pen, hull, { from: floor - SLAB, to: floor, paint: ALLOY, inset: 0 }, false)
  const fence: readonly Band[] = [
    { from: floor + 0.06, to: low, paint: WHITE, inset: RAIL },
    { from: low, to: high, paint: MAROON, inset: RAIL },
    { from: high, to: height - 0.04, paint: WHITE, inset: RAIL },
    { from: height - 0.04, to: height, paint: ALLOY, inset: RAIL },
  ]
  for (const band of fence) for (const inward of [false, true]) drawBand(pen, hull, band, inward)
  // The stern's deck beyond the fence.
  const stern = stations[0]!
  pen.sheet(
    [-1, 1].map((t) => [floor - SLAB, floor].map((up): Place => [stern.along, t * stern.half, up])),
    ALLOY,
    AFT,
  )
  // What closes the fence above.
  for (const sign of [1, -1])
    pen.sheet(
      stations.slice(1).map(({ along, half }): Place[] => [
        [along - RAIL, sign * (half - RAIL), height],
        [along - RAIL, sign * (half - RAIL - THICK), height],
      ]),
      ALLOY,
      UP,
    )
}

/** One face of a band: both sides, then its ends aft and fore. */
function drawBand(pen: Pen, { stations }: Hull, { from, to, paint, inset }: Band, inward: boolean): void {
  const fore = stations.slice(1)
  const thin = inward ? inset + THICK : inset
  const look = inward ? -1 : 1
  const shade: Paint = inward ? [paint[0] * 0.9, paint[1] * 0.9, paint[2] * 0.9, 0.1] : paint
  for (const sign of [1, -1])
    pen.sheet(
      fore.map(({ along, half }): Place[] =>
        [from, to].map((up): Place => [along - (inset > 0 ? thin : 0), sign * (half - thin), up]),
      ),
      shade,
      () => [0, sign * look, 0],
    )
  for (const [s, way] of [
    [fore[0]!, -1],
    [fore.at(-1)!, 1],
  ] as const)
    pen.sheet(
      [-1, 1].map((t) =>
        [from, to].map(
          (up): Place => [
            s.along - (inset > 0 ? way * (thin - (way > 0 ? 0 : RAIL)) : 0),
            t * (s.half - thin),
            up,
          ],
        ),
      ),
      shade,
      () => [way * look, 0, 0],
    )
}

/** Half the breadth within the fence, m. */
const insideOf =
  ({ stations }: Hull) =>
  (t: number): number =>
    stationAt(stations, t).half - RAIL - 0.05

/** Elevation of the seats, m. */
const seatTopOf = ({ floor, height }: Hull): number => floor + Math.min(0.43, (height - floor) * 0.75)

/** Along the fence, and one across the stern. */
function drawBenches(pen: Pen, hull: Hull): void {
  const { stations, beam, floor, height, length } = hull
  const inside = insideOf(hull)
  const seatTop = seatTopOf(hull)
  const wide = Math.min(0.58, beam * 0.23)
  const along = (t: number): number => between(stations[0]!.along, length / 2, t)
  const bench = (a: number, b: number, sign: number): void => {
    const edge = Math.min(inside(a), inside(b))
    const [x, y] = [along(a), along(b)]
    pen.box([x, sign * (edge - wide), floor], [y, sign * edge, seatTop], SEAT, 0.02)
    pen.box([x, sign * (edge - 0.12), seatTop], [y, sign * edge, height + 0.03], SEAT, 0.02)
  }
  bench(0.68, 0.93, 1)
  bench(0.68, 0.93, -1)
  bench(0.1, 0.34, 1)
  const aft = along(0.1)
  pen.box([aft, -inside(0.1), floor], [aft + wide, inside(0.1), seatTop], SEAT, 0.02)
}

/** The helm, with its seat behind it. */
function drawHelm(pen: Pen, hull: Hull): void {
  const { stations, beam, floor, height, length } = hull
  const helm = between(stations[0]!.along, length / 2, 0.5)
  const edge = -insideOf(hull)(0.5)
  const seatTop = seatTopOf(hull)
  pen.box([helm, edge, floor], [helm + 0.45, edge + beam * 0.28, height + 0.14], WHITE, 0.05)
  pen.box(
    [helm + 0.06, edge + 0.06, height + 0.14],
    [helm + 0.16, edge + beam * 0.24, height + 0.4],
    GLASS,
    0.03,
  )
  pen.box([helm - 0.85, edge + 0.08, floor], [helm - 0.4, edge + beam * 0.24, seatTop + 0.05], SEAT, 0.03)
  pen.box([helm - 0.92, edge + 0.08, seatTop], [helm - 0.8, edge + beam * 0.24, height + 0.22], SEAT, 0.03)
}
