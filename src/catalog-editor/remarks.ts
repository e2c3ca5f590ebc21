/** What a shop will want to look at in a catalog that is right in itself: what is still the demo's, and what leaves a dock without a part. */
import type { Catalog } from '../../rules/index.ts'
import { changesBetween } from './changes.ts'
import { isObject, type Json, type JsonObject, type Path } from './draft.ts'
import { CATALOG_FORM, leavesOf, SECTION_NAMES, type SectionName, sectionOf } from './form/catalog-form.ts'

export type Remark =
  /** So many prices of a section are still those of the demo shop. */
  | {
      readonly key: 'demo-prices'
      readonly section: SectionName
      readonly count: number
      readonly path: Path
    }
  /** No brace is for the leg spacing of a frame. */
  | {
      readonly key: 'no-brace'
      readonly section: 'braces'
      readonly frame: string
      readonly spacing: number
      readonly path: Path
    }
  /** Legs of this length are to be braced and no brace is for them. */
  | {
      readonly key: 'no-brace-for-leg'
      readonly section: 'braces'
      readonly length: number
      readonly path: Path
    }
  | {
      readonly key: 'still-demo-name' | 'demo-contact'
      readonly section: 'shop'
      readonly path: Path
    }
  /** A term of its quotes is the demo shop's. */
  | { readonly key: 'demo-terms'; readonly section: 'prices'; readonly path: Path }

export function remarksOn(catalog: Catalog, demo: Catalog): Remark[] {
  return [
    ...shopRemarks(catalog, demo),
    ...spokenRemarks(catalog, demo),
    ...priceRemarks(catalog, demo),
    ...braceRemarks(catalog),
  ]
}

const shopRemarks = (catalog: Catalog, demo: Catalog): Remark[] =>
  catalog.name === demo.name || catalog.id === demo.id
    ? [{ key: 'still-demo-name', section: 'shop', path: [catalog.name === demo.name ? 'name' : 'id'] }]
    : []

/** Customers would call the demo shop, or be held to what it asks. */
function spokenRemarks(catalog: Catalog, demo: Catalog): Remark[] {
  const contact = (['phone', 'mail', 'web'] as const).find(
    (key) => catalog.shop?.[key] !== undefined && catalog.shop[key] === demo.shop?.[key],
  )
  const theirs = new Set(demo.quote?.terms)
  const term = (catalog.quote?.terms ?? []).findIndex((one) => theirs.has(one))
  return [
    ...(contact ? [{ key: 'demo-contact', section: 'shop', path: ['shop', contact] } as const] : []),
    ...(term < 0 ? [] : [{ key: 'demo-terms', section: 'prices', path: ['quote', 'terms', term] } as const]),
  ]
}

/** Prices of parts that the demo has too, and at the same price: one that nobody has touched is nobody's. */
function priceRemarks(catalog: Catalog, demo: Catalog): Remark[] {
  const [now, then] = [pricesIn(catalog), pricesIn(demo)]
  return SECTION_NAMES.flatMap((section): Remark[] => {
    const alike = [...now].filter(
      ([code, { price, path }]) => sectionOf(path) === section && then.get(code)?.price === price,
    )
    const [first] = alike
    return first ? [{ key: 'demo-prices', section, count: alike.length, path: first[1].path }] : []
  })
}

/** By the place's kind and the part's code. */
function pricesIn(catalog: Catalog): Map<string, { readonly price: number; readonly path: Path }> {
  const prices = new Map<string, { readonly price: number; readonly path: Path }>()
  const whole = catalog as unknown as JsonObject
  for (const { path, value } of leavesOf(CATALOG_FORM, whole)) {
    if (path.at(-1) !== 'price' || typeof value !== 'number') continue
    const owner = path
      .slice(0, -1)
      .reduce<Json | undefined>(
        (at, key) => (typeof at === 'object' && at !== null ? (at as JsonObject)[key] : undefined),
        whole,
      )
    const code = isObject(owner) && typeof owner.code === 'string' ? owner.code : path.slice(0, -1).join('.')
    prices.set(`${path[0]} ${code}`, { price: value, path })
  }
  return prices
}

function braceRemarks({ frames, sleeve, legs, rules, ...catalog }: Catalog): Remark[] {
  const braces = catalog.braces.filter(({ along }) => !along)
  const within = (value: number, { from, to }: { readonly from: number; readonly to: number }): boolean =>
    value >= from - 1e-6 && value <= to + 1e-6
  const widths = new Map(
    frames.filter(({ turn }) => turn === undefined).map(({ width, name }, i) => [width, { name, i }]),
  )
  const bare = [...widths].flatMap(([width, { name, i }]): Remark[] => {
    const spacing = width - 2 * sleeve.across
    return braces.some((brace) => within(spacing, brace.spacing))
      ? []
      : [{ key: 'no-brace', section: 'braces', frame: name, spacing, path: ['frames', i, 'width'] }]
  })
  const unbraced = legs.flatMap(({ length }, i): Remark[] =>
    length < rules.braceFrom.value - 1e-6 || braces.some((brace) => within(length, brace.legs))
      ? []
      : [{ key: 'no-brace-for-leg', section: 'braces', length, path: ['legs', i, 'length'] }],
  )
  return [...bare, ...unbraced]
}

/** So many places differ from the demo's, by section. */
export function changedIn(demo: JsonObject, draft: JsonObject): ReadonlyMap<SectionName, number> {
  const counts = new Map<SectionName, number>()
  for (const { path } of changesBetween(demo, draft)) {
    const section = sectionOf(path)
    if (section) counts.set(section, (counts.get(section) ?? 0) + 1)
  }
  return counts
}
