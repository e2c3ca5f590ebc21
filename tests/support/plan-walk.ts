/** Random walks over plans by what a hand can do on the page: sections added at free edges, slid, turned, moved, taken away, given other frames. */
import fc from 'fast-check'
import { type Catalog, shopOf } from '../../rules/index.ts'
import { freeEdges } from '../../rules/plan/free-edges.ts'
import { armOf, freshId, type Operation, toggleRamp } from '../../rules/plan/operations.ts'
import type { PlanItem } from '../../rules/plan/schema.ts'
import { EDGES, hangingOf, meant, roomOf, turned } from '../../rules/plan/spots.ts'
import { type Lying, lie } from '../../rules/plan/troubles.ts'

/** One choice of the hand: what, and dice for which. */
export interface Choice {
  readonly what: 'add' | 'slide' | 'turn' | 'move' | 'remove' | 'frame' | 'ramp'
  readonly dice: readonly [number, number, number]
}

/** Sections are added oftener than taken, so that docks grow. */
export const choices = (most: number): fc.Arbitrary<Choice[]> =>
  fc.array(
    fc.record({
      what: fc.constantFrom<Choice['what'][]>(
        ...(['add', 'add', 'add', 'add', 'slide', 'turn', 'move', 'remove', 'frame', 'ramp'] as const),
      ),
      dice: fc.tuple(fc.nat(), fc.nat(), fc.nat()),
    }),
    { minLength: most, maxLength: most },
  )

const of = <T>(list: readonly T[], die: number): T | undefined => list[die % list.length]

/** The operation that a choice comes to on this dock; null where there is nothing to do it to. */
export function operationOf(
  lying: Lying,
  { what, dice: [a, b, c] }: Choice,
  catalog: Catalog,
): Operation | null {
  const { plan, layout } = lying
  const shop = shopOf(catalog)
  const sections = layout.placed.filter(({ role }) => role === 'following')
  const one = of(sections, a)
  const frame = of(catalog.frames, b)!
  switch (what) {
    case 'add': {
      const all = freeEdges(lying, shop, { frame, by: b % 3 === 0 ? 'beside' : 'out', moving: null })
      const free = of([...all.values()].flat(), a)
      if (!free) return null
      const { on, edge } = free.hanging
      // By another edge of its own, and elsewhere along, as it comes to lie by turning and sliding.
      const mate = c % 4 === 0 ? of(EDGES, b)! : free.hanging.with
      const spots = roomOf(lying, shop).spots(on, edge, mate, frame)
      const spot = c % 3 === 0 ? of(spots, a) : meant(spots, edge)
      if (!spot) return null
      const item: PlanItem = {
        id: freshId(plan),
        on,
        edge,
        with: mate,
        along: spot.along,
        frame: frame.code,
      }
      return { kind: 'add', arm: [{ at: plan.length, item }] }
    }
    case 'slide': {
      const hanging = one && hangingOf(lying, one.id)
      if (!hanging) return null
      const room = roomOf(lying, shop, armOf(plan, one.id))
      // Half the time to a place that it snaps to, else to any, be it off the edge.
      const to =
        b % 2 === 0
          ? of(room.snaps(hanging.on, hanging.edge, hanging.with, one.frame), c)?.along
          : Math.round(((c % 1000) / 1000 - 0.4) * 6 * 1e4) / 1e4
      return to === undefined ? null : { kind: 'hang', id: one.id, ...hanging, along: to }
    }
    case 'turn':
      return one ? turned(lying, one.id) : null
    case 'move': {
      const host = of(layout.placed, b)
      if (!one || !host) return null
      const edge = of(EDGES, c)!
      const mate = one.plan.with
      const spots = roomOf(lying, shop, armOf(plan, one.id)).spots(host.id, edge, mate, one.frame)
      return {
        kind: 'hang',
        id: one.id,
        on: host.id,
        edge,
        with: mate,
        along: meant(spots, edge)?.along ?? 0,
      }
    }
    case 'remove':
      return one ? { kind: 'remove', id: one.id } : null
    case 'frame':
      return one ? { kind: 'frame', id: one.id, frame: c % 3 === 0 ? null : frame.code } : null
    case 'ramp':
      return toggleRamp(plan, freshId(plan, [], 'r'))
  }
}

export const beginning = (catalog: Catalog, frame: string): Lying =>
  lie([{ id: 's1', on: null, along: 0 }], frame, shopOf(catalog))
