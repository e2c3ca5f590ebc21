/**
 * A price list taken into a catalog. A row whose code is there already changes that part's name, price and weight; any other is a part of its
 * own, made like the one that is nearest to it in size. What the list does not say and a part must have is taken from that one, and told.
 */
import { type Catalog, demoCatalog, parseCatalog } from '../../../rules/index.ts'
import type { PathKey } from '../../../rules/issue.ts'
import { isList, isObject, type Json, type JsonObject, type Path, valueAt, withValue } from '../draft.ts'
import { fitBraces } from './fit-braces.ts'
import { makeDeckings } from './make-deckings.ts'
import { makeExtra, makeService } from './make-extra.ts'
import { makeFrame, type PanelName, tidyPanels } from './make-frame.ts'
import { makeBrace, makeLeg, makePost } from './make-long.ts'
import { makePad } from './make-pad.ts'
import type { PriceRow } from './read-row.ts'
import { isShare, isSlot, SLOTS, type Slot } from './row-kinds.ts'

export const TAKEN_LISTS = ['frames', 'legs', 'braces', 'deckings', 'extras', 'services'] as const
export type TakenList = (typeof TAKEN_LISTS)[number]

export type LeftWhy =
  | 'no-name'
  | 'no-price'
  | 'price'
  | 'no-length'
  | 'no-size'
  | 'length-taken'
  | 'no-panel'
  | 'no-frame'
  | 'no-share'
  | 'code-twice'
  | 'no-post'
  | 'refused'

export interface Taken {
  readonly catalog: Catalog
  /** What the list does not say: taken from a part that is alike. */
  readonly guessed: readonly Path[]
  readonly left: readonly {
    readonly row: PriceRow
    readonly why: LeftWhy
    /** Of one that is refused, what no catalog can have. */
    readonly detail: string
  }[]
  /** Of each row that was taken, by its line, what became of it. */
  readonly did: Readonly<Record<number, 'changed' | 'added'>>
}

/** A guess by what it is of: entries may change their places before all is done. */
export interface Guess {
  readonly list: Path
  readonly code: string
  readonly rest: readonly PathKey[]
}
export type Made =
  | { readonly catalog: Catalog; readonly guesses: readonly Guess[] }
  | { readonly left: LeftWhy }

export interface TakeOptions {
  /** Lists of which only what the rows give stays. */
  readonly replace: readonly TakenList[]
  readonly panelName: PanelName
}

/** Panels come after the frames that they are for. */
const LAST = ['deck-panel'] as const

/** Never throws; what cannot be taken is left, with the reason. The catalog must be a valid one. */
export function takePriceList(catalog: Catalog, rows: readonly PriceRow[], options: TakeOptions): Taken {
  const taken = takeRows(catalog, rows, options, () => null)
  // Which of the rows is to blame is asked only where one is: each asks for the whole catalog to be read.
  return refusalOf(taken.catalog) === null ? taken : takeRows(catalog, rows, options, refusalOf)
}

function refusalOf(catalog: Catalog): string | null {
  const parsed = parseCatalog(catalog)
  return parsed.ok ? null : (parsed.issues[0]?.message ?? '')
}

function takeRows(
  catalog: Catalog,
  rows: readonly PriceRow[],
  options: TakeOptions,
  refused: (made: Catalog) => string | null,
): Taken {
  const left: Taken['left'][number][] = []
  const did: Record<number, 'changed' | 'added'> = {}
  const guesses: Guess[] = []
  const seen = new Set<string>()
  const given = new Map<TakenList, string[]>()
  const pads = new Set<string>()
  const usable = rows.filter(({ kind }) => kind !== 'leave')
  const panels = options.replace.includes('deckings') ? panelsIn(catalog, usable) : []
  const laid: PriceRow[] = []
  const isLast = ({ kind }: PriceRow): boolean => LAST.some((one) => one === kind)
  let now = catalog
  for (const row of [...usable.filter((one) => !isLast(one)), ...usable.filter(isLast)]) {
    const key = `${isSlot(row.kind) ? row.kind : ''} ${row.code}`
    const fault = row.fault ?? (seen.has(key) ? 'code-twice' : null)
    if (!fault && panels.includes(row)) {
      seen.add(key)
      laid.push(row)
      continue
    }
    if (fault) {
      left.push({ row, why: fault, detail: '' })
      continue
    }
    const known = isSlot(row.kind) || isShare(row.kind) ? null : placeOf(now, row.code)
    const made = known
      ? { catalog: withFacts(now, known, row), guesses: [] }
      : row.kind === 'foot-pad'
        ? makePad(now, row, pads)
        : make(now, row, options, catalog)
    if ('left' in made) {
      left.push({ row, why: made.left, detail: '' })
      continue
    }
    const refusal = refused(made.catalog)
    if (refusal !== null) {
      left.push({ row, why: 'refused', detail: refusal })
      continue
    }
    seen.add(key)
    did[row.at] = known || isSlot(row.kind) || isShare(row.kind) ? 'changed' : 'added'
    if (row.kind === 'foot-pad') pads.add(row.code)
    now = made.catalog
    guesses.push(...made.guesses)
    const list = listOf(row)
    if (list) given.set(list, [...(given.get(list) ?? []), row.code])
  }
  for (const [list, codes] of given) if (options.replace.includes(list)) now = onlyThese(now, list, codes)
  if (options.replace.includes('frames') && given.has('frames')) now = tidyPanels(now)
  // Frames are there by now, which braces and panels are for.
  now = fitBraces(now, new Set(guesses.filter(({ list }) => list[0] === 'braces').map(({ code }) => code)))
  if (laid.length > 0) {
    const made = makeDeckings(now, laid, options.panelName)
    const refusal = refused(made.catalog)
    left.push(
      ...(refusal === null ? made.left : laid).map((row) => ({
        row,
        why: refusal === null ? ('no-frame' as const) : ('refused' as const),
        detail: refusal ?? '',
      })),
    )
    if (refusal === null) {
      for (const row of laid) if (!made.left.includes(row)) did[row.at] = 'added'
      now = made.catalog
      guesses.push(...made.guesses)
    }
  }
  return { catalog: now, guessed: guesses.flatMap((guess) => pathOf(now, guess)), left, did }
}

/** Rows of deck panels that the catalog has not: they are laid together, material by material. */
function panelsIn(catalog: Catalog, rows: readonly PriceRow[]): readonly PriceRow[] {
  const seen = new Set<string>()
  return rows.filter((row) => {
    const isPanel =
      row.kind === 'deck-panel' &&
      row.fault === null &&
      row.measures.length >= 2 &&
      !seen.has(row.code) &&
      placeOf(catalog, row.code) === null
    if (isPanel) seen.add(row.code)
    return isPanel
  })
}

function listOf({ kind }: PriceRow): TakenList | null {
  const lists = {
    frame: 'frames',
    leg: 'legs',
    brace: 'braces',
    extra: 'extras',
    service: 'services',
  } as const
  return Object.hasOwn(lists, kind) ? lists[kind as keyof typeof lists] : null
}

function make(now: Catalog, row: PriceRow, { replace, panelName }: TakeOptions, before: Catalog): Made {
  if (isSlot(row.kind)) return { catalog: withFacts(now, slotPath(now, row.kind), row, true), guesses: [] }
  switch (row.kind) {
    case 'frame':
      return makeFrame(now, row, panelName)
    case 'leg':
      return makeLeg(now, row, replace.includes('legs') ? before.legs : [])
    case 'brace':
      return makeBrace(now, row)
    case 'anchor-post':
      return makePost(now, row)
    case 'deck-panel':
      return panelPrice(now, row)
    case 'service':
      return makeService(now, row)
    case 'zone':
      return makeZone(now, row)
    case 'tax':
    case 'deposit':
      return withShare(now, row.kind, row)
    default:
      return makeExtra(now, row, before.extras)
  }
}

/** A shop whose list has zones goes by them: bands that are still the demo's would be charged besides. */
function makeZone(catalog: Catalog, { code, name, price }: PriceRow): Made {
  const { freight, ...rest } = catalog.quote ?? {}
  const theirs = JSON.stringify(freight) === JSON.stringify(demoCatalog.quote?.freight)
  const quote = theirs || !freight ? rest : { ...rest, freight }
  const zones = [...(quote.zones ?? []), { code, name, price: price ?? 0 }]
  return { catalog: { ...catalog, quote: { ...quote, zones } }, guesses: [] }
}

function withShare(catalog: Catalog, kind: 'tax' | 'deposit', { name, share }: PriceRow): Made {
  if (share === null) return { left: 'no-share' }
  if (kind === 'deposit')
    return { catalog: { ...catalog, shop: { ...catalog.shop, deposit: share } }, guesses: [] }
  // `Sales tax 6.25 % on goods`: the name is what stands before the figure.
  const called = name.replace(/[\d.,]+\s*%.*$/, '').replace(/[\s:,-]+$/, '')
  const tax = { ...catalog.quote?.tax, name: called || name, share }
  return { catalog: { ...catalog, quote: { ...catalog.quote, tax } }, guesses: [] }
}

function slotPath({ hardware }: Catalog, slot: Slot): Path {
  return SLOTS[slot] ?? ['hardware', hardware.findIndex(({ kind }) => kind === slot)]
}

/** Where a part with a price has this code; of an extra of one part that part. */
function placeOf(catalog: Catalog, code: string): Path | null {
  const extra = catalog.extras.findIndex(
    (one) => one.code === code && one.parts.length === 1 && one.place === 'edge',
  )
  if (extra >= 0) return ['extras', extra, 'parts', 0]
  const find = (value: Json, path: readonly PathKey[]): Path | null => {
    if (isList(value))
      return first(
        value.map((one, i) => [one, i] as const),
        path,
      )
    if (!isObject(value)) return null
    if (value.code === code && typeof value.price === 'number') return path
    return first(
      Object.entries(value).map(([key, one]) => [one, key] as const),
      path,
    )
  }
  const first = (entries: readonly (readonly [Json, PathKey])[], path: readonly PathKey[]): Path | null => {
    for (const [one, key] of entries) {
      const found = find(one, [...path, key])
      if (found) return found
    }
    return null
  }
  return find(catalog as unknown as JsonObject, [])
}

/** Name, price and weight of a row; with the code too where the part takes the row's. */
function withFacts(
  catalog: Catalog,
  path: Path,
  { code, name, price, mass }: PriceRow,
  coded = false,
): Catalog {
  let made: Json = catalog as unknown as JsonObject
  const put = (key: string, value: Json | null): void => {
    if (value !== null) made = withValue(made, [...path, key], value)
  }
  if (coded) put('code', code)
  // A list without names has codes in their place.
  if (name !== code) put('name', name)
  put('price', price)
  put('mass', mass)
  if (path[0] === 'extras' && path[2] === 'parts' && name !== code && isSingle(catalog, path))
    made = withValue(made, [...path.slice(0, 2), 'name'], name)
  return made as unknown as Catalog
}

const isSingle = (catalog: Catalog, path: Path): boolean => {
  const extra = catalog.extras[Number(path[1])]
  return extra?.place === 'edge' && extra.parts.length === 1
}

/** Panels are told apart by their size, within two centimeters: a joint's width. */
function panelPrice(catalog: Catalog, row: PriceRow): Made {
  const [a, b] = row.measures
  if (a === undefined || b === undefined) return { left: 'no-size' }
  const near = (x: number, y: number): boolean => Math.abs(x - y) < 0.02
  const own = new Set(catalog.frames.map(({ panel }) => panel))
  const i = catalog.decking.panels.findIndex(
    ({ code, length, width }) =>
      own.has(code) && ((near(length, a) && near(width, b)) || (near(length, b) && near(width, a))),
  )
  return i < 0
    ? { left: 'no-panel' }
    : { catalog: withFacts(catalog, ['decking', 'panels', i], row), guesses: [] }
}

/** Posts, and what no row gave a price but a dock needs, stay. */
function onlyThese(catalog: Catalog, list: TakenList, codes: readonly string[]): Catalog {
  const given = new Set(codes)
  const stays = ({ code }: { readonly code: string }): boolean => given.has(code)
  switch (list) {
    case 'extras':
      return {
        ...catalog,
        extras: catalog.extras.filter((one) => one.place === 'post' || stays(one) || one.parts.some(stays)),
      }
    case 'services': {
      const services = (catalog.services ?? []).filter(stays)
      const { shop } = catalog
      const brings = shop?.brings?.filter((code) => given.has(code))
      return { ...catalog, services, ...(shop && brings && { shop: { ...shop, brings } }) }
    }
    case 'deckings':
      return catalog
    default:
      return { ...catalog, [list]: catalog[list].filter(stays) }
  }
}

function pathOf(catalog: Catalog, { list, code, rest }: Guess): Path[] {
  const entries = valueAt(catalog as unknown as JsonObject, list)
  const i = isList(entries) ? entries.findIndex((one) => isObject(one) && one.code === code) : -1
  return i < 0 ? [] : [[...list, i, ...rest]]
}
