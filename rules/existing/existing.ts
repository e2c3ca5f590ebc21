/** What of the owned parts a dock uses, what is left over, and what is new. Counted from the parts list, like everything. */
import type { Existing } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { partRow } from '../parts/parts-list.ts'
import { ownedOf } from './owned.ts'

/** Null where the Design tells of nothing owned. */
export function existingOf(
  kit: Pick<Kit, 'design' | 'shop' | 'layout' | 'legs' | 'pairs' | 'count'>,
): Existing | null {
  const { design, shop, count } = kit
  if (!design.dock.existing) return null
  const { known, unknown } = ownedOf(design.dock.existing, shop)
  const used: Existing['used'][number][] = []
  const fresh: Existing['new'][number][] = []
  const left: Existing['left'][number][] = []
  const needed = new Map(count.parts.map((row) => [shop.type(row.kind, row.code), row.quantity]))
  for (const type of shop.parts) {
    const { kind, code, name } = type
    const need = needed.get(type) ?? 0
    const have = known.get(type) ?? 0
    const both = Math.min(need, have)
    if (both > 0) used.push({ kind, code, name, quantity: both, of: placesOf(kind, code, both, kit) })
    if (need > have) fresh.push(partRow(type, need - have, shop))
    if (have > need) left.push({ kind, code, name, quantity: have - need, known: true })
  }
  for (const { kind, code, length, quantity } of unknown)
    left.push({ kind, code, name: code, ...(length !== undefined && { length }), quantity, known: false })
  const grams = fresh.reduce((sum, row) => sum + shop.type(row.kind, row.code).grams * row.quantity, 0)
  return {
    used,
    left,
    new: fresh,
    mass: grams / 1000,
    price: fresh.reduce((sum, { price }) => sum + price, 0),
  }
}

/** Frames and braces alike are given out in the order of work; legs stand where they were given. */
function placesOf(
  kind: string,
  code: string,
  quantity: number,
  { layout, legs, pairs }: Pick<Kit, 'layout' | 'legs' | 'pairs'>,
): string[] {
  const ids =
    kind === 'frame'
      ? layout.workOrder.map(({ id, frame }) => frame.code === code && id)
      : kind === 'leg'
        ? legs.map(({ id, owned, stock }) => owned && stock!.code === code && id)
        : kind === 'brace'
          ? pairs.map(({ fit, pair }) => fit?.brace.code === code && pair.id)
          : []
  return ids.filter((id) => id !== false).slice(0, quantity)
}
