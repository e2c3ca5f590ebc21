/** The order of work of this dock on the day, and what is tightened in each line of it. */
import type { Shop } from '../catalog-index.ts'
import { steps } from '../papers/steps/set-up.ts'
import type { StepLine } from '../papers/steps/step.ts'
import { kindsWith, type PartKind } from '../part-kinds.ts'
import type { Project } from '../project.ts'
import type { DayStep, Tighten } from './types.ts'

const BOLTS: ReadonlySet<PartKind> = new Set<PartKind>(kindsWith('list', 'hardware'))

export const orderOfDay = (project: Project): DayStep[] =>
  steps(project).steps.map((step) => ({
    step,
    tighten: Object.fromEntries(
      step.lines.flatMap((line) => {
        const all = tightenOf(line, project.shop)
        return all.length > 0 ? [[line.id, all]] : []
      }),
    ),
    legs: step.lines.flatMap(({ work, about }) => (work === 'set-leg' ? about : [])),
  }))

/** Set bolts go in finger-tight on the shore, and are tightened when the leg is set. */
function tightenOf({ work, parts, about }: StepLine, shop: Shop): Tighten[] {
  if (work === 'set-bolts') return []
  if (work === 'set-leg') return bolts('set-bolt', about.length * shop.catalog.sleeve.bolts.length, shop)
  return parts.flatMap(({ kind, code, count }) => (BOLTS.has(kind) ? bolts(kind, count, shop, code) : []))
}

/** Both set bolts after a leg is set to its height. */
export const setBolts = (shop: Shop): Tighten[] => bolts('set-bolt', shop.catalog.sleeve.bolts.length, shop)

function bolts(kind: PartKind, count: number, { catalog }: Shop, code?: string): Tighten[] {
  const bolt =
    catalog.hardware.find((one) => one.kind === kind && one.code === code) ??
    catalog.hardware.find((one) => one.kind === kind)
  if (!bolt) return []
  return [
    {
      kind,
      code: bolt.code,
      wrench: bolt.wrench,
      count,
      turns: bolt.turns.map(({ at, from, to }) => ({ at, from, to })),
    },
  ]
}
