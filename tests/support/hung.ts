/** Sections of a plan as they are mostly hung: by the start on the end of another, flush. */
import type { PlanItem } from '../../rules/plan/schema.ts'

export const hung = (id: string, on: string, more: Partial<PlanItem> = {}): PlanItem => ({
  id,
  on,
  edge: 'end',
  with: 'start',
  along: 0,
  ...more,
})
