/** Remedies of a dock that is over a limit. */
import type { Remedy } from '../dock.ts'
import { type Judged, number, remedy, replace } from './check.ts'

/** Sections fewer that are tried. */
const MOST_FEWER = 40

/** The longest straight or headed run that keeps within; null for a plan by hand. @param good asked of a dock that ends so much farther in, m */
export function shorter(
  { design: { dock }, shop, layout }: Judged,
  good: (back: number) => boolean,
): Remedy | null {
  const run = layout.placed.find(({ role }) => role !== 'ramp')
  if (dock.plan || dock.sections === undefined || !run) return null
  const least = (dock.ramp ? 2 : 1) + (dock.head?.shape === 'wide' ? dock.head.sections - 1 : 0)
  const pitch = run.frame.length + shop.rules.jointGap
  for (let n = 1; n <= MOST_FEWER && dock.sections - n >= least; n++)
    if (good(n * pitch))
      return remedy('fewer-sections', [replace('/dock/sections', dock.sections - n)], {
        sections: number(dock.sections - n),
      })
  return null
}

/** Without what lies across: only where the design says it in one word. */
export function straight({ design: { dock } }: Judged): Remedy | null {
  if (dock.plan || !dock.head || dock.head.shape === 'straight' || dock.head.sections === 0) return null
  return remedy('leave-out-head', [replace('/dock/head', { shape: 'straight', sections: 0 })])
}

/** Onto the other side. */
export function turned({ design: { dock } }: Judged): Remedy | null {
  const shape = dock.head?.shape
  if (dock.plan || (shape !== 'left' && shape !== 'right')) return null
  return remedy('turn-head', [replace('/dock/head/shape', shape === 'left' ? 'right' : 'left')])
}
