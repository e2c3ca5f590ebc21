/** Which leg is meant: its number, the same on screen and paper, where it stands, and what is set on it. Derived from the Dock alone. */
import type { Dock, Leg } from './dock.ts'

/**
 * From 1, in the Dock's own order: the run from the shore outward, the left leg of an edge before the right one, then what hangs on it.
 * 0: no leg of this dock.
 */
export const legNumber = ({ legs }: Pick<Dock, 'legs'>, leg: string): number =>
  legs.findIndex(({ id }) => id === leg) + 1

/** Ids as they are told in a line with others: of a leg `9 (s5)`, of a pair `9/10`; what is neither stays as it is. */
export function numbered({ legs, pairs }: Pick<Dock, 'legs' | 'pairs'>): (id: string) => string {
  const numbers = new Map(legs.map(({ id }, i) => [id, i + 1]))
  const told = new Map([
    ...legs.map(({ id, section }, i) => [id, `${i + 1} (${section})`] as const),
    ...pairs.map(({ id, legs: [a, b] }) => [id, `${numbers.get(a)}/${numbers.get(b)}`] as const),
  ])
  return (id) => told.get(id) ?? id
}

export interface LegPlace {
  /** From the water's edge, lakeward positive, m. */
  readonly out: number
  /** As you look at the lake from the shore. */
  readonly side: 'left' | 'right'
  /** Off the dock's middle line, m; null at the edges of the run, where the side says it. */
  readonly aside: number | null
}

/** Unlike any other of the same dock. */
export function legPlace(
  { sections, workOrder }: Pick<Dock, 'sections' | 'workOrder'>,
  { x, y, section }: Leg,
): LegPlace {
  const first = sections.find(({ id }) => id === workOrder[0])
  const own = sections.find(({ id }) => id === section)
  // What turns away or lies alongside has legs that are neither left nor right of the run.
  const inRun = own !== undefined && first !== undefined && own.heading === 0 && own.y === first.y
  const off = y - (first?.y ?? 0)
  return { out: x, side: off < 0 ? 'right' : 'left', aside: inRun ? null : Math.abs(off) }
}

/** The hole that a brace is bolted through, on one of its two legs. */
export interface BraceHole {
  /** The pair that the brace is of. */
  readonly pair: string
  readonly code: string
  readonly end: 'low' | 'high'
  /** Over what the foot stands on, along the leg, m: to be marked before the leg is in the water. */
  readonly up: number
}

/** The lower ones first; none where nothing braces the leg. */
export const braceHoles = ({ pairs }: Pick<Dock, 'pairs'>, { id, bed }: Leg): readonly BraceHole[] =>
  pairs
    .flatMap(({ id: pair, legs, brace }): BraceHole[] => {
      if (!brace || !legs.includes(id)) return []
      const end = brace.low === id ? 'low' : 'high'
      return [{ pair, code: brace.code, end, up: (end === 'low' ? brace.lowZ : brace.highZ) - bed }]
    })
    .sort((a, b) => a.up - b.up)
