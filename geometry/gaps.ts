/** What is near a part that is picked: how far it is from the ground and from the next part that is not its own. */
import { type Clearance, clearances } from '../rules/clearance/clearance.ts'
import type { Dock, PartKind, Project, Vec3 } from '../rules/index.ts'

/** How near a part comes to another, or to the ground. */
export interface Gap {
  /** What it is measured to; null: the ground. */
  readonly to: { readonly kind: PartKind; readonly of: string } | null
  /** m. */
  readonly gap: number
  /** From a point of what is picked to one of the other. */
  readonly line: readonly [Vec3, Vec3]
}

/** Ground is told of up to this far below, other parts up to so far beside, m. */
const GROUND = 6
const BESIDE = 0.3
/** What stands close to these by design says nothing. */
const CARRIES: ReadonlySet<PartKind> = new Set(['frame', 'deck-panel'])

/**
 * At most one to the ground and one to another part, each the least; none to parts that it overlaps, which is a finding, and none
 * between a brace and its own legs. Of a pair its clearance to the ground is in the Dock (`brace.lowClearance`) and not told again.
 */
export function gapsOf(id: string, { dock, catalog, bed }: Project): Gap[] {
  const found = clearances(dock, catalog, bed, { of: id, within: BESIDE, ground: GROUND })
  const least = (wanted: (clearance: Clearance) => boolean): Gap[] => {
    const near = found.filter((c) => !c.clash && wanted(c)).reduce<Clearance | null>(nearer, null)
    if (!near) return []
    const [own, other] = near.a.of === id ? [near.a, near.b] : [near.b!, near.a]
    const line = own === near.a ? ([near.from, near.to] as const) : ([near.to, near.from] as const)
    return [{ to: other && { kind: other.kind, of: other.of }, gap: near.gap, line }]
  }
  const isPair = dock.pairs.some((pair) => pair.id === id)
  return [
    ...least(({ b }) => b === null && !isPair),
    ...least(
      ({ a, b }) =>
        b !== null &&
        a.of !== b.of &&
        !isClamped(dock, a.of, b.of) &&
        !CARRIES.has(a.kind) &&
        !CARRIES.has(b.kind),
    ),
  ]
}

/** A brace and a leg that it is clamped to: its end is near the leg by design. */
const isClamped = ({ pairs }: Dock, a: string, b: string): boolean =>
  pairs.some(({ id, legs }) => (id === a && legs.includes(b)) || (id === b && legs.includes(a)))

const nearer = (a: Clearance | null, b: Clearance): Clearance => (a && a.gap <= b.gap ? a : b)
