/** From the few numbers of a Design to the plan: the normal form of every shape. A straight dock is a chain. */

import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import type { Edge } from '../dock.ts'
import type { PlanItem } from '../plan/schema.ts'

/** A section of the plan: who it hangs on, which edge of the host, which of its own, where along the host's edge (m). */
export interface Planned {
  readonly id: string
  readonly on: string | null
  /** Place in the plan of the section that it hangs on; -1 where there is none. */
  readonly host: number
  readonly ramp: boolean
  readonly edge: Edge
  readonly with: Edge
  readonly along: number
  readonly frame: string
}

/** One shape of object for every section: a long dock has thousands, and a second shape would slow every one that reads them. */
const planned = (
  id: string,
  on: string | null,
  host: number,
  ramp: boolean,
  edge: Planned['edge'],
  mate: Planned['with'],
  along: number,
  frame: string,
): Planned => ({ id, on, host, ramp, edge, with: mate, along, frame })

/**
 * The plan of a Design: its own, or the one that `sections`, `ramp` and `head` stand for.
 * The run is `s1`, `s2` … from shore to lake, the head `h1`, `h2` …, so that a longer run renames nothing.
 */
export function planOf(design: Design, shop: Shop): Planned[] {
  const { dock } = design
  if (dock.plan) return plannedOf(dock.plan, dock.frame)

  const run = dock.sections ?? 1
  const plan: Planned[] = []
  let on: string | null = null
  for (let i = 0; i < run; i++) {
    const id = `s${i + 1}`
    plan.push(planned(id, on, i - 1, i === 0 && dock.ramp === true, 'end', 'start', 0, dock.frame))
    on = id
  }
  const head = dock.head
  const frame = shop.frames.get(dock.frame)
  if (!head || head.sections === 0 || !frame) return plan

  const add = (host: number, edge: Planned['edge'], mate: Planned['with'], along: number): void => {
    const id = `h${plan.length - run + 1}`
    plan.push(planned(id, plan[host]!.id, host, false, edge, mate, along, dock.frame))
  }
  /** A row hung end-on to a side of the last run section, flush with its end. */
  const row = (side: 'left' | 'right', n: number): void => {
    for (let i = 0; i < n; i++)
      if (i === 0) add(run - 1, side, 'start', frame.length - frame.width)
      else add(plan.length - 1, 'end', 'start', 0)
  }
  switch (head.shape) {
    case 'straight':
      break
    case 'left':
    case 'right':
      row(head.shape, head.sections)
      break
    case 'tee':
      row('left', head.sections / 2)
      row('right', head.sections / 2)
      break
    case 'wide':
      for (let host = run - head.sections; host < run; host++) add(host, 'left', 'right', 0)
      break
  }
  return plan
}

/** @param frame of the sections that name none */
export function plannedOf(items: readonly PlanItem[], frame: string): Planned[] {
  const places = new Map(items.map((item, i) => [item.id, i]))
  return items.map((item) =>
    planned(
      item.id,
      item.on,
      item.on === null ? -1 : (places.get(item.on) ?? -1),
      item.role === 'ramp',
      item.edge ?? 'end',
      item.with ?? 'start',
      item.along,
      item.frame ?? frame,
    ),
  )
}
