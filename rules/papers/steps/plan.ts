/** Who is where in a dock, looked up once: what the steps ask again and again. */
import type { Dock, Joint, Pair, Section } from '../../dock.ts'
import { groupBy } from '../order.ts'

/** Line ids. A section's dry step is `dry.<id>`, that in the water `in.<id>`. */
export const lineId = (step: string, work: string, of?: string): string =>
  of === undefined ? `${step}/${work}` : `${step}/${work}/${of}`

/** What a dock is made of, by id. */
interface Ids {
  readonly joints: ReadonlyMap<string, Joint>
  readonly pairs: ReadonlyMap<string, Pair>
  readonly sections: ReadonlyMap<string, Section>
  /** Place in the order of work. */
  readonly order: ReadonlyMap<string, number>
  /** Section of a leg. */
  readonly sectionOf: ReadonlyMap<string, string>
}

export interface Plan extends Ids {
  /** Braced pairs by the section that brings the brace, and by the step in which its high end is fixed. */
  readonly lows: ReadonlyMap<string, readonly Pair[]>
  readonly highs: ReadonlyMap<string, readonly Pair[]>
  /** Ties by the step in which they are fixed. */
  readonly ties: ReadonlyMap<string, readonly Joint[]>
  /** Hook joints by the section that hangs. */
  readonly hung: ReadonlyMap<string, Joint>
  readonly hinge: Joint | null
}

export function workPlanOf(dock: Dock): Plan {
  const ids: Ids = {
    joints: new Map(dock.joints.map((joint) => [joint.id, joint])),
    pairs: new Map(dock.pairs.map((pair) => [pair.id, pair])),
    sections: new Map(dock.sections.map((section) => [section.id, section])),
    order: new Map(dock.workOrder.map((id, i) => [id, i])),
    sectionOf: new Map(dock.legs.map((leg) => [leg.id, leg.section])),
  }
  const braced = dock.pairs.filter(({ brace }) => brace)
  return {
    ...ids,
    lows: groupBy(braced, (pair) => lowSection(pair.id, ids)),
    highs: groupBy(braced, (pair) => highStep(pair, ids)),
    ties: groupBy(
      dock.joints.filter(({ kind }) => kind === 'tie'),
      (joint) => tieStep(joint, ids),
    ),
    hung: new Map(
      dock.joints.flatMap((joint) => (joint.kind === 'hook' ? [[guestOf(joint, ids), joint]] : [])),
    ),
    hinge: dock.joints.find(({ kind }) => kind === 'hinge') ?? null,
  }
}

/** Of the two sections of a hook joint the one that hangs on the other. */
export const guestOf = ({ between: [a, b] }: Joint, { sections }: Ids): string =>
  sections.get(a)?.on === b ? a : b

/** Of several sections the one that comes last in the order of work. */
const lastOf = (ids: readonly string[], { order }: Ids): string =>
  ids.reduce((last, id) => ((order.get(id) ?? 0) > (order.get(last) ?? 0) ? id : last))

/** The section in whose step the high end of a pair's brace is fixed: the later one of its legs. Of the standing section: when it is level. */
export function highStep(pair: Pair, plan: Ids): string {
  const last = lastOf(
    pair.legs.map((leg) => plan.sectionOf.get(leg) ?? ''),
    plan,
  )
  return plan.sections.get(last)?.role === 'standing' ? 'level' : `in.${last}`
}

/** The step in which a section's panels are laid. */
export const panelStep = ({ id, role }: Section): string => (role === 'following' ? `in.${id}` : 'level')

/** The step in which a tie is fixed: when the later of its two sections stands. */
export const tieStep = (joint: Joint, plan: Ids): string => {
  const last = lastOf(joint.between, plan)
  const section = plan.sections.get(last)
  return section ? panelStep(section) : `in.${last}`
}

/** The section that a brace is brought on: that of the leg with its low end. */
export const lowSection = (pair: string, plan: Ids): string => {
  const brace = plan.pairs.get(pair)?.brace
  return (brace && plan.sectionOf.get(brace.low)) ?? ''
}
