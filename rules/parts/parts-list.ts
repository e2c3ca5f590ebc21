/**
 * The parts list: placements counted, nothing else. Masses add as whole grams, prices as whole minor units.
 *
 * Frames alike, legs alike, joints alike have the same parts wherever they lie, so one of each kind is emitted piece by piece and
 * counted, and then only how many there are of it.
 */

import type { PartType, Shop } from '../catalog-index.ts'
import type { PartRow, Totals } from '../dock.ts'
import type { Layout } from '../layout/index.ts'
import { factsOf } from '../part-kinds.ts'
import type { EachFamily, Family } from './family.ts'

export interface Count {
  readonly parts: readonly PartRow[]
  /** By a section's index, grams: all that belongs to it, and as it is carried. */
  readonly sectionGrams: Float64Array
  readonly liftGrams: Float64Array
  readonly grams: number
  readonly price: number
}

/** One of a kind, the type of each of its pieces, and what they weigh on the first and on the second section that carries them, grams. */
interface Tally<T> {
  readonly one: T
  readonly types: readonly PartType[]
  readonly grams: readonly [number, number]
  readonly lift: readonly [number, number]
  times: number
}

function tallyOf<T>(one: T, { carriers, emit }: Family<T>): Tally<T> {
  const first = carriers.first(one)
  const types: PartType[] = []
  const grams: [number, number] = [0, 0]
  const lift: [number, number] = [0, 0]
  emit((type, _, section) => {
    const on = section === first ? 0 : 1
    types.push(type)
    grams[on] += type.grams
    // Hook bolts of the hung side are fitted after it hangs, so they are no part of its weight as lifted.
    const hung = type.kind === 'hook-bolt' && on === 1
    if (!hung && factsOf(type.kind).carried) lift[on] += type.grams
  }, one)
  return { one, types, grams, lift, times: 0 }
}

function findOrMake<T>(tallies: Tally<T>[], one: T, family: Family<T>): Tally<T> {
  for (const known of tallies) if (family.alike(known.one, one)) return known
  const made = tallyOf(one, family)
  tallies.push(made)
  return made
}

/** `eachFamily` names every part family of the dock. */
export function countParts(eachFamily: EachFamily, { placed }: Pick<Layout, 'placed'>, shop: Shop): Count {
  const quantities = new Int32Array(shop.parts.length)
  const size = (placed.at(-1)?.index ?? -1) + 1
  const sectionGrams = new Float64Array(size)
  const liftGrams = new Float64Array(size)
  eachFamily((family) => {
    const { all, alike, carriers } = family
    const tallies: Tally<(typeof all)[number]>[] = []
    let last: Tally<(typeof all)[number]> | null = null
    for (const one of all) {
      // Neighbors are mostly alike: first the kind of the one before.
      if (!last || !alike(last.one, one)) last = findOrMake(tallies, one, family)
      const tally = last
      tally.times++
      const first = carriers.first(one).index
      const second = carriers.second(one).index
      sectionGrams[first]! += tally.grams[0]
      liftGrams[first]! += tally.lift[0]
      sectionGrams[second]! += tally.grams[1]
      liftGrams[second]! += tally.lift[1]
    }
    for (const { types, times } of tallies) for (const { index } of types) quantities[index]! += times
  })

  const parts: PartRow[] = []
  let grams = 0
  let price = 0
  for (const type of shop.parts) {
    const quantity = quantities[type.index]!
    if (quantity === 0) continue
    const row = partRow(type, quantity, shop)
    grams += type.grams * quantity
    price += row.price
    parts.push(row)
  }
  return { parts, sectionGrams, liftGrams, grams, price }
}

/** So many of a part, with the spares that the shop sends along. */
export function partRow(type: PartType, quantity: number, { catalog }: Shop): PartRow {
  const { spares } = catalog
  const policy = Object.hasOwn(spares.byKind, type.kind) ? spares.byKind[type.kind] : undefined
  const spare = policy ? Math.max(policy.atLeast, Math.ceil(quantity * policy.share - 1e-9)) : 0
  return {
    code: type.code,
    kind: type.kind,
    name: type.name,
    bag: type.bag,
    quantity,
    spares: spare,
    unitMass: type.grams / 1000,
    mass: (type.grams * quantity) / 1000,
    unitPrice: type.price,
    price: type.price * (quantity + (spares.priced ? spare : 0)),
  }
}

export function totalsOf(count: Count, layout: Layout, currency: string): Totals {
  let heaviestSection: string | null = null
  let most = 0
  for (const { id, index } of layout.workOrder) {
    const lift = count.liftGrams[index]!
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
