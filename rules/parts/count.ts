/** The parts list: placements counted, nothing else. Masses add as whole grams, prices as whole minor units. */
import type { PartRow, Placement, Totals } from '../dock.ts'
import { partKey, type Shop } from '../shop.ts'

export interface Count {
  readonly parts: readonly PartRow[]
  /** Of each section, grams: all that belongs to it, and as it is carried. */
  readonly sectionGrams: ReadonlyMap<string, { readonly all: number; readonly lift: number }>
  readonly grams: number
  readonly price: number
}

/** Not on a section while it is carried: decking, what goes on last, what is locked in the water, extras. */
const NOT_CARRIED = new Set([
  'deck-panel',
  'deck-clip',
  'leg-cap',
  'sleeve-cap',
  'bumper',
  'anchor-post',
  'auger',
  'post-clamp',
  'accessory',
])

/** `hung`: joint ids whose hook bolts on a section are its hung side, by section, and go in when it hangs. */
export function countParts(
  placements: readonly Placement[],
  hungOn: ReadonlyMap<string, string>,
  shop: Shop,
): Count {
  const quantities = new Map<string, number>()
  const sections = new Map<string, { all: number; lift: number }>()
  for (const p of placements) {
    const key = partKey(p.kind, p.code)
    quantities.set(key, (quantities.get(key) ?? 0) + 1)
    const { grams } = shop.parts.get(key)!
    let sum = sections.get(p.section)
    if (!sum) sections.set(p.section, (sum = { all: 0, lift: 0 }))
    sum.all += grams
    const hung = p.kind === 'hook-bolt' && hungOn.get(p.section) === p.of
    if (!hung && !NOT_CARRIED.has(p.kind)) sum.lift += grams
  }

  const { spares } = shop.catalog
  const parts: PartRow[] = []
  let grams = 0
  let price = 0
  // The shop's parts stand in the catalog's order: so do the rows.
  for (const [key, type] of shop.parts) {
    const quantity = quantities.get(key)
    if (quantity === undefined) continue
    const policy = Object.hasOwn(spares.byKind, type.kind) ? spares.byKind[type.kind] : undefined
    const spare = policy ? Math.max(policy.atLeast, Math.ceil(quantity * policy.share - 1e-9)) : 0
    const rowGrams = type.grams * quantity
    const rowPrice = type.price * (quantity + (spares.priced ? spare : 0))
    grams += rowGrams
    price += rowPrice
    parts.push({
      code: type.code,
      kind: type.kind,
      name: type.name,
      bag: type.bag,
      quantity,
      spares: spare,
      unitMass: type.grams / 1000,
      mass: rowGrams / 1000,
      unitPrice: type.price,
      price: rowPrice,
    })
  }
  return { parts, sectionGrams: sections, grams, price }
}

export function totalsOf(count: Count, order: readonly string[], currency: string): Totals {
  let heaviestSection: string | null = null
  let most = 0
  for (const id of order) {
    const lift = count.sectionGrams.get(id)?.lift ?? 0
    if (lift > most) {
      most = lift
      heaviestSection = id
    }
  }
  return { mass: count.grams / 1000, price: count.price, currency, heaviestLift: most / 1000, heaviestSection }
}
