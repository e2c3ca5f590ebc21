/** A plan: who hangs on whom, at which edges, where along. Part of a Design, and of the templates of a Catalog. */
import * as v from 'valibot'
import { quantize } from '../numbers.ts'
import { type Issue, issue, show } from '../validation.ts'

/** Most sections of a dock: no input hangs a page. */
export const MOST_SECTIONS = 5000

/** Ids of a plan: short, and free of the `.` and `~` that leg and joint ids are made with. */
export const SectionId = v.pipe(
  v.string(),
  v.regex(/^[A-Za-z0-9_-]{1,40}$/, 'letters, digits, _ or -, at most 40'),
)

export const EdgeSchema = v.picklist(['start', 'end', 'left', 'right'])

const PlanItemSchema = v.looseObject({
  id: SectionId,
  on: v.nullable(SectionId),
  role: v.optional(v.literal('ramp')),
  edge: v.optional(v.pipe(EdgeSchema, v.description("Host's edge, in the host's own frame"))),
  with: v.optional(v.pipe(EdgeSchema, v.description("The new section's mating edge"))),
  along: v.optional(
    v.pipe(
      v.number(),
      v.minValue(-1000),
      v.maxValue(1000),
      v.description("From the host edge's start corner (start and end: left corner) to the mating edge, m"),
      v.transform(quantize),
    ),
    0,
  ),
  frame: v.optional(
    v.pipe(
      v.string(),
      v.minLength(1),
      v.maxLength(60),
      v.description('Frame, where another than the dock’s'),
    ),
  ),
})

export const PlanSchema = v.pipe(v.array(PlanItemSchema), v.minLength(1), v.maxLength(MOST_SECTIONS))

export type PlanItem = v.InferOutput<typeof PlanItemSchema>

/** What the schema cannot tell of one section alone. @param path of the plan */
export function planIssues(plan: readonly PlanItem[], path: string): Issue[] {
  const issues: Issue[] = []
  const at = (i: number, key: string): string => `${path}[${i}].${key}`
  const byId = new Map<string, number>()
  plan.forEach((item, i) => {
    if (byId.has(item.id))
      issues.push(issue(at(i, 'id'), `${show(item.id)} a second time`, 'ids that differ'))
    else byId.set(item.id, i)
  })
  const roots = plan.filter((item) => item.on === null)
  if (roots.length !== 1)
    issues.push(issue(path, `${roots.length} sections with "on": null`, 'one, where the dock begins'))
  const ramp = plan.find((item) => item.role === 'ramp')
  plan.forEach((item, i) => {
    if (item.role === 'ramp' && item.on !== null)
      issues.push(issue(at(i, 'on'), show(item.on), 'null: a ramp hangs on nothing'))
    if (item.on === null) return
    if (item.edge === undefined) issues.push(issue(at(i, 'edge'), 'missing', 'the edge of the host'))
    if (item.with === undefined) issues.push(issue(at(i, 'with'), 'missing', 'the edge of this section'))
    if (ramp && item.on === ramp.id) {
      if (item.edge !== 'end')
        issues.push(issue(at(i, 'edge'), show(item.edge), '"end": the hinge is at the end of a ramp'))
      if (item.with !== 'start')
        issues.push(issue(at(i, 'with'), show(item.with), '"start": the hinge bar is at a start edge'))
    }
  })
  if (ramp) {
    const hung = plan.filter((item) => item.on === ramp.id).length
    if (hung !== 1) issues.push(issue(path, `${hung} sections on the ramp`, 'one, the standing section'))
  }
  return issues
}
