/** Free stretches of the sections' edges: what no joint and no extra has taken yet. */
import type { Edge } from '../dock.ts'
import {
  edgeLength,
  edgeOf,
  type Joints,
  type Layout,
  type PlacedJoint,
  type PlacedSection,
} from '../layout/index.ts'
import { atLeast, SLACK } from '../numbers.ts'

/** A stretch along an edge from its start corner, m. */
export type Interval = readonly [from: number, to: number]

export interface FreeEdges {
  /** Takes a stretch about `along`, if that is free. What hangs over the end of the edge need not be. */
  take(p: PlacedSection, edge: Edge, along: number, space: number): boolean
  /** What is free of an edge, in order. */
  stretches(p: PlacedSection, edge: Edge): readonly Interval[]
  /** Takes `space` as near as can be to one end of what is free, its middle in none of the `blocked` stretches (asked where there is `space` at all); that middle, or null. */
  takeEnd(
    p: PlacedSection,
    edge: Edge,
    space: number,
    far: boolean,
    blocked: () => readonly Interval[],
  ): number | null
}

export function freeEdges(layout: Layout, joints: Joints): FreeEdges {
  // Worked out when first asked: most edges of a long dock never are.
  const known = new Map<string, Interval[]>()
  let jointsOf: ((p: PlacedSection) => Iterable<PlacedJoint>) | null = null
  const freeOf = (p: PlacedSection, edge: Edge): Interval[] => {
    const free = known.get(`${p.id}.${edge}`)
    if (free) return free
    jointsOf ??= jointsBySection(layout, joints)
    let list: Interval[] = [[0, edgeLength(p, edge)]]
    for (const joint of jointsOf(p)) {
      if (joint.host === p && joint.edge === edge) list = cut(list, joint.from, joint.to)
      if (joint.guest === p && joint.guestEdge === edge) list = cut(list, ...onGuest(joint))
    }
    known.set(`${p.id}.${edge}`, list)
    return list
  }
  const cutOut = (p: PlacedSection, edge: Edge, from: number, to: number): void => {
    known.set(`${p.id}.${edge}`, cut(freeOf(p, edge), from, to))
  }
  return {
    stretches: freeOf,
    take(p, edge, along, space) {
      const from = Math.max(0, along - space / 2)
      const to = Math.min(edgeLength(p, edge), along + space / 2)
      if (!freeOf(p, edge).some((i) => i[0] <= from + SLACK && i[1] >= to - SLACK)) return false
      cutOut(p, edge, from, to)
      return true
    },
    takeEnd(p, edge, space, far, blocked) {
      const list = freeOf(p, edge)
      let none: readonly Interval[] | null = null
      for (const [from, to] of far ? [...list].reverse() : list) {
        if (!atLeast(to - from, space)) continue
        none ??= far ? blocked().map(mirrored) : blocked()
        const [first, last] = [from + space / 2, to - space / 2]
        const along = far ? -past(-last, none) : past(first, none)
        if (!atLeast(along, first) || !atLeast(last, along)) continue
        cutOut(p, edge, along - space / 2, along + space / 2)
        return along
      }
      return null
    },
  }
}

const mirrored = ([from, to]: Interval): Interval => [-to, -from]

/** The first place from `at` on that is within none of the stretches. */
function past(at: number, blocked: readonly Interval[]): number {
  for (;;) {
    const next = blocked.find(([from, to]) => at > from + SLACK && at < to - SLACK)
    if (!next) return at
    at = next[1]
  }
}

/** What a joint takes of its guest's edge, from the guest's own start corner. */
function onGuest({ host, edge, guest, guestEdge, from, to }: PlacedJoint): Interval {
  const on = edgeOf(host, edge)
  const own = edgeOf(guest, guestEdge)
  const at = (t: number): number => (on.x + on.dx * t - own.x) * own.dx + (on.y + on.dy * t - own.y) * own.dy
  const [a, b] = [at(from), at(to)]
  return [Math.min(a, b), Math.max(a, b)]
}

/** A section's joints, in the order of them all: kept as linked lists, for there is a joint a section. */
function jointsBySection({ placed }: Layout, { all }: Joints): (p: PlacedSection) => Iterable<PlacedJoint> {
  const first = new Int32Array((placed.at(-1)?.index ?? -1) + 1).fill(-1)
  // The next joint of a joint's host, then of its guest.
  const next = new Int32Array(2 * all.length)
  for (let i = all.length - 1; i >= 0; i--) {
    const { host, guest } = all[i]!
    next[2 * i] = first[host.index]!
    next[2 * i + 1] = first[guest.index]!
    first[host.index] = i
    first[guest.index] = i
  }
  return function* (p) {
    for (let i = first[p.index]!; i >= 0; i = next[all[i]!.host === p ? 2 * i : 2 * i + 1]!) yield all[i]!
  }
}

function cut(list: readonly Interval[], from: number, to: number): Interval[] {
  const rest: Interval[] = []
  for (const [p, q] of list) {
    if (q <= from + SLACK || p >= to - SLACK) rest.push([p, q])
    else {
      if (from - p > SLACK) rest.push([p, from])
      if (q - to > SLACK) rest.push([to, q])
    }
  }
  return rest
}
