/** Laws of the parts list: it counts the placements, all of them and nothing else; masses and prices are exact integer sums. */
import type { Catalog } from '../../../rules/catalog/schema.ts'
import type { PartKind, PartRow } from '../../../rules/dock.ts'
import { itemsOf, key } from './items.ts'
import { gramsOf, groupBy, type Law, near } from './law.ts'

/** Every placement is in a row, and every row counts its placements: no piece listed that is nowhere, none placed that is not listed. */
export const rowsCountPlacements: Law = (dock) => {
  const out: string[] = []
  const placed = groupBy(dock.placements, key)
  const rows = new Set<string>()
  for (const row of dock.parts) {
    if (rows.has(key(row))) out.push(`two rows of ${key(row)}`)
    rows.add(key(row))
    const count = placed.get(key(row))?.length ?? 0
    if (row.quantity !== count || count === 0)
      out.push(`${key(row)}: listed ${row.quantity}, placed ${count}`)
  }
  for (const [k, group] of placed) if (!rows.has(k)) out.push(`${k}: placed ${group.length}, not listed`)
  return out
}

/** A row says of its item what the catalog says: name, bag, unit price, unit mass as stated or by geometry. */
export const rowsSayTheCatalog: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const items = itemsOf(catalog)
  for (const row of dock.parts) {
    const item = items.get(key(row))
    if (item === undefined) {
      out.push(`${key(row)} is not in the catalog`)
      continue
    }
    if (row.name !== item.name) out.push(`${key(row)} is called ${row.name}, expected ${item.name}`)
    if (row.bag !== (item.bag ?? null))
      out.push(`${key(row)} is in bag ${row.bag}, expected ${item.bag ?? null}`)
    if (row.unitPrice !== item.price) out.push(`${key(row)} costs ${row.unitPrice}, expected ${item.price}`)
    if (gramsOf(row.unitMass) !== gramsOf(item.mass))
      out.push(`${key(row)} weighs ${row.unitMass}, expected ${item.mass}`)
  }
  return out
}

/** Spares are the share rounded up, at least so many, by the catalog's policy for the kind. */
export const sparesByPolicy: Law = (dock, _design, catalog) => {
  const out: string[] = []
  for (const row of dock.parts) {
    const policy = catalog.spares.byKind[row.kind]
    const expected =
      policy === undefined ? 0 : Math.max(Math.ceil(policy.share * row.quantity - 1e-9), policy.atLeast)
    if (row.spares !== expected)
      out.push(`${key(row)}: ${row.spares} spares of ${row.quantity}, expected ${expected}`)
  }
  return out
}

const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0)
const rowPrice = (row: PartRow, catalog: Catalog) =>
  row.unitPrice * (row.quantity + (catalog.spares.priced ? row.spares : 0))

/** Masses are whole grams: row = unit × quantity, total = sum of the rows. */
export const massesAreSums: Law = (dock) => {
  const out: string[] = []
  for (const row of dock.parts) {
    if (!near(row.unitMass * 1000, gramsOf(row.unitMass), 1e-6))
      out.push(`${key(row)}: ${row.unitMass} kg is no whole gram`)
    if (gramsOf(row.mass) !== gramsOf(row.unitMass) * row.quantity)
      out.push(`${key(row)}: ${row.mass} kg for ${row.quantity} of ${row.unitMass}`)
  }
  const total = sum(dock.parts.map((r) => gramsOf(r.mass)))
  if (gramsOf(dock.totals.mass) !== total)
    out.push(`total mass ${dock.totals.mass} kg, the rows add to ${total} g`)
  return out
}

/** Prices are whole cents: row = unit × quantity (spares too where they are charged), total = sum of the rows. */
export const pricesAreSums: Law = (dock, _design, catalog) => {
  const out: string[] = []
  for (const row of dock.parts)
    if (row.price !== rowPrice(row, catalog))
      out.push(`${key(row)}: price ${row.price}, expected ${rowPrice(row, catalog)}`)
  const total = sum(dock.parts.map((r) => rowPrice(r, catalog)))
  if (dock.totals.price !== total) out.push(`total price ${dock.totals.price}, expected ${total}`)
  if (dock.totals.currency !== catalog.currency) out.push(`currency ${dock.totals.currency}`)
  return out
}

/** What stays on shore while a section is lifted in: decking, caps, ties and extras. */
const NOT_LIFTED: readonly PartKind[] = [
  'deck-panel',
  'deck-clip',
  'leg-cap',
  'sleeve-cap',
  'bumper',
  'fender-board',
  'fender-bolt',
  'accessory',
  'anchor-post',
  'auger',
  'post-clamp',
]

/**
 * A section's mass is that of its placements; its lift that of those that are on it when it is carried. All belong to a section.
 * The bolts of the hung side go in when the section hangs, so they are not lifted with it.
 */
export const sectionMasses: Law = (dock, _design, catalog) => {
  const out: string[] = []
  const items = itemsOf(catalog)
  const grams = (p: { kind: PartKind; code: string }) => gramsOf(items.get(key(p))?.mass ?? 0)
  const by = groupBy(dock.placements, (p) => p.section)
  const hungSide = new Map(dock.joints.filter((j) => j.kind === 'hook').map((j) => [j.id, j.between[1]]))
  const lifted = (p: { kind: PartKind; of: string; section: string }) =>
    !NOT_LIFTED.includes(p.kind) && !(p.kind === 'hook-bolt' && hungSide.get(p.of) === p.section)
  for (const section of dock.sections) {
    const own = by.get(section.id) ?? []
    const mass = sum(own.map(grams))
    const lift = sum(own.filter(lifted).map(grams))
    if (gramsOf(section.mass) !== mass)
      out.push(`${section.id} mass ${section.mass} kg, its pieces add to ${mass} g`)
    if (gramsOf(section.lift) !== lift)
      out.push(`${section.id} lift ${section.lift} kg, its pieces add to ${lift} g`)
  }
  const ids = new Set(dock.sections.map((s) => s.id))
  for (const id of by.keys()) if (!ids.has(id)) out.push(`pieces belong to ${id}, which is not there`)
  return out
}

/** The heaviest lift is the greatest of the sections', and its section the one that has it. */
export const heaviestLift: Law = (dock) => {
  const { heaviestLift: lift, heaviestSection } = dock.totals
  if (dock.sections.length === 0)
    return heaviestSection === null && lift === 0 ? [] : ['an empty dock has a heaviest lift']
  const greatest = Math.max(...dock.sections.map((s) => s.lift))
  const named = dock.sections.find((s) => s.id === heaviestSection)
  return lift === greatest && named?.lift === greatest
    ? []
    : [`heaviest lift ${lift} of ${heaviestSection}, expected ${greatest}`]
}
