/** The form of a catalog: its fields from the schema, in sections as a shop thinks of them, and what each of its codes points to. */

import { CatalogSchema } from '../../../rules/catalog/schema.ts'
import type { PathKey } from '../../../rules/issue.ts'
import { isList, isObject, isUnder, type Json, type Path, valueAt, withValue } from '../draft.ts'
import { type Node, nodeOf, type ObjectNode, optionOf } from './node.ts'

export const CATALOG_FORM: ObjectNode = rootOf(nodeOf(CatalogSchema))

function rootOf(node: Node): ObjectNode {
  if (node.kind !== 'object') throw new Error('a catalog is an object')
  return node
}

/** In the order in which a shop with a price list goes through them; what stands where. The longer path goes. */
export const SECTIONS = {
  shop: ['name', 'id', 'edition', 'currency', 'shop', 'format', 'version'],
  frames: ['frames'],
  legs: ['legs', 'sleeve'],
  braces: ['braces', 'clamp'],
  pads: ['pads', 'caps'],
  joints: ['hooks', 'hinge', 'tie'],
  decking: ['decking', 'deckings'],
  hardware: ['hardware', 'spares'],
  extras: ['extras'],
  prices: ['quote', 'shop.deposit', 'shop.prices', 'shop.each', 'shop.brings', 'services'],
  rules: ['rules'],
  waters: ['limits', 'soils', 'survey'],
  stock: ['stock', 'materials'],
  packing: ['packing'],
  shapes: ['templates'],
  words: ['words'],
} as const satisfies Readonly<Record<string, readonly string[]>>

export type SectionName = keyof typeof SECTIONS
export const SECTION_NAMES = Object.keys(SECTIONS) as readonly SectionName[]

const PLACES: readonly { readonly section: SectionName; readonly path: readonly string[] }[] =
  SECTION_NAMES.flatMap((section) => SECTIONS[section].map((place) => ({ section, path: place.split('.') })))

/** Which section a place is in; null where the schema has no such key. */
export function sectionOf(path: Path): SectionName | null {
  const fits = PLACES.filter((place) => isUnder(path, place.path))
  return (
    fits.reduce<(typeof PLACES)[number] | null>(
      (best, place) => (best && best.path.length >= place.path.length ? best : place),
      null,
    )?.section ?? null
  )
}

export const pathsOf = (section: SectionName): readonly (readonly string[])[] =>
  SECTIONS[section].map((place) => place.split('.'))

/** True where a field of an object is shown in another section than the object. */
export const isElsewhere = (path: Path, from: SectionName): boolean => {
  const section = sectionOf(path)
  return section !== null && section !== from
}

/** What a code names. */
export type Named = 'stock' | 'materials' | 'panels' | 'frames' | 'services'
const LISTS: Readonly<Record<Exclude<Named, 'stock' | 'materials'>, Path>> = {
  panels: ['decking', 'panels'],
  frames: ['frames'],
  services: ['services'],
}
const NAMED: Readonly<Record<string, Named>> = {
  stock: 'stock',
  rail: 'stock',
  ends: 'stock',
  material: 'materials',
  panel: 'panels',
  frame: 'frames',
}

/** What the text at a path is a code of; null where it is none. */
export function namedAt(path: Path): Named | null {
  const last = path.at(-1)
  if (path[0] === 'deckings' && path[2] === 'panels' && path.length === 4) return 'panels'
  if (path[0] === 'shop' && path[1] === 'brings' && path.length === 3) return 'services'
  if (typeof last !== 'string' || path.length < 2) return null
  return NAMED[last] ?? null
}

/** All that can be named so, in the file's order. */
export function codesOf(draft: Json, named: Named): readonly string[] {
  if (named === 'stock' || named === 'materials') {
    const record = valueAt(draft, [named])
    return isObject(record) ? Object.keys(record) : []
  }
  const list = valueAt(draft, LISTS[named])
  return isList(list)
    ? list.flatMap((one) => (isObject(one) && typeof one.code === 'string' ? [one.code] : []))
    : []
}

/** Which codes a place gives, when it is the code of an entry, or the name of one. */
function givenAt(path: Path): Named | null {
  if ((path[0] === 'stock' || path[0] === 'materials') && path.length === 2) return path[0]
  if (path.at(-1) !== 'code') return null
  const found = Object.entries(LISTS).find(
    ([, list]) => path.length === list.length + 2 && isUnder(path, list),
  )
  return found ? (found[0] as Named) : null
}

/** The draft with all that named `from` naming `to`, after the code at the path was changed. */
export function followed(draft: Json, path: Path, from: string, to: string): Json {
  const named = givenAt(path)
  if (!named || from === '' || codesOf(draft, named).includes(from)) return draft
  let made = draft
  for (const leaf of leavesOf(CATALOG_FORM, draft))
    if (leaf.value === from && namedAt(leaf.path) === named) made = withValue(made, leaf.path, to)
  if (named === 'panels') made = followedKeys(made, from, to)
  return made
}

/** Decking names panels by key too. */
function followedKeys(draft: Json, from: string, to: string): Json {
  const list = valueAt(draft, ['deckings'])
  if (!isList(list)) return draft
  return list.reduce<Json>((made, one, i) => {
    const panels = isObject(one) ? one.panels : undefined
    if (!isObject(panels) || !Object.hasOwn(panels, from)) return made
    const renamed = Object.entries(panels).map(([key, value]) => [key === from ? to : key, value])
    return withValue(made, ['deckings', i, 'panels'], Object.fromEntries(renamed))
  }, draft)
}

export interface Leaf {
  readonly path: Path
  readonly node: Node
  /** Undefined: the field may be left out, and is. */
  readonly value: Json | undefined
}

/** Every field that holds something by itself, with what the draft has there; of lists and records what is in them. */
export function leavesOf(node: Node, value: Json | undefined, path: readonly PathKey[] = []): Leaf[] {
  const under = (inner: Node, key: PathKey, of: Json | undefined): Leaf[] =>
    leavesOf(inner, of, [...path, key])
  switch (node.kind) {
    case 'object':
      return Object.entries(node.fields).flatMap(([key, field]) =>
        under(field, key, isObject(value) && Object.hasOwn(value, key) ? value[key] : undefined),
      )
    case 'variant': {
      const option = optionOf(node, value)
      return option ? leavesOf(option, value, path) : [{ path, node, value }]
    }
    case 'list':
      return isList(value) ? value.flatMap((one, i) => under(node.item, i, one)) : [{ path, node, value }]
    case 'tuple':
      return node.items.flatMap((item, i) => under(item, i, isList(value) ? value[i] : undefined))
    case 'record':
      return isObject(value)
        ? Object.entries(value).flatMap(([key, one]) => under(node.value, key, one))
        : [{ path, node, value }]
    default:
      return [{ path, node, value }]
  }
}
