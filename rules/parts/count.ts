/** The parts list: placements counted, nothing else. Masses add as whole grams, prices as whole minor units. */
import type { PartKind, PartRow, Totals } from '../dock.ts'
import type { Joints, Layout } from '../layout/index.ts'
import type { Shop } from '../shop.ts'
import type { Put } from './put.ts'

export interface Count {
  readonly parts: readonly PartRow[]
  /** By a section's index, grams: all that belongs to it, and as it is carried. */
  readonly sectionGrams: Float64Array
  readonly liftGrams: Float64Array
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

/** `eachPiece` calls back once for every piece there is. */
export function countParts(
  eachPiece: (put: Put) => void,
  { layout, joints, shop }: { readonly layout: Layout; readonly joints: Joints; readonly shop: Shop },
): Count {
  const quantities = new Int32Array(shop.parts.length)
  const size = layout.placed.reduce((most, p) => Math.max(most, p.index + 1), 0)
  const sectionGrams = new Float64Array(size)
  const liftGrams = new Float64Array(size)
  const carried = shop.parts.map((type) => !NOT_CARRIED.has(type.kind))
  // The bolts of a section's hung side go in when it hangs.
  const hungOn: (string | undefined)[] = []
  for (const joint of joints.all) if (joint.kind === 'hook') hungOn[joint.guest.index] = joint.id
  eachPiece((type, of, { index }) => {
    quantities[type.index]!++
    sectionGrams[index]! += type.grams
    const hung = type.kind === 'hook-bolt' && hungOn[index] === of
    if (!hung && carried[type.index]) liftGrams[index]! += type.grams
  })

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
  return { parts, sectionGrams, liftGrams, grams, price }
}

export function totalsOf(count: Count, layout: Layout, currency: string): Totals {
  let heaviestSection: string | null = null
  let most = 0
  for (const id of layout.workOrder) {
    const lift = count.liftGrams[layout.byId.get(id)!.index]!
    if (lift > most) {
      most = lift
      heaviestSection = id
    }
  }
  return {
    mass: count.grams / 1000,
    price: count.price,
    currency,
    heaviestLift: most / 1000,
    heaviestSection,
  }
}
