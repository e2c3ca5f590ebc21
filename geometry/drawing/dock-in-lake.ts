/**
 * The dock in its water as it is seen from the shore, in perspective, drawn of the Dock's own placements: what a customer is shown where there
 * is no scene. Lines and fills alone, so that it prints sharp, and is told on a copy in black and white.
 */
import type { PartKind, Placement, Section, Vec3 } from '../../rules/index.ts'
import { footprintOfAll, stanceOf, toPlan } from '../../rules/layout/footprint.ts'
import { factsOf } from '../../rules/part-kinds.ts'
import { PERSON_HEIGHT } from '../../rules/person.ts'
import { boatsIn, hullOf, placeOf } from '../boats.ts'
import type { Drawn } from '../drawn.ts'
import type { Ink, Mark, Point } from '../paper/marks.ts'
import { inDock } from '../projection.ts'
import { solidOf } from '../solids/index.ts'
import type { Look as Material, Solid } from '../types.ts'
import { cross, dot, length, rotate, scale, sub } from '../vec.ts'
import type { Box } from './cells.ts'
import { type Bounded, drawOrder } from './draw-order.ts'
import { lakeGround, waterInk } from './lake-ground.ts'
import { mixed } from './mixed.ts'
import { outline } from './outlines.ts'
import { person } from './people.ts'
import { cutAtHeight, type Look, type Perspective, perspective } from './perspective.ts'
import type { Picture } from './picture.ts'

/** From the shore, over the right hand's side: its length across the picture, the lake behind it. */
const LOOK: Look = { toward: 40, down: 9, away: 0.95 }
/** Height of the picture, of its width; white that the dock keeps from its edges, of the picture: more where the sky is. */
const HIGH = 0.5
const KEEP = { side: 0.05, above: 0.2, below: 0.12 } as const
/** Sections of which each plank is drawn; and the most of which there is a picture: more is a line. */
const PLANKS = 30
const MOST = 400

const INKS: Readonly<Record<Material, Ink>> = {
  aluminum: '#c4cacf',
  steel: '#8b949b',
  wood: '#cfa97a',
  plastic: '#4b5359',
  rubber: '#3f464b',
  decking: '#b59a78',
}
const LINE: Ink = '#2a3238'
const SHADE: Ink = '#20404f'
/** Where light comes from. */
const SUN: Vec3 = (() => {
  const from: Vec3 = [-0.35, -0.5, 0.8]
  return scale(from, 1 / length(from))
})()

/** A convex body with what is seen of it. */
interface Shown extends Bounded {
  readonly faces: readonly Face[]
  readonly seen: Box
}
interface Face {
  readonly points: readonly Point[]
  readonly ink: Ink
  readonly bare?: boolean
}

/** Null where there is no dock, or one longer than a picture can show. `width` in mm. */
export function dockInLake(drawn: Drawn, width: number): Picture | null {
  const { dock } = drawn
  const covered = footprintOfAll(dock.sections)
  if (!covered || dock.sections.length > MOST) return null
  const height = width * HIGH
  const box: Box = { x0: 0, y0: 0, x1: width, y1: height }
  const level = 0
  const seen = perspective(framedBy(drawn), LOOK, frameIn(box), box)
  const below = bodiesIn(drawn, seen, level, -1)
  const above = bodiesIn(drawn, seen, level, 1, boats(drawn, seen, level))
  return {
    width,
    height,
    marks: [
      ...lakeGround(drawn, seen, box, level),
      ...below.flatMap(drawnBody),
      ...shadows(drawn, seen, level),
      ...above.flatMap(drawnBody),
      ...someone(drawn, seen),
      frameOf(box),
    ],
  }
}

const frameIn = ({ x1, y1 }: Box): Box => ({
  x0: KEEP.side * x1,
  x1: (1 - KEEP.side) * x1,
  y0: KEEP.above * y1,
  y1: (1 - KEEP.below) * y1,
})

/** The dock from the water to over its deck, its boats, and where the ramp comes ashore. */
function framedBy(drawn: Drawn): Vec3[] {
  const { dock, design } = drawn
  const top = design.dock.deckHeight + PERSON_HEIGHT
  const corners = dock.sections.flatMap((section) => {
    const stance = stanceOf(section)
    const half = section.width / 2
    return [
      toPlan(stance, 0, -half),
      toPlan(stance, 0, half),
      toPlan(stance, section.length, -half),
      toPlan(stance, section.length, half),
    ]
  })
  const hulls = boatsIn(drawn).flatMap((berth) => {
    const place = placeOf(berth)
    const { length: long, beam } = hullOf(berth.boat)
    return [-1, 1].flatMap((end) => [-1, 1].map((side) => place((end * long) / 2, (side * beam) / 2)))
  })
  return [...corners, ...hulls].flatMap(([x, y]): Vec3[] => [
    [x, y, 0],
    [x, y, top],
  ])
}

const isShown = (kind: PartKind): boolean =>
  kind !== 'auger' && (factsOf(kind).side !== null || factsOf(kind).plan !== null)

/**
 * Every body of the parts that are seen, over the water (`sign` 1) or through it, far ones first: section by section, and in each along its own
 * axes, for a ramp lies aslant.
 */
function bodiesIn(
  drawn: Drawn,
  seen: Perspective,
  level: number,
  sign: 1 | -1,
  more: readonly Shown[] = [],
): Shown[] {
  const { dock, catalog } = drawn
  const whole = dock.sections.length > PLANKS
  const parts = new Map<string, Placement[]>()
  for (const placement of dock.placements) {
    if (!isShown(placement.kind)) continue
    const known = parts.get(placement.section)
    if (known) known.push(placement)
    else parts.set(placement.section, [placement])
  }
  const groups = [...parts.values()].flatMap((placements) => {
    const frame = placements.find(({ kind }) => kind === 'frame')
    if (!frame) return []
    const own = (at: Vec3): Vec3 => inFrame(frame, at)
    const bodies = placements.flatMap((placement) => {
      const solid = solidOf(placement.kind, placement.code, catalog)
      const runs =
        whole && placement.kind === 'deck-panel' ? [{ start: 0, count: solid.indices.length }] : solid.bodies
      return runs.flatMap((run) => bodyOf(drawn, placement, solid, run, seen, level, sign, own))
    })
    const { positions } = solidOf('frame', frame.code, catalog)
    const [low, high] = boundsOf(
      Array.from({ length: positions.length / 3 }, (_, i) =>
        inDock(frame, [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!]),
      ),
    )
    return bodies.length === 0
      ? []
      : [
          {
            low,
            high,
            seen: joined(bodies.map((body) => body.seen)),
            bodies: drawOrder(bodies, own(seen.eye), crossing),
          },
        ]
  })
  return drawOrder(
    [...groups, ...more.map((one) => ({ ...one, bodies: [one] }))],
    seen.eye,
    crossing,
  ).flatMap(({ bodies }) => bodies)
}

/** A place of the dock in the own frame of a part. */
const inFrame = ({ at, turn: [x, y, z, w] }: Placement, place: Vec3): Vec3 =>
  rotate([-x, -y, -z, w], sub(place, at))

interface Seen {
  readonly seen: Box
}
const crossing = (a: Seen, b: Seen): boolean =>
  a.seen.x0 < b.seen.x1 && b.seen.x0 < a.seen.x1 && a.seen.y0 < b.seen.y1 && b.seen.y0 < a.seen.y1

const joined = (boxes: readonly Box[]): Box => ({
  x0: Math.min(...boxes.map(({ x0 }) => x0)),
  x1: Math.max(...boxes.map(({ x1 }) => x1)),
  y0: Math.min(...boxes.map(({ y0 }) => y0)),
  y1: Math.max(...boxes.map(({ y1 }) => y1)),
})

function bodyOf(
  drawn: Drawn,
  placement: Placement,
  solid: Solid,
  { start, count }: { readonly start: number; readonly count: number },
  seen: Perspective,
  level: number,
  sign: 1 | -1,
  own: (at: Vec3) => Vec3,
): Shown[] {
  const at = (vertex: number): Vec3 =>
    inDock(placement, [
      solid.positions[3 * vertex]!,
      solid.positions[3 * vertex + 1]!,
      solid.positions[3 * vertex + 2]!,
    ])
  const triangles: Vec3[][] = []
  for (let i = start; i < start + count; i += 3) {
    const whole = [0, 1, 2].map((k) => at(solid.indices[i + k]!))
    const part = whole.every(([, , z]) => sign * (z - level) >= 0) ? whole : cutAtHeight(whole, level, sign)
    if (part.length > 2) triangles.push(part)
  }
  if (triangles.length === 0) return []
  const all = triangles.flat()
  const group = solid.groups.find((one) => start >= one.start && start < one.start + one.count)
  const ink: Ink =
    group?.material === 'decking' && solid.color ? (solid.color as Ink) : INKS[group?.material ?? 'aluminum']
  const [low, high] = boundsOf(all.map(own))
  // Through water all is of one tone, the fainter the deeper.
  const through = (ink: Ink): Ink => {
    if (sign > 0) return ink
    const depth = Math.max(0, level - drawn.bed.bedAt(placement.at[0], placement.at[1]))
    return mixed(mixed(ink, '#31505e', 0.45), waterInk(depth), 0.62)
  }
  const sides = flatSides(triangles)
  const faces = (
    sides
      ? sides
          .filter(({ normal, points }) => dot(normal, sub(seen.eye, points[0]!)) > 0)
          .map(({ normal, points }) => ({ points: hull(points, seen), ink: through(lit(ink, normal)) }))
      : [{ points: hull(all, seen), ink: through(mixed(ink, '#ffffff', 0.12)) }]
  ).filter(({ points }) => points.length > 2)
  if (faces.length === 0) return []
  return [{ low, high, faces: faces.map((face) => ({ ...face, bare: sign < 0 })), seen: boxOf(faces) }]
}

/** Faces of a body that has few, each with its normal; null of one that is round. */
function flatSides(
  triangles: readonly (readonly Vec3[])[],
): readonly { readonly normal: Vec3; readonly points: readonly Vec3[] }[] | null {
  const sides: { normal: Vec3; points: Vec3[] }[] = []
  for (const points of triangles) {
    const across = cross(sub(points[1]!, points[0]!), sub(points[2]!, points[0]!))
    const size = length(across)
    if (size < 1e-12) continue
    const normal = scale(across, 1 / size)
    const known = sides.find((side) => dot(side.normal, normal) > 0.999)
    if (known) known.points.push(...points)
    else if (sides.length === FACES) return null
    else sides.push({ normal, points: [...points] })
  }
  return sides
}
const FACES = 6

const lit = (ink: Ink, normal: Vec3): Ink => {
  const light = dot(normal, SUN)
  return light > 0.5 ? mixed(ink, '#ffffff', (light - 0.5) * 0.5) : mixed(ink, LINE, (0.5 - light) * 0.42)
}

const hull = (points: readonly Vec3[], seen: Perspective): readonly Point[] =>
  seen.within(outline(points.map(seen.place)))

function boundsOf(points: readonly Vec3[]): [Vec3, Vec3] {
  const low = [...points[0]!] as [number, number, number]
  const high = [...points[0]!] as [number, number, number]
  for (const point of points)
    for (let i = 0; i < 3; i++) {
      low[i] = Math.min(low[i]!, point[i]!)
      high[i] = Math.max(high[i]!, point[i]!)
    }
  return [low, high]
}

function boxOf(faces: readonly Face[]): Box {
  const [xs, ys] = [0, 1].map((i) => faces.flatMap(({ points }) => points.map((p) => p[i]!)))
  return { x0: Math.min(...xs!), x1: Math.max(...xs!), y0: Math.min(...ys!), y1: Math.max(...ys!) }
}

const drawnBody = ({ faces }: Shown): Mark[] =>
  faces.map(({ points, ink, bare }) => ({
    kind: 'path',
    points,
    closed: true,
    stroke: bare ? null : { width: 0.09, ink: mixed(ink, LINE, 0.75) },
    fill: ink,
  }))

/** What the deck shades of the water, under it and a little aside. */
function shadows({ dock, design, bed }: Drawn, seen: Perspective, level: number): Mark[] {
  const fall = (design.dock.deckHeight - level) / SUN[2]
  return dock.sections.flatMap((section: Section): Mark[] => {
    const stance = stanceOf(section)
    const half = section.width / 2
    const corners = [
      [0, -half],
      [section.length, -half],
      [section.length, half],
      [0, half],
    ].map(([along, across]): Vec3 => {
      const [x, y] = toPlan(stance, along!, across!)
      return [x - SUN[0] * fall, y - SUN[1] * fall, level]
    })
    const [mx, my] = [
      corners.reduce((sum, [x]) => sum + x, 0) / 4,
      corners.reduce((sum, [, y]) => sum + y, 0) / 4,
    ]
    const depth = level - bed.bedAt(mx, my)
    if (depth <= 0 || section.role === 'ramp') return []
    const points = seen.polygon(corners)
    const ink = mixed(waterInk(depth), SHADE, 0.26)
    return points.length > 2
      ? [{ kind: 'path', points, closed: true, stroke: { width: 0.1, ink }, fill: ink }]
      : []
  })
}

/** Hulls as they lie afloat: their side, and what is seen within. */
function boats(drawn: Drawn, seen: Perspective, level: number): Shown[] {
  return boatsIn(drawn).map((berth) => {
    const place = placeOf(berth)
    const { stations } = hullOf(berth.boat)
    const sheer = (side: 1 | -1): Vec3[] =>
      stations.map(({ along, half, sheer: z }): Vec3 => [...place(along, side * half), level + z])
    const water = (side: 1 | -1): Vec3[] =>
      stations.map(({ along, half }): Vec3 => [...place(along, side * half * 0.86), level])
    const rim = [...sheer(1), ...sheer(-1).reverse()]
    const all = [...rim, ...water(1), ...water(-1)]
    const [low, high] = boundsOf(all)
    const faces: Face[] = [
      { points: hull(all, seen), ink: '#e9edf0' },
      { points: seen.within(rim.map(seen.place)), ink: '#c8d0d5' },
    ]
    return { low, high, faces, seen: boxOf(faces) }
  })
}

/** Somebody on the deck, by whom its size is told. */
function someone({ dock, design }: Drawn, { place, right }: Perspective): Mark[] {
  const on = dock.sections.findLast(({ role }) => role !== 'ramp')
  if (!on) return []
  const [x, y] = toPlan(stanceOf(on), on.length * 0.55, 0)
  const foot: Vec3 = [x, y, design.dock.deckHeight]
  return person([0, 0]).map(({ points }) => ({
    kind: 'path',
    points: points.map(([u, v]) => place([foot[0] + right[0] * u, foot[1] + right[1] * u, foot[2] + v])),
    closed: true,
    stroke: null,
    fill: '#5d6970',
  }))
}

const frameOf = ({ x0, x1, y0, y1 }: Box): Mark => ({
  kind: 'path',
  points: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  closed: true,
  stroke: { width: 0.18, ink: '#8d979e' },
  fill: null,
})
