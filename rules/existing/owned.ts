/** What is owned already (`dock.existing`), told by the catalog's parts. */
import type { PartType, Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'

export type ExistingParts = NonNullable<Design['dock']['existing']>

export interface Owned {
  /** By the catalog's part. */
  readonly known: ReadonlyMap<PartType, number>
  /** What the catalog does not have, as it was told; a leg without a code by its length, m. */
  readonly unknown: readonly {
    readonly kind: string
    readonly code: string
    readonly length?: number
    readonly quantity: number
  }[]
}

/** The kinds of part that have a table of their own. */
export const TABLES = {
  sections: 'frame',
  braces: 'brace',
  pads: 'foot-pad',
  panels: 'deck-panel',
  hooks: 'hook-bracket',
} as const

export type ExistingTable = keyof typeof TABLES

export function ownedOf(existing: ExistingParts, shop: Shop): Owned {
  const known = new Map<PartType, number>()
  const unknown: Owned['unknown'][number][] = []
  const add = (kind: string, code: string, quantity: number, length?: number): void => {
    if (quantity === 0) return
    const type = shop.parts.find((part) => part.kind === kind && part.code === code)
    if (type) known.set(type, (known.get(type) ?? 0) + quantity)
    else unknown.push({ kind, code, ...(code === '' && length !== undefined && { length }), quantity })
  }
  for (const [table, kind] of Object.entries(TABLES))
    for (const [code, n] of Object.entries(existing[table as ExistingTable] ?? {})) add(kind, code, n)
  for (const { stock, count } of existing.legs ?? [])
    add('leg', shop.legs.find(({ length }) => Math.abs(length - stock) <= 0.001)?.code ?? '', count, stock)
  for (const [kind, codes] of Object.entries(existing.other ?? {}))
    for (const [code, n] of Object.entries(codes)) add(kind, code, n)
  return { known, unknown }
}
