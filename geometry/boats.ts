/**
 * A boat's hull where it lies: the one shape that the scene, the section, the plans and the papers all draw, true in length, beam, height of
 * side and draught. Ours, plain, of no make. m; elevations over the water that it floats in.
 */

import type { Project } from '../rules/index.ts'
import { type Berth, berthsOf, hullBox, mooredOf } from '../rules/layout/berth.ts'
import { boatKindOf, type UsualBoat } from '../rules/structure/strength/usual-boats.ts'

/** Across its length: from the stern, half its breadth at the side's top, and where bottom and side end. */
export interface Station {
  readonly along: number
  readonly half: number
  readonly keel: number
  readonly sheer: number
}

export interface Hull {
  readonly shape: UsualBoat
  readonly length: number
  readonly beam: number
  readonly draught: number
  /** Of its side over the water. */
  readonly height: number
  /** From stern to bow. The hull proper: a motor stands behind it. */
  readonly stations: readonly Station[]
  /** Elevation of the floor that is stood on. */
  readonly floor: number
}

type Sized = Berth['boat']

interface Lines {
  /** From here to the bow it narrows, part of the length. */
  readonly narrows: number
  /** How full its bow is: the power that its breadth falls by. */
  readonly full: number
  /** Breadth left at the stem. */
  readonly stem: number
  /** From here on the bottom rises. */
  readonly rises: number
  /** Part of the draught that the hull itself takes: the rest is its motor's. */
  readonly hull: number
  /** Part of the side over the water that the sheer has amidships; it rises to all of it at the bow. */
  readonly waist: number
}
const LINES: Readonly<Record<UsualBoat, Lines>> = {
  fishing: { narrows: 0.55, full: 2.4, stem: 0.3, rises: 0.62, hull: 0.6, waist: 0.82 },
  runabout: { narrows: 0.5, full: 2.1, stem: 0.04, rises: 0.6, hull: 0.62, waist: 0.84 },
  pontoon: { narrows: 0.9, full: 2, stem: 0.72, rises: 0.88, hull: 0.78, waist: 1 },
}
const STATIONS = 16
/** The motor's part of the length, behind the transom. */
const MOTOR = 0.07

export function hullOf(boat: Sized): Hull {
  const { length, beam, height, draught } = boat
  const called = boatKindOf(boat)
  const kind = called === 'own' ? 'runabout' : called
  const lines = LINES[kind]
  const stations = Array.from({ length: STATIONS + 1 }, (_, i): Station => {
    const t = i / STATIONS
    const fore = Math.max(0, (t - lines.narrows) / (1 - lines.narrows))
    const up = Math.max(0, (t - lines.rises) / (1 - lines.rises))
    // A little narrower at the transom than amidships.
    const aft = 1 - 0.08 * Math.max(0, 1 - t / 0.4) ** 2
    return {
      along: -length / 2 + length * (MOTOR + (1 - MOTOR) * t),
      half: (beam / 2) * aft * (lines.stem + (1 - lines.stem) * (1 - fore ** lines.full)),
      keel: -draught * lines.hull + (draught * lines.hull + height * 0.35) * up ** 2.4,
      sheer: height * (lines.waist + (1 - lines.waist) * t ** 2),
    }
  })
  return {
    shape: kind,
    length,
    beam,
    draught,
    height,
    stations,
    floor: height * (kind === 'pontoon' ? 0.36 : 0.3),
  }
}

export type Flat = readonly [x: number, y: number]

/** Places of a boat in plan: along it from its middle to its bow, across it from its middle away from the dock. */
export function placeOf(berth: Berth): (along: number, off: number) => Flat {
  const { x0, x1, y0, y1 } = hullBox(berth)
  const { nx, ny } = berth.line
  const [mx, my] = [(x0 + x1) / 2, (y0 + y1) / 2]
  const [dx, dy] = toBow(berth)
  return (along, off) => [mx + dx * along + nx * off, my + dy * along + ny * off]
}

/** Along the dock its bow is to the lake; across it, to the left as one looks at the lake. */
function toBow({ line: { dx, dy, ny } }: Berth): Flat {
  const sign = (Math.abs(ny) > 0.5 ? dx : dy) < 0 ? -1 : 1
  return [sign * dx, sign * dy]
}

export interface BoatLines {
  /** Closed. */
  readonly outlines: readonly (readonly Flat[])[]
  /** Open: what is seen within. */
  readonly within: readonly (readonly Flat[])[]
}

/** Half the motor's breadth, part of the beam. */
const MOTOR_HALF = 0.08

/** From above, in plan. */
export function boatPlan(berth: Berth): BoatLines {
  const { stations, length, beam, shape } = hullOf(berth.boat)
  const place = placeOf(berth)
  const side = (sign: number, inset = 0): Flat[] =>
    stations.map(({ along, half }) => place(along, sign * Math.max(0, half - inset)))
  const stern = stations[0]!.along
  const motor = [
    [-length / 2, -1],
    [stern, -1],
    [stern, 1],
    [-length / 2, 1],
  ].map(([along, sign]) => place(along!, sign! * MOTOR_HALF * beam))
  const at = (t: number): Station => stations[Math.round(t * STATIONS)]!
  const across = (t: number): Flat[] => [-1, 1].map((sign) => place(at(t).along, sign * at(t).half))
  const thwarts =
    shape === 'fishing' ? [0.2, 0.45, 0.7, 0.86] : shape === 'runabout' ? [0.16, 0.56] : [0.32, 0.74]
  return {
    outlines: [[...side(1), ...side(-1).reverse()], motor],
    within: thwarts.map(across),
  }
}

/** From the dock's right side, x and elevation, afloat at a level; a boat that lies across the dock shows its end. */
export function boatSide(berth: Berth, level: number): BoatLines {
  const hull = hullOf(berth.boat)
  const { stations, length, beam, draught, height, floor, shape } = hull
  const { x0, x1 } = hullBox(berth)
  const middle = (x0 + x1) / 2
  const lengthwise = Math.abs(berth.line.ny) > 0.5
  const up = (z: number): number => level + z
  if (!lengthwise) {
    const amid = stations[Math.round(STATIONS * 0.4)]!
    const box = (from: number, to: number, low: number, high: number): Flat[] => [
      [middle + from, up(low)],
      [middle + to, up(low)],
      [middle + to, up(high)],
      [middle + from, up(high)],
    ]
    if (shape === 'pontoon')
      return {
        outlines: [
          box(-beam / 2, beam / 2, floor * 0.7, amid.sheer),
          box(-beam / 2, -beam * 0.22, -draught, floor * 0.7),
          box(beam * 0.22, beam / 2, -draught, floor * 0.7),
        ],
        within: [],
      }
    const v: Flat[] = [
      [-amid.half, amid.sheer],
      [-amid.half * 0.86, amid.keel * 0.45],
      [0, amid.keel],
      [amid.half * 0.86, amid.keel * 0.45],
      [amid.half, amid.sheer],
    ].map(([x, z]) => [middle + x!, up(z!)])
    return { outlines: [v, box(-MOTOR_HALF * beam, MOTOR_HALF * beam, -draught, 0)], within: [] }
  }
  // One that lies askew is seen foreshortened.
  const [ahead] = toBow(berth)
  const at = (along: number, z: number): Flat => [middle + along * ahead, up(z)]
  const stern = stations[0]!.along
  const motor = [
    at(-length / 2, height),
    at(stern, height),
    at(stern, -draught),
    at(stern - (stern + length / 2) * 0.6, -draught),
    at(-length / 2, height * 0.55),
  ]
  const lower = stations.map(({ along, keel }) => at(along, keel))
  const line = (up: (s: Station) => number): Flat[] => stations.map((s) => at(s.along, up(s))).reverse()
  if (shape === 'pontoon')
    // The fenced deck, and the tubes under it.
    return {
      outlines: [
        [at(stern, floor - SLAB), at(stations.at(-1)!.along, floor - SLAB), ...line(() => height)],
        [...lower, ...line(({ keel }) => Math.max(keel, floor - 2 * SLAB))],
        motor,
      ],
      within: [[at(stern, floor), at(stations.at(-1)!.along, floor)]],
    }
  return { outlines: [[...lower, ...line(({ sheer }) => sheer)], motor], within: [] }
}

/** Thickness of a pontoon boat's deck, m. */
const SLAB = 0.06

/** Every boat of a dock where it lies. */
export const boatsIn = ({
  design,
  dock,
}: {
  readonly design: { readonly dock: Pick<Project['design']['dock'], 'boat' | 'boats'> }
  readonly dock: Pick<Project['dock'], 'sections'>
}): Berth[] => berthsOf(design.dock, mooredOf(dock.sections))
