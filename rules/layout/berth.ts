/** Where boats lie: one at the lake end, on its side; others at an edge that is named. All that asks where a boat lies asks here. */
import type { Design } from '../design/index.ts'
import type { Dock, Edge, Side } from '../dock.ts'
import { footprintAt, outlineAt, type Rectangle, type Size, stanceOf } from './footprint.ts'
import { boundsOf, type Outline, overlapOf } from './outline.ts'
import { type EdgeLine, inPlan, ownEdge, type PlacedSection } from './place.ts'

/** As much of a placed section as tells where a boat lies. */
export type Moored = Pick<PlacedSection, 'id' | 'role' | 'x' | 'y' | 'c' | 's'> & {
  readonly frame: Size
}

/** The sections of a Dock, as they are asked here. */
export const mooredOf = (sections: Dock['sections']): Moored[] =>
  sections.map((section) => ({
    ...stanceOf(section),
    id: section.id,
    role: section.role,
    frame: section,
  }))

/** Ends this near to each other lie equally far out, m. */
export const LEVEL = 1e-3
/** Between a dock's edge and a boat's side: what bumpers and slack lines leave, m. Judgment. */
export const GAP = 0.1
/** A boat is this much of its length wide where nobody has said (judgment, as for the wind on its bow). */
const BEAM = 0.35
/** What the boat of `dock.boat` is known by among those of `dock.boats`, whose ids hold no such sign. */
export const END_BOAT = '@end'

/** Of several equally far out the one that is most to its side. Null where nothing stands. */
export function berthSection<S extends Omit<Moored, 'id'>>(placed: readonly S[], side: Side): S | null {
  const sign = side === 'left' ? 1 : -1
  let berth: S | null = null
  for (const p of placed) {
    if (p.role === 'ramp') continue
    const out = berth ? lakewardEdge(p) - lakewardEdge(berth) : 1
    if (out > LEVEL || (out > -LEVEL && berth && sign * (middle(p) - middle(berth)) > LEVEL)) berth = p
  }
  return berth
}

/** x of a section's most lakeward place, m. */
export const lakewardEdge = (p: Omit<Moored, 'id'>): number => footprintAt(p, p.frame).x1
const middle = ({ y, s, frame }: Omit<Moored, 'id'>): number => y + (s * frame.length) / 2

type Given = Pick<
  NonNullable<Design['dock']['boats']>[number],
  'kind' | 'length' | 'height' | 'draught' | 'mass'
>

/** A boat where it lies. */
export interface Berth<S extends Moored = Moored> {
  /** Of `dock.boats`, or `END_BOAT`. */
  readonly id: string
  readonly boat: Given & { readonly beam: number }
  readonly section: S
  readonly edge: Edge
  /** That edge in plan: `n` points from the dock to the boat. */
  readonly line: EdgeLine
  /** The place on the edge that its middle lies at, in plan, m. */
  readonly x: number
  readonly y: number
}

/**
 * Every boat of a Design that has a place; one whose section is gone, or is the ramp, has none.
 *
 * @param placed sections as they lie
 */
export function berthsOf<S extends Moored>(
  { boat, boats = [] }: Pick<Design['dock'], 'boat' | 'boats'>,
  placed: readonly S[],
): Berth<S>[] {
  const end = boat && berthSection(placed, boat.side)
  const at = (id: string): S | undefined => placed.find((p) => p.id === id && p.role !== 'ramp')
  return [
    ...(end ? [berthAt(END_BOAT, boat, end, sideEdge(end, boat.side))] : []),
    ...boats.flatMap((one) => {
      const section = at(one.section)
      return section ? [berthAt(one.id, one, section, one.edge, one.along)] : []
    }),
  ]
}

/** Every boat of a kit where it lies. */
export const lying = ({
  design,
  layout,
}: {
  readonly design: { readonly dock: Pick<Design['dock'], 'boat' | 'boats'> }
  readonly layout: { readonly placed: readonly PlacedSection[] }
}): Berth<PlacedSection>[] => berthsOf(design.dock, layout.placed)

/** m; a part of its length where nobody has said. */
export const beamOf = ({
  length,
  beam,
}: {
  readonly length: number
  readonly beam?: number | undefined
}): number => beam ?? BEAM * length

/** @param along from the edge's start corner to the boat's middle, m; absent: the edge's middle */
function berthAt<S extends Moored>(
  id: string,
  given: Given & { readonly beam?: number | undefined },
  section: S,
  edge: Edge,
  along?: number,
): Berth<S> {
  const line = inPlan(section, ownEdge(section.frame, edge))
  const t = along ?? line.length / 2
  const { kind, length, height, draught, mass } = given
  const boat = { kind, length, beam: beamOf(given), height, draught, mass }
  return { id, boat, section, edge, line, x: line.x + line.dx * t, y: line.y + line.dy * t }
}

/** The edge of a section that looks to that side of the dock's line. */
export function sideEdge(p: Moored, side: Side): Edge {
  const sign = side === 'left' ? 1 : -1
  return EDGES.find((edge) => sign * inPlan(p, ownEdge(p.frame, edge)).ny > 0.5)!
}

/** From so far along its edge to so far, counted from the boat's middle, and from so far off that edge to so far, m: in plan. */
export const besideEdge = (
  { line: { dx, dy, nx, ny }, x, y }: Berth,
  [a, b]: readonly [from: number, to: number],
  [n, m]: readonly [from: number, to: number],
): Outline => {
  const at = (t: number, off: number) => [x + dx * t + nx * off, y + dy * t + ny * off] as const
  return [at(a, n), at(b, n), at(b, m), at(a, m)]
}

/** What a boat covers in plan, from a distance off its edge outward, m. */
const covered = (berth: Berth, from: number): Outline => {
  const half = berth.boat.length / 2
  return besideEdge(berth, [-half, half], [from, GAP + berth.boat.beam])
}

/** What its hull covers, lying off its edge; the rectangle around that. */
const hullOutline = (berth: Berth): Outline => covered(berth, GAP)
export const hullBox = (berth: Berth): Rectangle => boundsOf(hullOutline(berth))
/** The water that it needs: a little more, for it comes up to the edge as well. */
export const waterOutline = (berth: Berth): Outline => covered(berth, 0)

/** By how much two overlap, the lesser way, m; 0 where they do not. */
function overlap(a: Outline, b: Outline): number {
  const by = overlapOf(a, b)
  return by > TOUCH ? by : 0
}
/** Nearer is a touch, not an overlap, m. */
const TOUCH = 1e-6

/** The sections that a boat would lie on, with how far, m. */
export const sectionsUnder = <S extends Moored>(
  placed: readonly S[],
  berth: Berth,
): { section: S; by: number }[] =>
  placed
    .map((section) => ({ section, by: overlap(hullOutline(berth), outlineAt(section, section.frame)) }))
    .filter(({ by }) => by > 0)

/** By how much two boats lie on each other, m; 0 where they do not. */
export const between = (a: Berth, b: Berth): number => overlap(hullOutline(a), hullOutline(b))

const EDGES = ['left', 'right', 'end', 'start'] as const
/** Sections are asked from the lake end inward, so many: nobody moors along all of a long dock. */
const SECTIONS = 60

/** Where a boat could lie: every edge that no section and no other boat is in the way of, the farthest out first. */
export function freeBerths<S extends Moored>(
  placed: readonly S[],
  boat: Given & { readonly id: string; readonly beam?: number | undefined },
  others: readonly Berth[],
): Berth<S>[] {
  return placed
    .filter(({ role }) => role !== 'ramp')
    .sort((a, b) => Math.round((lakewardEdge(b) - lakewardEdge(a)) / LEVEL))
    .slice(0, SECTIONS)
    .flatMap((section) => EDGES.map((edge) => berthAt(boat.id, boat, section, edge)))
    .filter(
      (berth) =>
        sectionsUnder(placed, berth).length === 0 &&
        !others.some((other) => other.id !== boat.id && between(berth, other) > 0),
    )
}
