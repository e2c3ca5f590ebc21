/**
 * What can be done to a plan, as plain data, and each with what takes it back. They keep a plan a plan: ids differ, one section stands
 * first, nothing hangs on itself or on a ramp. Whether it lies well on the water is for `troubles.ts` to say: nothing is put right here.
 */
import type { Edge } from '../dock.ts'
import { MOST_SECTIONS, type PlanItem } from './schema.ts'

/** A section and its place in the list. */
export interface Listed {
  readonly at: number
  readonly item: PlanItem
}

/** Where a section hangs. */
export interface Hanging {
  readonly on: string
  readonly edge: Edge
  readonly with: Edge
  /** As in the plan, m. */
  readonly along: number
}

export type Operation =
  /** One section, or an arm of them: the first hangs on one that is there, the others on each other. In the order of the list. */
  | { readonly kind: 'add'; readonly arm: readonly Listed[] }
  /** With all that hangs on it. */
  | { readonly kind: 'remove'; readonly id: string }
  /** Slides, turns, or takes the whole arm to another edge. */
  | ({ readonly kind: 'hang'; readonly id: string } & Hanging)
  /** Null: the dock's own. */
  | { readonly kind: 'frame'; readonly id: string; readonly frame: string | null }
  /** Puts a ramp before the section that stands first, or takes it away; `standing` is that section as it is then. */
  | { readonly kind: 'ramp'; readonly ramp: Listed | null; readonly standing: PlanItem }

export type Refusal =
  | 'no-such-section'
  | 'ramp-hosts-nothing'
  | 'begins-here'
  | 'hangs-on-itself'
  | 'id-taken'
  | 'too-many'

export interface Done {
  readonly ok: true
  readonly plan: readonly PlanItem[]
  /** Gives the plan back as it was. */
  readonly inverse: Operation
  /** Sections that came, went or moved, with what hangs on them. */
  readonly touched: readonly string[]
}

export interface Refused {
  readonly ok: false
  readonly why: Refusal
  readonly section: string
}

const refuse = (why: Refusal, section: string): Refused => ({ ok: false, why, section })

/** A section and all that hangs on it, in the plan's order. */
export function armOf(plan: readonly PlanItem[], id: string): readonly string[] {
  const hung = new Map<string, string[]>()
  for (const item of plan) if (item.on !== null) hung.set(item.on, [...(hung.get(item.on) ?? []), item.id])
  const arm = new Set([id])
  for (const host of arm) for (const guest of hung.get(host) ?? []) arm.add(guest)
  return plan.flatMap((item) => (arm.has(item.id) ? [item.id] : []))
}

export function perform(plan: readonly PlanItem[], operation: Operation): Done | Refused {
  switch (operation.kind) {
    case 'add':
      return add(plan, operation.arm)
    case 'remove':
      return remove(plan, operation.id)
    case 'hang':
      return hang(plan, operation.id, operation)
    case 'frame':
      return frame(plan, operation.id, operation.frame)
    case 'ramp':
      return ramp(plan, operation.ramp, operation.standing)
  }
}

const rampOf = (plan: readonly PlanItem[]): PlanItem | undefined => plan.find(({ role }) => role === 'ramp')

/** The ramp and the section that stands first: all others hang on that one. */
const begins = (plan: readonly PlanItem[], item: PlanItem): boolean =>
  item.on === null || item.on === rampOf(plan)?.id

/** Why nothing can be hung there; null where something can. */
function cannotHost(plan: readonly PlanItem[], host: string | null): Refused | null {
  const item = plan.find(({ id }) => id === host)
  if (!item) return refuse('no-such-section', host ?? '')
  return item.role === 'ramp' ? refuse('ramp-hosts-nothing', item.id) : null
}

function add(plan: readonly PlanItem[], arm: readonly Listed[]): Done | Refused {
  const root = arm.find(({ item }) => !arm.some((other) => other.item.id === item.on))
  if (!root) return refuse('no-such-section', '')
  const cannot = cannotHost(plan, root.item.on)
  if (cannot) return cannot
  const taken = arm.find(({ item }) => plan.some(({ id }) => id === item.id))
  if (taken) return refuse('id-taken', taken.item.id)
  if (plan.length + arm.length > MOST_SECTIONS) return refuse('too-many', root.item.id)
  const next = [...plan]
  for (const { at, item } of arm) next.splice(at, 0, item)
  return {
    ok: true,
    plan: next,
    inverse: { kind: 'remove', id: root.item.id },
    touched: arm.map(({ item }) => item.id),
  }
}

function remove(plan: readonly PlanItem[], id: string): Done | Refused {
  const item = plan.find((one) => one.id === id)
  if (!item) return refuse('no-such-section', id)
  if (begins(plan, item)) return refuse('begins-here', id)
  const touched = armOf(plan, id)
  const going = new Set(touched)
  const arm = plan.flatMap((one, at) => (going.has(one.id) ? [{ at, item: one }] : []))
  return {
    ok: true,
    plan: plan.filter((one) => !going.has(one.id)),
    inverse: { kind: 'add', arm },
    touched,
  }
}

function hang(plan: readonly PlanItem[], id: string, to: Hanging): Done | Refused {
  const item = plan.find((one) => one.id === id)
  if (!item) return refuse('no-such-section', id)
  if (begins(plan, item)) return refuse('begins-here', id)
  const cannot = cannotHost(plan, to.on)
  if (cannot) return cannot
  const touched = armOf(plan, id)
  if (touched.includes(to.on)) return refuse('hangs-on-itself', id)
  const { on, edge = 'end', with: mate = 'start', along } = item
  return {
    ok: true,
    plan: plan.map((one) =>
      one === item ? { ...one, on: to.on, edge: to.edge, with: to.with, along: to.along } : one,
    ),
    inverse: { kind: 'hang', id, on: on!, edge, with: mate, along },
    touched,
  }
}

function frame(plan: readonly PlanItem[], id: string, code: string | null): Done | Refused {
  const item = plan.find((one) => one.id === id)
  if (!item) return refuse('no-such-section', id)
  const { frame: before, ...rest } = item
  const after: PlanItem = code === null ? rest : { ...rest, frame: code }
  return {
    ok: true,
    plan: plan.map((one) => (one === item ? after : one)),
    inverse: { kind: 'frame', id, frame: before ?? null },
    touched: armOf(plan, id),
  }
}

function ramp(plan: readonly PlanItem[], wanted: Listed | null, standing: PlanItem): Done | Refused {
  const before = rampOf(plan)
  const stood = plan.find((one) => begins(plan, one) && one !== before)
  if (!stood || stood.id !== standing.id) return refuse('no-such-section', standing.id)
  const at = before ? plan.indexOf(before) : -1
  const inverse: Operation = { kind: 'ramp', ramp: before ? { at, item: before } : null, standing: stood }
  const next = plan.flatMap((one) => (one === before ? [] : [one === stood ? standing : one]))
  if (wanted) {
    if (next.some(({ id }) => id === wanted.item.id)) return refuse('id-taken', wanted.item.id)
    if (next.length >= MOST_SECTIONS) return refuse('too-many', wanted.item.id)
    next.splice(wanted.at, 0, wanted.item)
  }
  return { ok: true, plan: next, inverse, touched: [standing.id, ...(wanted ? [wanted.item.id] : [])] }
}

/** The operation that puts a ramp there, or takes it away. Null where nothing stands first. */
export function toggleRamp(plan: readonly PlanItem[], id: string): Operation | null {
  const now = rampOf(plan)
  const stood = plan.find((one) => begins(plan, one) && one !== now)
  if (!stood) return null
  if (now) {
    const { edge: _, with: _w, ...rest } = stood
    return { kind: 'ramp', ramp: null, standing: { ...rest, on: null, along: 0 } }
  }
  const item: PlanItem = { id, on: null, role: 'ramp', along: 0 }
  return {
    kind: 'ramp',
    ramp: { at: 0, item },
    standing: { ...stood, on: id, edge: 'end', with: 'start', along: 0 },
  }
}

/** An id that nothing goes by, not even what is said of sections that have gone: it would be said of the new one. */
export function freshId(plan: readonly PlanItem[], alsoTaken: Iterable<string> = [], letter = 'h'): string {
  const taken = new Set([...plan.map(({ id }) => id), ...alsoTaken])
  let n = 1
  while (taken.has(`${letter}${n}`)) n++
  return `${letter}${n}`
}
