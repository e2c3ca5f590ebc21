/** The parts list: placements counted, nothing else. Masses add as whole grams, prices as whole minor units. */
import type { PartKind, PartRow, Totals } from '../dock.ts'
import type { Layout } from '../layout/index.ts'
import type { Shop } from '../shop.ts'
import type { Puts } from './put.ts'

export interface Count {
  readonly parts: readonly PartRow[]
  /** Of each section, grams: all that belongs to it, and as it is carried. */
  readonly sectionGrams: ReadonlyMap<string, { readonly all: number; readonly lift: number }>
  readonly grams: number
  readonly price: number
}

/** Not on a section while it is carried: decking, what goes on last, what is locked in the water, extras. */
const NOT_CARRIED: ReadonlySet<PartKind> = new Set<PartKind>([
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

/** `hungOn`: by a section's index, the joint that it hangs on: the bolts of its hung side go in when it hangs. */
export function countParts(
  puts: Puts,
  layout: Layout,
  hungOn: ReadonlyMap<number, string>,
  shop: Shop,
): Count {
  const { types, sections } = puts
  const quantities = new Int32Array(shop.parts.length)
  const size = layout.placed.reduce((most, p) => Math.max(most, p.index + 1), 0)
  const all = new Float64Array(size)
  const lift = new Float64Array(size)
  const carried = shop.parts.map((type) => !NOT_CARRIED.has(type.kind))
  for (let i = 0; i < puts.n; i++) {
    const type = types[i]!
    const section = sections[i]!.index
    quantities[type.index]!++
    all[section]! += type.grams
    const hung = type.kind === 'hook-bolt' && hungOn.get(section) === puts.of[i]
    if (!hung && carried[type.index]) lift[section]! += type.grams
  }

  const { spares } = shop.catalog
  const parts: PartRow[] = []
  let grams = 0
  let price = 0
  for (const type of shop.parts) {
    const quantity = quantities[type.index]!
    if (quantity === 0) continue
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
  const sectionGrams = new Map(layout.placed.map((p) => [p.id, { all: all[p.index]!, lift: lift[p.index]! }]))
  return { parts, sectionGrams, grams, price }
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
