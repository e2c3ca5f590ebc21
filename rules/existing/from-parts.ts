/** `dock.existing` from what there is a file of: an older design, or a packing list that was saved. */
import type { Catalog } from '../catalog/index.ts'
import { type Shop, shopOf } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import { deriveKit } from '../kit.ts'
import type { Have } from '../papers/packing-list.ts'
import { type ExistingParts, type ExistingTable, TABLES } from './owned.ts'

/** All that an older design's dock is made of, and what it had left over of one before it. */
export function partsOfDesign(design: Design, catalog: Catalog): Have {
  const { count, existing } = deriveKit(design, catalog)
  return [...count.parts, ...(existing?.left ?? [])]
}

/** Rows of a parts list, in any order: legs by their length where the catalog has it, all else by code. */
export function existingFrom(rows: Have, catalog: Catalog): ExistingParts {
  const shop = shopOf(catalog)
  const tables = new Map<string, Map<string, number>>()
  const lengths = new Map<number, number>()
  for (const row of rows) {
    const { kind, code, quantity } = row
    if (quantity === 0) continue
    const length = kind === 'leg' ? (row.length ?? lengthOf(code, shop)) : null
    if (length !== null) {
      lengths.set(length, (lengths.get(length) ?? 0) + quantity)
      continue
    }
    const codes = tables.get(kind) ?? new Map<string, number>()
    tables.set(kind, codes.set(code, (codes.get(code) ?? 0) + quantity))
  }
  const take = (kind: string): Record<string, number> | null => {
    const codes = tables.get(kind)
    tables.delete(kind)
    return codes ? Object.fromEntries(codes) : null
  }
  const own = Object.entries(TABLES).flatMap(([table, kind]) => {
    const codes = take(kind)
    return codes ? [[table as ExistingTable, codes] as const] : []
  })
  return {
    ...Object.fromEntries(own),
    ...(lengths.size > 0 && {
      legs: [...lengths].sort(([a], [b]) => a - b).map(([stock, count]) => ({ stock, count })),
    }),
    ...(tables.size > 0 && {
      other: Object.fromEntries([...tables].map(([kind, codes]) => [kind, Object.fromEntries(codes)])),
    }),
  }
}

/** Null where the catalog has no such leg, or one before it of that length: then its code alone says which it is. */
function lengthOf(code: string, { legs }: Shop): number | null {
  const leg = legs.find((one) => one.code === code)
  const first = leg && legs.find(({ length }) => Math.abs(length - leg.length) <= 0.001)
  return leg && first === leg ? leg.length : null
}
