/** From the few numbers of a Design to the plan: the normal form of every shape. A straight dock is a chain. */
import type { Design, PlanItem } from '../design/index.ts'
import type { Shop } from '../shop.ts'

/** A section of the plan: who it hangs on, which edge of the host, which of its own, where along the host's edge (m). */
export interface Planned {
  readonly id: string
  readonly on: string | null
  readonly ramp: boolean
  readonly edge: NonNullable<PlanItem['edge']>
  readonly with: NonNullable<PlanItem['with']>
  readonly along: number
  readonly frame: string
}

const ROOT = { on: null, edge: 'end', with: 'start', along: 0 } as const

/**
 * The plan of a Design: its own, or the one that `sections`, `ramp` and `head` stand for.
 * The run is `s1`, `s2` … from shore to lake, the head `h1`, `h2` …, so that a longer run renames nothing.
 */
export function planOf(design: Design, shop: Shop): Planned[] {
  const { dock } = design
  if (dock.plan)
    return dock.plan.map((item) => ({
      id: item.id,
      on: item.on,
      ramp: item.role === 'ramp',
      edge: item.edge ?? 'end',
      with: item.with ?? 'start',
      along: item.along,
      frame: item.frame ?? dock.frame,
    }))

  const run = dock.sections ?? 1
  const plan: Planned[] = []
  for (let i = 1; i <= run; i++) {
    const place = i === 1 ? ROOT : { ...ROOT, on: `s${i - 1}` }
    plan.push({ id: `s${i}`, ...place, ramp: i === 1 && dock.ramp === true, frame: dock.frame })
  }
  const head = dock.head
  const frame = shop.frames.get(dock.frame)
  if (!head || head.sections === 0 || !frame) return plan

  let count = 0
  const add = (place: Pick<Planned, 'on' | 'edge' | 'with' | 'along'>): string => {
    const id = `h${++count}`
    plan.push({ id, ...place, ramp: false, frame: dock.frame })
    return id
  }
  /** A row hung end-on to a side of the last run section, flush with its end. */
  const row = (side: 'left' | 'right', n: number): void => {
    let on = `s${run}`
    for (let i = 0; i < n; i++)
      on =
        i === 0
          ? add({ on, edge: side, with: 'start', along: frame.length - frame.width })
          : add({ on, edge: 'end', with: 'start', along: 0 })
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
      for (let i = run - head.sections + 1; i <= run; i++)
        add({ on: `s${i}`, edge: 'left', with: 'right', along: 0 })
      break
  }
  return plan
}
