/** What is to be ordered again from the shop: wear and damage that somebody noted so, by part. */
import type { Catalog } from '../catalog/index.ts'
import { type PartType, type Shop, shopOf } from '../catalog-index.ts'
import type { PartKind } from '../part-kinds.ts'
import type { Entry, EntryOf, SeasonRecord } from './schema.ts'
import { latestSeason, type SeasonState, seasonState } from './state.ts'

/** One part to be ordered again, and why. */
export interface ReorderRow {
  readonly kind: PartKind
  /** Null where it is not known which of several the shop has. */
  readonly code: string | null
  /** The shop's name for it. */
  readonly name: string | null
  readonly count: number
  /** Minor units, each and all; null where the part is not known. */
  readonly unitPrice: number | null
  readonly price: number | null
  /** What was noted of them, in its order: where, what, pictures. */
  readonly wear: readonly EntryOf<'wear'>[]
}

/** What is to be ordered again after a season, with prices in minor units. */
export interface Reorder {
  readonly season: string
  readonly rows: readonly ReorderRow[]
  /** Of the rows that have a price, minor units. */
  readonly price: number
  readonly currency: string
}

/** Step under which it is written down that something was ordered. */
export const orderedKey = (wear: string): string => `${ORDERED}${wear}`
const ORDERED = 'ordered/'
/** Whether a step is of the work at the dock. */
export const isWork = (key: string): boolean => !key.startsWith(ORDERED)

/** What was noted as worn or lost and is to be ordered, less what is ordered already. @param season the latest in which something was noted so where absent */
export function reorder(record: SeasonRecord, catalog: Catalog, season?: string): Reorder {
  const shop = shopOf(catalog)
  const noted = (entry: Entry): boolean => entry.kind === 'wear' && entry.order
  const state = seasonState(record, season ?? latestSeason(record, noted))
  const rows = new Map<string, { kind: PartKind; code: string | null; wear: EntryOf<'wear'>[] }>()
  for (const wear of state.wear) {
    if (!wear.order || state.done.includes(orderedKey(wear.id))) continue
    const code = codeOf(wear, state, shop)
    const key = `${wear.part}\n${code ?? ''}`
    const row = rows.get(key) ?? { kind: wear.part, code, wear: [] }
    row.wear.push(wear)
    rows.set(key, row)
  }
  const order = (kind: PartKind, code: string | null): number =>
    partOf(shop, kind, code)?.index ?? shop.parts.length
  const list = [...rows.values()]
    .sort((a, b) => order(a.kind, a.code) - order(b.kind, b.code))
    .map(({ kind, code, wear }): ReorderRow => {
      const part = partOf(shop, kind, code)
      const count = wear.reduce((sum, one) => sum + one.count, 0)
      return {
        ...{ kind, code, count, wear, name: part?.name ?? null },
        unitPrice: part?.price ?? null,
        price: part ? part.price * count : null,
      }
    })
  return {
    season: state.season,
    rows: list,
    price: list.reduce((sum, { price }) => sum + (price ?? 0), 0),
    currency: catalog.currency,
  }
}

const partOf = ({ parts }: Shop, kind: PartKind, code: string | null): PartType | undefined =>
  parts.find((part) => part.kind === kind && part.code === code)

/** As it was noted; else the leg that stands there, or the brace that goes to it; else the only one of its kind. */
function codeOf({ part, code, leg }: EntryOf<'wear'>, { legs }: SeasonState, { parts }: Shop): string | null {
  if (code != null) return code
  if (part === 'leg' && leg !== undefined) {
    const own = legs.find((one) => one.leg.id === leg)
    return own?.set?.stock ?? own?.leg.planned?.stock ?? null
  }
  if (part === 'brace' && leg !== undefined) {
    const own = legs.find((one) => one.leg.id === leg)?.set?.braces ?? []
    const codes = new Set(own.map((brace) => brace.code))
    const [only] = codes
    if (only !== undefined && codes.size === 1) return only
  }
  const [one, ...more] = parts.filter(({ kind }) => kind === part)
  return one && more.length === 0 ? one.code : null
}
