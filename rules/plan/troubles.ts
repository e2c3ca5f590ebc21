/** What is wrong with how a plan lies: what the engine would stop at, and hooks that would have to pull. Asked at every move of a hand. */
import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import { type Joints, join, type Layout, leastOverlap, place, plannedOf } from '../layout/index.ts'
import { type Operation, perform, type Refusal } from './operations.ts'
import { pulling } from './rest.ts'
import type { PlanItem } from './schema.ts'

export interface Trouble {
  readonly kind: 'overlap' | 'joint-short' | 'hinge-short' | 'hooks-pull' | 'unreachable' | 'unknown-frame'
  /** Ids of the sections that it is about. */
  readonly sections: readonly string[]
  /** Of edges that share too little: how much they share, and the least that does, m. */
  readonly shared?: number
  readonly least?: number
}

/** A plan on the water, wherever its start is: what lies where, and what is wrong with that. */
export interface Lying {
  readonly plan: readonly PlanItem[]
  readonly layout: Layout
  readonly joints: Joints
  readonly troubles: readonly Trouble[]
}

/** @param frame of the sections that name none */
export function lie(plan: readonly PlanItem[], frame: string, shop: Shop): Lying {
  const layout = place(plannedOf(plan, frame), shop, 0)
  const joints = join(layout, shop)
  return { plan, layout, joints, troubles: troublesOf(layout, joints, shop) }
}

function troublesOf(layout: Layout, joints: Joints, shop: Shop): Trouble[] {
  const { hinge } = shop.catalog
  const bar = joints.all.find(({ kind }) => kind === 'hinge')
  const shared = bar ? Math.max(0, bar.to - bar.from) : Number.POSITIVE_INFINITY
  return [
    ...layout.unknownFrames.map(({ id }): Trouble => ({ kind: 'unknown-frame', sections: [id] })),
    ...layout.unreachable.map((id): Trouble => ({ kind: 'unreachable', sections: [id] })),
    ...joints.overlapping.map((both): Trouble => ({ kind: 'overlap', sections: both })),
    ...joints.short.map(
      ({ host, guest, from, to }): Trouble => ({
        kind: 'joint-short',
        sections: [host.id, guest.id],
        shared: Math.max(0, to - from),
        least: leastOverlap(shop),
      }),
    ),
    ...(bar && shared < hinge.bar.length - 1e-6
      ? [
          {
            kind: 'hinge-short' as const,
            sections: [bar.host.id, bar.guest.id],
            shared,
            least: hinge.bar.length,
          },
        ]
      : []),
    ...pulling(layout, joints, shop).map(({ id }): Trouble => ({ kind: 'hooks-pull', sections: [id] })),
  ]
}

const keyOf = ({ kind, sections }: Trouble): string => `${kind} ${[...sections].sort().join(' ')}`

/** What came of an operation: a plan with what is new of trouble in it, or why there is none. */
export type Tried =
  | {
      readonly ok: true
      readonly operation: Operation
      readonly inverse: Operation
      readonly after: Lying
      /** Trouble that was not there before. */
      readonly brought: readonly Trouble[]
      readonly touched: readonly string[]
    }
  | { readonly ok: false; readonly operation: Operation; readonly why: Refusal; readonly section: string }

/** Does an operation on a plan that lies, and tells what trouble it brings: it stays as it was asked for. */
export function attempt(before: Lying, operation: Operation, frame: string, shop: Shop): Tried {
  const done = perform(before.plan, operation)
  if (!done.ok) return { ok: false, operation, why: done.why, section: done.section }
  const after = lie(done.plan, frame, shop)
  const known = new Set(before.troubles.map(keyOf))
  return {
    ok: true,
    operation,
    inverse: done.inverse,
    after,
    brought: after.troubles.filter((trouble) => !known.has(keyOf(trouble))),
    touched: done.touched,
  }
}

/** Ids that a design speaks of beside its plan: sections that have an extra, legs and pairs with a wish of their own. */
export function spokenOf({ dock }: Design): readonly string[] {
  const sectionsIn = (id: string): string[] => id.split('~').map((leg) => leg.split('.')[0]!)
  return [
    ...(dock.placed ?? []).map(({ section }) => section),
    ...Object.keys(dock.overrides ?? {}).flatMap(sectionsIn),
    ...(dock.bracing?.none ?? []).flatMap(sectionsIn),
  ]
}
