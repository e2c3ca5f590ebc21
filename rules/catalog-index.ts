/** A Catalog made ready to ask: lookups, rule values, the row of each part with its unit mass. */
import type {
  Bolt,
  BraceStock,
  Catalog,
  DeckingChoice,
  Extra,
  Frame,
  LegStock,
  Pad,
  Panel,
  RuleName,
} from './catalog/index.ts'
import { sectionProperties } from './catalog/section-properties.ts'
import type { PartKind } from './dock.ts'
import { type Once, onceOf } from './memo.ts'
import { grams } from './numbers.ts'
import {
  braceBody,
  frameBody,
  hingeBarBody,
  massOf,
  type Piece,
  padBody,
  panelBody,
  tubeBody,
} from './parts/bodies.ts'

/** What one part is, to a parts list. */
export interface PartType {
  readonly kind: PartKind
  readonly code: string
  readonly name: string
  readonly bag: string | null
  /** Place in the parts list: the catalog's order. */
  readonly index: number
  /** Unit mass, whole grams. */
  readonly grams: number
  /** Minor units. */
  readonly price: number
}

export interface FrameShape {
  /** Deck surface to the rails' underside, m. */
  readonly depth: number
  /** Deck surface to the lowest of rails and sleeves, m. */
  readonly lowest: number
}

/** A catalog made ready to be asked: its lists by code, its rules with defaults filled in. Read-only. */
export interface Shop {
  readonly catalog: Catalog
  readonly rules: Readonly<Record<Exclude<RuleName, 'scour'>, number>>
  readonly frames: ReadonlyMap<string, Frame>
  /** Shortest first. */
  readonly legs: readonly LegStock[]
  readonly braces: readonly BraceStock[]
  readonly pads: ReadonlyMap<string, Pad>
  readonly extras: ReadonlyMap<string, Extra>
  readonly panels: ReadonlyMap<string, Panel>
  readonly deckings: ReadonlyMap<string, DeckingChoice>
  /** All that a parts list can hold, in its order. */
  readonly parts: readonly PartType[]
  /** Those of which a shop has one. */
  readonly types: Readonly<Record<Bolt['kind'] | SingleType, PartType>>
  /** The row of a code and kind; a code of this catalog. */
  type(kind: PartKind, code: string): PartType
  shape(frame: Frame): FrameShape
  /** Half the height of a brace's tube, m. */
  tubeHalf(brace: BraceStock): number
  /** What others work out of the same catalog: bars and strengths, shapes, lengths, the check code. */
  readonly once: Once<Shop>
}

type SingleType = 'clamp' | 'bracket' | 'tie' | 'hingeBar' | 'hingePin' | 'deckClip' | 'legCap' | 'sleeveCap'

/**
 * The one thing that a module of the engine remembers. A host calls `derive(design, catalog)` at every change with the catalog that it has:
 * there is nothing else to keep a shop on, and to make one anew takes longer than to place a dock. Catalogs are read-only.
 */
const shops = new WeakMap<Catalog, Shop>()

/** The same shop each time for the same catalog object. */
export function shopOf(catalog: Catalog): Shop {
  const known = shops.get(catalog)
  if (known) return known
  const shop = makeShop(catalog)
  shops.set(catalog, shop)
  return shop
}

/** Rules that came after version 1 of the catalog: a shop's file that does not state them goes by these, and keeps its check code. */
const WHERE_ABSENT = { waveClearance: 0.15, boatStepMax: 0.6, fitChanceMin: 0.8 } as const

function makeShop(catalog: Catalog): Shop {
  const rules = {
    ...WHERE_ABSENT,
    ...Object.fromEntries(
      Object.entries(catalog.rules).map(([name, rule]) => [name, (rule as { value: number }).value]),
    ),
  } as Shop['rules']
  const { rise } = catalog.decking
  const shapes = new Map(
    catalog.frames.map((frame): [Frame, FrameShape] => {
      const rail = sectionProperties(catalog.stock[frame.rail]!).height
      return [frame, { depth: rise + rail, lowest: rise + Math.max(rail, catalog.sleeve.length) }]
    }),
  )
  const halves = new Map(
    catalog.braces.map((b): [BraceStock, number] => [
      b,
      sectionProperties(catalog.stock[b.stock]!).height / 2,
    ]),
  )
  const parts = partTypes(catalog)
  // A shop may use one code for two kinds; a row is a code and kind.
  const byCode = new Map<PartKind, Map<string, PartType>>()
  for (const part of parts) {
    const codes = byCode.get(part.kind) ?? new Map<string, PartType>()
    byCode.set(part.kind, codes.set(part.code, part))
  }
  const type = (kind: PartKind, code: string): PartType => byCode.get(kind)!.get(code)!
  const bolts = Object.fromEntries(
    catalog.hardware.map(({ kind, code }) => [kind, type(kind, code)]),
  ) as Record<Bolt['kind'], PartType>
  const { hinge, decking, caps } = catalog
  const shop: Shop = {
    catalog,
    rules,
    frames: new Map(catalog.frames.map((f) => [f.code, f])),
    legs: [...catalog.legs].sort((a, b) => a.length - b.length),
    braces: [...catalog.braces].sort((a, b) => a.holes - b.holes),
    pads: new Map(catalog.pads.map((p) => [p.code, p])),
    extras: new Map(catalog.extras.map((e) => [e.code, e])),
    panels: new Map(decking.panels.map((p) => [p.code, p])),
    deckings: new Map(catalog.deckings?.map((d) => [d.code, d])),
    parts,
    types: {
      ...bolts,
      clamp: type('brace-clamp', catalog.clamp.code),
      bracket: type('hook-bracket', catalog.hooks.bracket.code),
      tie: type('accessory', catalog.tie.code),
      hingeBar: type('hinge-bar', hinge.bar.code),
      hingePin: type('hinge-pin', hinge.pin.code),
      deckClip: type('deck-clip', decking.clip.code),
      legCap: type('leg-cap', caps.leg.code),
      sleeveCap: type('sleeve-cap', caps.sleeve.code),
    },
    type,
    shape: (frame) => shapes.get(frame)!,
    tubeHalf: (brace) => halves.get(brace)!,
    once: onceOf(() => shop),
  }
  return shop
}

/** The panel that a frame carries in the decking asked for: its own where none is, or one that the catalog does not have. */
export function panelFor(shop: Shop, finish: string | undefined, { panel }: Frame): Panel {
  const instead = finish === undefined ? undefined : shop.deckings.get(finish)?.panels
  const laid = instead && Object.hasOwn(instead, panel) ? instead[panel]! : panel
  return shop.panels.get(laid)!
}

interface Item {
  readonly code: string
  readonly name: string
  readonly price: number
  readonly mass?: number | undefined
  readonly bag?: string | undefined
}

function partTypes(catalog: Catalog): PartType[] {
  const types: PartType[] = []
  const known = new Set<string>()
  const add = (kind: PartKind, item: Item, body?: () => Piece[]): void => {
    // The same part in two extras is one row.
    const row = `${kind}\n${item.code}`
    if (known.has(row)) return
    known.add(row)
    const mass = item.mass ?? (body ? massOf(catalog, body()) : 0)
    types.push({
      kind,
      code: item.code,
      name: item.name,
      bag: item.bag ?? null,
      index: types.length,
      grams: grams(mass),
      price: item.price,
    })
  }
  for (const frame of catalog.frames) add('frame', frame, () => frameBody(catalog, frame))
  for (const leg of catalog.legs) add('leg', leg, () => tubeBody(catalog, leg))
  for (const brace of catalog.braces) add('brace', brace, () => braceBody(catalog, brace))
  for (const pad of catalog.pads) add('foot-pad', pad, () => padBody(catalog, pad))
  for (const panel of catalog.decking.panels) add('deck-panel', panel, () => panelBody(catalog, panel))
  for (const bolt of catalog.hardware) add(bolt.kind, bolt)
  add('brace-clamp', catalog.clamp)
  add('hook-bracket', catalog.hooks.bracket)
  add('accessory', catalog.tie)
  add('hinge-bar', catalog.hinge.bar, () => hingeBarBody(catalog))
  add('hinge-pin', catalog.hinge.pin)
  add('deck-clip', catalog.decking.clip)
  add('leg-cap', catalog.caps.leg)
  add('sleeve-cap', catalog.caps.sleeve)
  for (const extra of catalog.extras) {
    for (const part of extra.parts) add(part.kind, part)
    if (extra.place === 'post')
      for (const post of extra.posts) add('anchor-post', post, () => tubeBody(catalog, post))
  }
  return types
}
