/** Where boats lie and whether they float, worked out anew from the Design, the published sections and the bed. */
import type { Design } from '../../../rules/design/schema.ts'
import type { Dock, Edge, Section } from '../../../rules/dock.ts'
import { makeBed } from '../../../rules/site/index.ts'
import type { Law } from './law.ts'
import { cornerAt, edgeLine } from './plan.ts'

type Place = readonly [x: number, y: number]

/** Corners of what is convex, one after the other. */
type Shape = readonly Place[]

const sectionShape = (s: Section): Shape =>
  ['start.left', 'end.left', 'end.right', 'start.right'].map((corner) => cornerAt(s, corner))

const xOf = (shape: Shape): number => Math.max(...shape.map(([x]) => x))

interface Lain {
  readonly draught: number
  readonly hull: Shape
  /** From the edge on. */
  readonly water: Shape
}

/** A boat along an edge of a section, its middle `along` from the edge's start corner. */
function lain(
  boat: { length: number; beam?: number | undefined; draught: number },
  s: Section,
  edge: Edge,
  along: number | undefined,
): Lain {
  const beam = boat.beam ?? 0.35 * boat.length
  const { from, direction, normal, size } = edgeLine(s, edge)
  const middle = along ?? size / 2
  const at = (t: number, out: number): Place => [
    from[0] + direction[0] * (middle + t) + normal[0] * out,
    from[1] + direction[1] * (middle + t) + normal[1] * out,
  ]
  const half = boat.length / 2
  const shape = (off: number): Shape => [
    at(-half, off),
    at(half, off),
    at(half, 0.1 + beam),
    at(-half, 0.1 + beam),
  ]
  return { draught: boat.draught, hull: shape(0.1), water: shape(0) }
}

/** The lake end on a side: the section that reaches farthest out, of equals the one whose middle is most to the side; its edge there. */
function atEnd(sections: readonly Section[], side: 'left' | 'right'): { s: Section; edge: Edge } | null {
  const sign = side === 'left' ? 1 : -1
  const standing = sections.filter(({ role }) => role !== 'ramp')
  if (standing.length === 0) return null
  const out = Math.max(...standing.map((s) => xOf(sectionShape(s))))
  const ends = standing.filter((s) => xOf(sectionShape(s)) > out - 1e-3)
  const middle = (s: Section): number => sign * (s.y + (Math.sin((s.heading * Math.PI) / 180) * s.length) / 2)
  const s = ends.reduce((best, one) => (middle(one) > middle(best) + 1e-3 ? one : best))
  // Of those that look that way a side goes before an end.
  const edge = (['left', 'right', 'end', 'start'] as const).find(
    (one) => sign * edgeLine(s, one).normal[1] > 0.5,
  )
  return { s, edge: edge! }
}

function lainAll({ boat, boats = [] }: Design['dock'], { sections }: Dock): (Lain | null)[] {
  const end = boat ? atEnd(sections, boat.side) : null
  return [
    ...(boat && end ? [lain(boat, end.s, end.edge, undefined)] : []),
    ...boats.map((one) => {
      const s = sections.find(({ id, role }) => id === one.section && role !== 'ramp')
      return s ? lain(one, s, one.edge, one.along) : null
    }),
  ]
}

/** By how far two would have to be moved apart, the least way square to any edge of either, m; less than 0 where they are apart. */
function by(a: Shape, b: Shape): number {
  const ways = [a, b].flatMap((shape) =>
    shape.map(([x, y], i): Place => {
      const [p, q] = shape[(i + 1) % shape.length]!
      const long = Math.hypot(p - x, q - y)
      return [(q - y) / long, (x - p) / long]
    }),
  )
  const span = (shape: Shape, [nx, ny]: Place): Place => {
    const all = shape.map(([x, y]) => x * nx + y * ny)
    return [Math.min(...all), Math.max(...all)]
  }
  return Math.min(
    ...ways.map((way) => {
      const [[a0, a1], [b0, b1]] = [span(a, way), span(b, way)]
      return Math.min(a1 - b0, b1 - a0)
    }),
  )
}

/** Rounded outputs: nearer to a limit than this either is right. */
const UNSURE = 1e-4

/** So many of a code are told as there are of what it tells of, those at the very limit aside. */
function told(dock: Dock, code: string, figures: readonly number[]): string[] {
  const count = dock.findings.filter((finding) => finding.code === code).length
  const sure = figures.filter((figure) => figure > UNSURE).length
  const most = figures.filter((figure) => figure > -UNSURE).length
  return count < sure || count > most ? [`${code}: told ${count} times, expected ${sure} to ${most}`] : []
}

/** Boats on sections, on each other, and without a place are told of, each once. */
export const boatsHaveRoom: Law = (dock, design) => {
  const all = lainAll(design.dock, dock)
  const lying = all.filter((one) => one !== null)
  const gone = all.length - lying.length
  const unknown = dock.findings.filter(
    ({ code, values }) => code === 'unknown-id' && values.what?.value === 'boat-section',
  ).length
  return [
    ...(gone === unknown ? [] : [`boats without a place: told ${unknown} times, expected ${gone}`]),
    ...told(
      dock,
      'boat-on-section',
      lying.map(({ hull }) => Math.max(-1, ...dock.sections.map((s) => by(hull, sectionShape(s))))),
    ),
    ...told(
      dock,
      'boats-overlap',
      lying.flatMap((a, i) => lying.slice(0, i).map((b) => by(a.hull, b.hull))),
    ),
  ]
}

/** Steps at which the bed is looked at under a boat, m. */
const STEP = 0.11

/** No boat that would touch is passed over; and one that is told of is short by what the bed says, as near as it is looked at here. */
export const boatsFloat: Law = (dock, design) => {
  const lying = lainAll(design.dock, dock).filter((one) => one !== null)
  if (lying.length === 0) return []
  const bed = makeBed(design.site)
  const low = Math.min(0, design.site.levels.low)
  const looked = lying.map(({ draught, water: [a, b, , d] }) => {
    const parts = (p: Place, q: Place): number[] => {
      const n = Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / STEP)
      return Array.from({ length: n + 1 }, (_, i) => i / n)
    }
    const high = Math.max(
      ...parts(a!, b!).flatMap((t) =>
        parts(a!, d!).map((u) =>
          bed.bedAt(
            a![0] + t * (b![0] - a![0]) + u * (d![0] - a![0]),
            a![1] + t * (b![1] - a![1]) + u * (d![1] - a![1]),
          ),
        ),
      ),
    )
    return high + draught - low
  })
  const short = dock.findings
    .filter(({ code }) => code === 'boat-aground')
    .map(({ values }) => values.short!.value as number)
  const missed = looked.filter((one) => one > UNSURE && !short.some((s) => s > one - UNSURE))
  const made = short.filter((s) => !looked.some((one) => Math.abs(one - s) < 0.1))
  return [
    ...(looked.filter((one) => one > UNSURE).length > short.length ? ['a boat aground is not told of'] : []),
    ...missed.map((one) => `a boat is ${one} m short of water, and told to be less`),
    ...made.map((one) => `no boat is ${one} m short of water`),
  ]
}
