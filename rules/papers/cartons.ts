/**
 * What goes into which carton, bag and bundle: the whole parts list but for what is owned already, spares too, and nothing else.
 *
 * Frames go each by itself, long goods in bundles of one kind, small hardware in bags (by letter, or where the shop wants it a kit for each
 * section) and these in cartons of their own, all else in cartons. No carton, bag or bundle weighs more than the catalog lets it, unless a single piece does. Masses are of the goods, without
 * what they are wrapped in, and add as whole grams.
 */
import type { Catalog } from '../catalog/index.ts'
import { type Shop, shopOf } from '../catalog-index.ts'
import type { Dock, Fingerprint, PartKind, PartRow } from '../dock.ts'
import { newParts } from '../existing/new-parts.ts'
import { ownedPlaces } from '../existing/owned-places.ts'
import { fill, gramsOf, type Load, loadGrams } from './fill.ts'
import { groupBy, sectionsInOrder } from './order.ts'
import { type Packaging, packagingOf } from './packaging.ts'
import { pieceLength } from './piece-size.ts'

export interface PackedItem {
  readonly kind: PartKind
  readonly code: string
  readonly name: string
  /** Spares apart. */
  readonly quantity: number
  readonly spares: number
  /** kg */
  readonly unitMass: number
  /** Of all of them, spares too, kg. */
  readonly mass: number
  /** Ids of the sections, legs or pairs that these pieces are for, where each has its own (frames, legs, braces); else empty. */
  readonly of: readonly string[]
}

export interface Bag {
  /** `A`, or `A-2` where what goes into it takes several; of a kit the section that it is for (`s3`), `+` of spares. */
  readonly id: string
  /** The catalog's; of a kit the section's id, `+` of spares. */
  readonly letter: string
  /** The section that it is a kit for; else null. */
  readonly section: string | null
  readonly n: number
  readonly of: number
  readonly items: readonly PackedItem[]
  /** kg */
  readonly mass: number
  /** Number of the package that it is in. */
  readonly package: number
  /** A single piece that is over the limit. */
  readonly over: boolean
}

export interface Package {
  /** From 1, through all packages. */
  readonly number: number
  readonly kind: 'hardware' | 'goods' | 'bundle' | 'loose'
  /** Bags in it, of hardware; else none. */
  readonly bags: readonly Bag[]
  /** What is in it outside of bags. */
  readonly items: readonly PackedItem[]
  /** kg */
  readonly mass: number
  /** Most that it may weigh, kg; null for what goes loose. */
  readonly limit: number | null
  /** A single piece that is over the limit. */
  readonly over: boolean
  /** Longest piece in it, m. */
  readonly longest: number
}

export interface Packages {
  readonly format: 'leadline/cartons'
  readonly version: 1
  readonly name: string
  readonly fingerprint: Fingerprint
  readonly packages: readonly Package[]
  /** All bags, by letter. */
  readonly bags: readonly Bag[]
  /** Pieces, spares too. */
  readonly pieces: number
  /** Of all goods with their spares, kg. */
  readonly mass: number
  /** Of the spares alone, kg: what `mass` has over the dock's own. */
  readonly sparesMass: number
  /** Heaviest package, kg; 0 for none. */
  readonly heaviest: number
  /** Longest piece, m; 0 for none. */
  readonly longest: number
}

type Way = 'loose' | 'bundle' | 'bag' | 'goods'

export function cartons(dock: Dock, catalog: Catalog): Packages {
  const shop = shopOf(catalog)
  const how = packagingOf(catalog)
  const parts = newParts(dock)
  const itemsOf = itemMaker(dock)
  const longestOf = (rows: readonly Pick<PartRow, 'kind' | 'code'>[]): number =>
    rows.reduce((most, row) => Math.max(most, pieceLength(shop, row.kind, row.code)), 0)
  const rowsBy = (way: Way): PartRow[] =>
    parts.filter((row) => wayOf(row, pieceLength(shop, row.kind, row.code), how) === way)

  const packages: Package[] = []
  const bags: Bag[] = []
  const small = rowsBy('bag')
  const filled = catalog.packing?.kits ? kitLoads(small, dock, how) : bagLoads(small, how)
  const byLetter = inOrderOf([...new Set(filled.map(({ letter }) => letter))])
  const hardware = cartonsOfBags(filled, how.carton)
  for (const loads of hardware) {
    const number = packages.length + 1
    const inside = loads
      .map(({ letter, section, n, of, load }): Bag => {
        const items = itemsOf(load)
        const mass = loadGrams(load) / 1000
        const id = of === 1 ? letter : `${letter}-${n}`
        return { id, letter, section, n, of, items, mass, package: number, over: loadGrams(load) > how.bag }
      })
      .sort(byLetter)
    bags.push(...inside)
    const grams = loads.reduce((sum, { load }) => sum + loadGrams(load), 0)
    packages.push({
      number,
      kind: 'hardware',
      bags: inside,
      items: [],
      mass: grams / 1000,
      limit: how.carton / 1000,
      over: grams > how.carton,
      longest: longestOf(inside.flatMap(({ items }) => items)),
    })
  }
  const add = (kind: 'goods' | 'bundle' | 'loose', load: Load, limit: number | null): void => {
    const grams = loadGrams(load)
    packages.push({
      number: packages.length + 1,
      kind,
      bags: [],
      items: itemsOf(load),
      mass: grams / 1000,
      limit: limit === null ? null : limit / 1000,
      over: limit !== null && grams > limit,
      longest: longestOf(load.map(({ row }) => row)),
    })
  }
  for (const load of fill(rowsBy('goods'), { grams: how.carton, pieces: Number.POSITIVE_INFINITY }))
    add('goods', load, how.carton)
  for (const rows of byKind(rowsBy('bundle'), shop))
    for (const load of fill(rows, { grams: how.bundle, pieces: how.pieces })) add('bundle', load, how.bundle)
  for (const load of fill(rowsBy('loose'), { grams: Number.POSITIVE_INFINITY, pieces: 1 }))
    add('loose', load, null)

  const all = parts.reduce((sum, row) => sum + gramsOf(row) * (row.quantity + row.spares), 0)
  const spare = parts.reduce((sum, row) => sum + gramsOf(row) * row.spares, 0)
  return {
    format: 'leadline/cartons',
    version: 1,
    name: dock.name,
    fingerprint: dock.fingerprint,
    packages,
    bags: bags.sort(byLetter),
    pieces: parts.reduce((sum, row) => sum + row.quantity + row.spares, 0),
    mass: all / 1000,
    sparesMass: spare / 1000,
    heaviest: packages.reduce((most, { mass }) => Math.max(most, mass), 0),
    longest: longestOf(parts),
  }
}

function wayOf(row: PartRow, length: number, how: Packaging): Way {
  if (how.loose.has(row.kind)) return 'loose'
  if (how.bundled.has(row.kind) || length >= how.long) return 'bundle'
  return row.bag ? 'bag' : 'goods'
}

/** Long goods by kind, the longest of a kind first. */
function byKind(rows: readonly PartRow[], shop: Shop): PartRow[][] {
  const kinds = [...new Set(rows.map(({ kind }) => kind))]
  const length = (row: PartRow): number => pieceLength(shop, row.kind, row.code)
  return kinds.map((kind) => rows.filter((row) => row.kind === kind).sort((a, b) => length(b) - length(a)))
}

interface BagLoad {
  readonly letter: string
  readonly section: string | null
  readonly n: number
  readonly of: number
  readonly load: Load
}

function bagLoads(rows: readonly PartRow[], how: Packaging): BagLoad[] {
  const letters = [...new Set(rows.map(({ bag }) => bag!))].sort()
  return letters.flatMap((letter) =>
    bagsOf(
      letter,
      rows.filter(({ bag }) => bag === letter),
      how,
    ),
  )
}

function bagsOf(
  letter: string,
  rows: readonly PartRow[],
  how: Packaging,
  section: string | null = null,
): BagLoad[] {
  const loads = fill(rows, { grams: how.bag, pieces: Number.POSITIVE_INFINITY })
  return loads.map((load, i): BagLoad => ({ letter, section, n: i + 1, of: loads.length, load }))
}

/** A kit for each section, in the order of work, and one of all spares. Where some is owned already, the last sections go without. */
function kitLoads(rows: readonly PartRow[], dock: Dock, how: Packaging): BagLoad[] {
  const placed = groupBy(dock.placements, ({ kind, code }) => `${kind}\n${code}`)
  const left = new Map(rows.map((row) => [row, row.quantity]))
  const kits = sectionsInOrder(dock).flatMap(({ id }) =>
    bagsOf(
      id,
      rows.flatMap((row): PartRow[] => {
        const there = placed.get(`${row.kind}\n${row.code}`) ?? []
        const quantity = Math.min(left.get(row)!, there.filter(({ section }) => section === id).length)
        left.set(row, left.get(row)! - quantity)
        return quantity > 0 ? [{ ...row, quantity, spares: 0 }] : []
      }),
      how,
      id,
    ),
  )
  const rest = rows.map((row): PartRow => ({ ...row, quantity: left.get(row)! }))
  return [
    ...kits,
    ...bagsOf(
      '+',
      rest.filter(({ quantity, spares }) => quantity + spares > 0),
      how,
    ),
  ]
}

/** The heaviest bag first, each into the first carton that has room for it. */
function cartonsOfBags(bags: readonly BagLoad[], limit: number): BagLoad[][] {
  const open: { grams: number; bags: BagLoad[] }[] = []
  for (const bag of [...bags].sort((a, b) => loadGrams(b.load) - loadGrams(a.load))) {
    const grams = loadGrams(bag.load)
    const carton = open.find((one) => one.grams + grams <= limit)
    if (carton) {
      carton.grams += grams
      carton.bags.push(bag)
    } else open.push({ grams, bags: [bag] })
  }
  return open.map((carton) => carton.bags)
}

/** Bags in the order of their letters, those of one letter by their numbers. */
const inOrderOf =
  (letters: readonly string[]) =>
  (a: Bag, b: Bag): number =>
    letters.indexOf(a.letter) - letters.indexOf(b.letter) || a.n - b.n

/** Items of loads, each id handed out once, in the order of the dock. */
function itemMaker(dock: Dock): (load: Load) => PackedItem[] {
  const ids = new Map<string, string[]>()
  const owned = ownedPlaces(dock)
  const add = (kind: PartKind, code: string | null | undefined, id: string): void => {
    if (!code || owned(kind, id)) return
    const key = `${kind}\n${code}`
    const known = ids.get(key)
    if (known) known.push(id)
    else ids.set(key, [id])
  }
  const sections = new Map(dock.sections.map((section) => [section.id, section]))
  for (const id of dock.workOrder) add('frame', sections.get(id)?.frame, id)
  for (const { id, code } of dock.legs) add('leg', code, id)
  for (const { id, brace } of dock.pairs) add('brace', brace?.code, id)
  const taken = new Map<string, number>()
  return (load) =>
    load.map(({ row, quantity, spares }): PackedItem => {
      const { kind, code, name, unitMass } = row
      const key = `${kind}\n${code}`
      const from = taken.get(key) ?? 0
      taken.set(key, from + quantity)
      const of = (ids.get(key) ?? []).slice(from, from + quantity)
      const mass = (gramsOf(row) * (quantity + spares)) / 1000
      return { kind, code, name, quantity, spares, unitMass, mass, of }
    })
}
