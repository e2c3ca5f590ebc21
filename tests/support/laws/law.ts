/**
 * What every law shares: its shape, tolerances, and look-ups in a catalog. Nothing here comes from the engine but types:
 * a law that borrowed a formula from the engine would agree with its mistakes.
 */
import type { Catalog } from '../../../rules/catalog/schema.ts'
import type { Design } from '../../../rules/design/schema.ts'
import type { Dock, Finding, Joint, Leg, Pair, PartKind, Section } from '../../../rules/dock.ts'

/** One conservation law: the sentences that say where the dock breaks it; empty where it holds. */
export type Law = (dock: Dock, design: Design, catalog: Catalog) => string[]

/** Outputs are rounded to 1e-6; two of them and their sum may be off by a little more. */
export const TOLERANCE = 3e-6
/** Slack of every comparison against a limit, as the architecture states it. */
export const LIMIT_SLACK = 1e-6

export const near = (a: number, b: number, tolerance = TOLERANCE): boolean => Math.abs(a - b) <= tolerance

export const gramsOf = (kg: number): number => Math.round(kg * 1000)

export const countOf = (dock: Dock, kind: PartKind): number =>
  dock.placements.filter((p) => p.kind === kind).length

/** Adds a sentence where the two counts differ. */
export function expectCount(out: string[], what: string, actual: number, expected: number): void {
  if (actual !== expected) out.push(`${what}: ${actual}, expected ${expected}`)
}

/** Adds a sentence where the two lengths differ. */
export function expectNear(
  out: string[],
  what: string,
  actual: number,
  expected: number,
  tolerance = TOLERANCE,
): void {
  if (!near(actual, expected, tolerance)) out.push(`${what}: ${actual}, expected ${expected}`)
}

/** Findings that name this id, of one severity or of any. */
export const findingsOn = (dock: Dock, id: string, severity?: Finding['severity']): Finding[] =>
  dock.findings.filter((f) => f.parts.includes(id) && (severity === undefined || f.severity === severity))

export const stopOn = (dock: Dock, id: string): boolean => findingsOn(dock, id, 'stop').length > 0

/** A stop names both sections of a joint. */
export const stopOnBoth = (dock: Dock, joint: Joint): boolean =>
  findingsOn(dock, joint.between[0], 'stop').some((f) => f.parts.includes(joint.between[1]))

export const sectionById = (dock: Dock): Map<string, Section> => new Map(dock.sections.map((s) => [s.id, s]))

export const frameOf = (catalog: Catalog, code: string) => catalog.frames.find((f) => f.code === code)

/** Heights of the dock's own levels, elevation in m: what hangs under the deck surface. */
export function elevations(deckHeight: number, rail: string, catalog: Catalog) {
  const stock = catalog.stock[rail]
  if (stock === undefined) throw new Error(`no stock ${rail}`)
  const railHeight =
    stock.shape === 'round-tube' || stock.shape === 'round-bar' ? stock.diameter : stock.height
  const top = deckHeight - catalog.decking.rise
  return {
    top,
    railHeight,
    /** The lowest of rail and sleeve. */
    underside: top - Math.max(railHeight, catalog.sleeve.length),
  }
}

/** Groups items by a key. */
export function groupBy<T>(items: readonly T[], key: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const item of items) {
    const group = groups.get(key(item))
    if (group) group.push(item)
    else groups.set(key(item), [item])
  }
  return groups
}

export const legsById = (dock: Dock): Map<string, Leg> => new Map(dock.legs.map((l) => [l.id, l]))

/** Both legs of one start or end edge. */
export function isEdgePair(pair: Pair): boolean {
  const [a, b] = pair.legs.map((id) => id.replace(/\.(left|right)$/, ''))
  return a === b && pair.legs[0] !== pair.legs[1]
}
