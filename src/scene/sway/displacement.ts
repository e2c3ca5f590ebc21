/**
 * How each piece of the dock moves where the dock sways: from the corners, legs and braces that were solved for to any point of a part.
 * A section moves as its corners do, straight between them (a rail that bends under a section hung on its side is drawn straight); a leg bends as a beam between its foot, clamp and sleeve; what is fixed to
 * either goes with it. Plain numbers; true size. Frame of reference: the dock's, m.
 */
import type { Dock, Placement, Section, Vec3 } from '../../../rules/index.ts'
import type { LegPoint, Move, SwayingSection, SwayShape } from '../../../rules/structure/dock/sway-shape.ts'

/** Displacement of the point that stands at (x, y, z) when at rest. */
export type Mover = (x: number, y: number, z: number) => Vec3

const STILL: Mover = () => [0, 0, 0]

export function fieldOf(shape: SwayShape, dock: Dock): (placement: Placement) => Mover {
  const sections = new Map(dock.sections.map((section) => [section.id, section]))
  const bySection = new Map(
    shape.sections.flatMap((swaying) => {
      const section = sections.get(swaying.section)
      return section ? [[swaying.section, ofSection(swaying, section)] as const] : []
    }),
  )
  const legs = new Map(shape.legs.map((leg) => [leg.leg, leg]))
  const braces = new Map(shape.braceEnds.map((ends) => [ends.pair, ends]))
  const post = postsOf(dock)
  return (placement) => {
    const { kind, of, section, at } = placement
    const leg = legs.get(of)
    if (leg) return kind === 'foot-pad' || kind === 'pad-bolt' ? STILL : (_x, _y, z) => ofLeg(leg.points, z)
    const pair = dock.pairs.find(({ id }) => id === of)
    if (pair) {
      const [a, b] = pair.legs.map((id) => legs.get(id))
      if (!a || !b) return STILL
      if (kind !== 'brace') {
        const near = Math.hypot(a.x - at[0], a.y - at[1]) < Math.hypot(b.x - at[0], b.y - at[1]) ? a : b
        return (_x, _y, z) => ofLeg(near.points, z)
      }
      const ends = braces.get(of)
      if (!ends) return STILL
      const [low, high] = pair.brace?.low === a.leg ? [a, b] : [b, a]
      const [dx, dy] = [high.x - low.x, high.y - low.y]
      const far = dx * dx + dy * dy
      return (x, y) => {
        const t = ((x - low.x) * dx + (y - low.y) * dy) / far
        return mix(ends.low, ends.high, t)
      }
    }
    const own = bySection.get(section)
    if (!own) return STILL
    const driven = post(of)
    if (!driven) return own.move
    if (kind === 'post-clamp') return own.move
    return ofPost(driven, own)
  }
}

const mix = (a: Move, b: Move, t: number): Vec3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
]

interface OfSection {
  readonly move: Mover
  /** Elevation of the plane that moves as its corners do. */
  readonly z: number
}

function ofSection({ along, across, z, corners, places }: SwayingSection, section: Section): OfSection {
  const turn = (section.heading * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const [sl, sr, el, er] = corners
  const plane = places && planeOf(places)
  const between = (k: number, u: number, v: number): number =>
    plane
      ? plane(
          corners.map((corner) => corner[k]!),
          along[0] + (along[1] - along[0]) * u,
          across * (2 * v - 1),
        )
      : (sr[k]! * (1 - v) + sl[k]! * v) * (1 - u) + (er[k]! * (1 - v) + el[k]! * v) * u
  return {
    z: z[1],
    move: (px, py, pz) => {
      const [dx, dy] = [px - section.x, py - section.y]
      const u = (c * dx + s * dy - along[0]) / (along[1] - along[0])
      const v = (c * dy - s * dx + across) / (2 * across)
      // Points above that plane lean with it.
      const up = pz - (z[0] + (z[1] - z[0]) * u)
      return [
        between(0, u, v) + between(4, u, v) * up,
        between(1, u, v) - between(3, u, v) * up,
        between(2, u, v),
      ]
    },
  }
}

/** A plane through values at four corners that are no rectangle's, as near as one goes (least squares): a corner piece hardly twists. */
function planeOf(places: readonly (readonly [number, number])[]) {
  const n = places.length
  const [mx, my] = [0, 1].map((k) => places.reduce((sum, place) => sum + place[k]!, 0) / n) as [
    number,
    number,
  ]
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of places) {
    xx += (x - mx) ** 2
    xy += (x - mx) * (y - my)
    yy += (y - my) ** 2
  }
  const det = xx * yy - xy * xy
  return (values: readonly number[], x: number, y: number): number => {
    let [mean, xv, yv] = [0, 0, 0]
    places.forEach(([px, py], i) => {
      mean += values[i]! / n
      xv += (px - mx) * values[i]!
      yv += (py - my) * values[i]!
    })
    return mean + ((xv * yy - yv * xy) * (x - mx) + (yv * xx - xv * xy) * (y - my)) / det
  }
}

/** Cubic between two points, straight on above the sleeve; below the foot nothing moves. */
export function ofLeg(points: readonly LegPoint[], z: number): Vec3 {
  const top = points.at(-1)!
  const [x, y, up] = top.move
  if (z >= top.z) return [x + top.move[4] * (z - top.z), y - top.move[3] * (z - top.z), up]
  const after = points.findIndex((point) => point.z > z)
  if (after <= 0) return [0, 0, 0]
  const [a, b] = [points[after - 1]!, points[after]!]
  const length = b.z - a.z
  const t = (z - a.z) / length
  const bend = (from: number, fromTurn: number, to: number, toTurn: number): number =>
    (2 * t ** 3 - 3 * t ** 2 + 1) * from +
    (t ** 3 - 2 * t ** 2 + t) * length * fromTurn +
    (3 * t ** 2 - 2 * t ** 3) * to +
    (t ** 3 - t ** 2) * length * toTurn
  return [
    bend(a.move[0], a.move[4], b.move[0], b.move[4]),
    bend(a.move[1], -a.move[3], b.move[1], -b.move[3]),
    a.move[2] + (b.move[2] - a.move[2]) * t,
  ]
}

interface Post {
  readonly x: number
  readonly y: number
  /** Where the bed clamps it: halfway down what is driven in, as it is solved. */
  readonly tip: number
}

function postsOf({ placements }: Dock): (id: string) => Post | null {
  const found = new Map<string, Post>()
  for (const { kind, of, at } of placements)
    if (kind === 'anchor-post') {
      const bed = placements.find((p) => p.kind === 'auger' && p.of === of)?.at[2] ?? at[2]
      found.set(of, { x: at[0], y: at[1], tip: (bed + at[2]) / 2 })
    }
  return (id) => found.get(id) ?? null
}

/** Clamped below, pushed by the section at its clamp: a cantilever's own curve. */
function ofPost({ x, y, tip }: Post, { move, z: clamp }: OfSection): Mover {
  const [mx, my] = move(x, y, clamp)
  return (_x, _y, z) => {
    const t = (z - tip) / (clamp - tip)
    const share = t <= 0 ? 0 : t < 1 ? (3 * t * t - t ** 3) / 2 : 1 + 1.5 * (t - 1)
    return [mx * share, my * share, 0]
  }
}
