/** The packing list as data: parts by bag, each with its wrench; where each leg and brace goes; what is to be added to what is there. */

import type { Catalog } from '../catalog/index.ts'
import type { Dock, Existing, Fingerprint, PartRow, Totals } from '../dock.ts'
import { newParts } from '../existing/new-parts.ts'
import { ownedPlaces } from '../existing/owned-places.ts'
import { type Issue, issue, plainOf, show } from '../validation.ts'

export interface PackedRow extends PartRow {
  /** Wrench and turns past finger-tight, of a bolt. */
  readonly wrench: string | null
  readonly turns: readonly { readonly at: string; readonly from: number; readonly to: number }[]
}

export interface PackedGroup {
  /** Bag, or null for what goes loose. */
  readonly bag: string | null
  readonly rows: readonly PackedRow[]
}

export interface LegLine {
  readonly leg: string
  readonly code: string | null
  readonly stock: number | null
  readonly setHeight: number
  readonly setHeightFrame: number
  /** It is one of those that are there already. */
  readonly owned?: true
}

export interface BraceLine {
  readonly pair: string
  readonly code: string
  readonly low: string
}

/** What is packed, bag by bag, as a file for programs: masses in kg, prices in minor units, lengths in m. */
export interface PackingList {
  readonly format: 'leadline/list'
  readonly version: 1
  readonly name: string
  readonly catalog: string
  readonly fingerprint: Fingerprint
  readonly groups: readonly PackedGroup[]
  readonly legs: readonly LegLine[]
  readonly braces: readonly BraceLine[]
  /** Of all parts, those that are there too. */
  readonly totals: Totals
  /** What is used of what is there already, and left over of it; what is new is what `groups` hold. Absent where the Design tells of nothing. */
  readonly existing?: Omit<Existing, 'new'>
}

/** The packing list of a dock, less what is there already. */
export function packingList(dock: Dock, catalog: Catalog): PackingList {
  const bolts = new Map(catalog.hardware.map((bolt) => [bolt.code, bolt]))
  const rows = newParts(dock).map((row): PackedRow => {
    const bolt = bolts.get(row.code)
    return { ...row, wrench: bolt?.wrench ?? null, turns: bolt?.turns ?? [] }
  })
  const owned = ownedPlaces(dock)
  const bags = [...new Set(rows.map((row) => row.bag))].sort((a, b) =>
    a === b ? 0 : a === null ? -1 : b === null ? 1 : a < b ? -1 : 1,
  )
  return {
    format: 'leadline/list',
    version: 1,
    name: dock.name,
    catalog: catalog.name,
    fingerprint: dock.fingerprint,
    groups: bags.map((bag) => ({ bag, rows: rows.filter((row) => row.bag === bag) })),
    legs: dock.legs.map(({ id, code, stock, setHeight, setHeightFrame }) => ({
      leg: id,
      code,
      stock,
      setHeight,
      setHeightFrame,
      ...(owned('leg', id) && { owned: true as const }),
    })),
    braces: dock.pairs.flatMap(({ id, brace }) =>
      brace ? [{ pair: id, code: brace.code, low: brace.low }] : [],
    ),
    totals: dock.totals,
    ...(dock.existing && { existing: withoutNew(dock.existing) }),
  }
}

const withoutNew = ({ new: _new, ...rest }: Existing): Omit<Existing, 'new'> => rest

/** One part of what is there already against what is needed now: numbers of pieces. */
export interface DifferenceRow {
  readonly kind: string
  readonly code: string
  readonly name: string
  /** Of a leg of which no code is known, m. */
  readonly length?: number
  readonly have: number
  readonly need: number
  /** To be packed now; 0 where there is enough. */
  readonly add: number
  /** Left over from what is there. */
  readonly over: number
}

/** What is there already: rows of a parts list, in any order. */
export type Have = readonly {
  readonly kind: string
  readonly code: string
  readonly name: string
  readonly quantity: number
  /** Of a leg of which no code is known, m. */
  readonly length?: number
}[]

/** Row by row, what is there against what is needed; spares are left out on both sides. */
export function difference(have: Have, need: Have): DifferenceRow[] {
  const key = ({ kind, code, length }: Have[number]): string => `${kind}\n${code}\n${length ?? ''}`
  const there = new Map<string, Have[number]>()
  for (const row of have) {
    const same = there.get(key(row))
    there.set(key(row), same ? { ...same, quantity: same.quantity + row.quantity } : row)
  }
  const rows: DifferenceRow[] = need.map((row) => {
    const had = there.get(key(row))?.quantity ?? 0
    there.delete(key(row))
    return line(row, had, row.quantity)
  })
  for (const row of there.values()) rows.push(line(row, row.quantity, 0))
  return rows
}

const line = (row: Have[number], have: number, need: number): DifferenceRow => ({
  kind: row.kind,
  code: row.code,
  name: row.name,
  ...(row.length !== undefined && { length: row.length }),
  have,
  need,
  add: Math.max(0, need - have),
  over: Math.max(0, have - need),
})

/** All that a packing list file is of, what was there before too; checked as far as a difference needs. */
export function rowsOfList(
  input: unknown,
): { ok: true; value: Have } | { ok: false; issues: readonly Issue[] } {
  const { value, faults, odd } = plainOf(input)
  if (faults.length + odd.length > 0) return { ok: false, issues: [...faults, ...odd] }
  const groups = (value as { groups?: unknown } | null)?.groups
  if (!Array.isArray(groups))
    return { ok: false, issues: [issue('groups', 'missing', 'the groups of a packing list')] }
  const rows: Have[number][] = []
  const issues: Issue[] = []
  const take = (list: unknown, path: string): void => {
    if (!Array.isArray(list)) issues.push(issue(path, 'missing', 'a list'))
    else
      list.forEach((row: Partial<Have[number]> | null, i) => {
        const at = `${path}[${i}]`
        if (typeof row?.code !== 'string' || typeof row.kind !== 'string')
          issues.push(issue(at, 'a row without code and kind', 'both, as text'))
        else if (!Number.isInteger(row.quantity) || row.quantity! < 0)
          issues.push(issue(`${at}.quantity`, show(row.quantity), 'a whole number, 0 or more'))
        else
          rows.push({
            kind: row.kind,
            code: row.code,
            name: String(row.name ?? row.code),
            quantity: row.quantity!,
            ...(typeof row.length === 'number' && { length: row.length }),
          })
      })
  }
  groups.forEach((group: { rows?: unknown } | null, g) => {
    take(group?.rows, `groups[${g}].rows`)
  })
  const there = (value as { existing?: { used?: unknown; left?: unknown } | null }).existing
  if (there) {
    take(there.used, 'existing.used')
    take(there.left, 'existing.left')
  }
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: rows }
}
