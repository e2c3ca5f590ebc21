/** The shape of every part of a catalog, each made once. */
import { bodies, type Catalog, type PartKind, shopOf } from '../../rules/index.ts'
import { legStock } from '../../rules/parts/clamp-plates.ts'
import type { Solid } from '../types.ts'
import { augerBodies } from './augers.ts'
import { hardwareBodies } from './bolts.ts'
import { capBodies } from './caps.ts'
import { braceClampBodies, postClampBodies } from './clamps.ts'
import { accessoryBodies, bumperBodies, deckClipBodies } from './edge-parts.ts'
import { fenderBoardBodies, fenderBoltBodies } from './fender-boards.ts'
import { hingePinBodies, hookBracketBodies, tiePlateBodies } from './joints.ts'
import { type Body, solidFrom } from './mesh.ts'
import { pieceBodies } from './pieces.ts'

/** One key for each row of a parts list: a shop may use one code for two kinds. */
export const partKeyOf = (kind: PartKind, code: string): string => `${kind}\n${code}`

type ExtraPart = Catalog['extras'][number]['parts'][number]

/** Those that were asked for so far. */
const solidsAsked = (): Map<string, Solid> => new Map()

/**
 * The solid of a part in its own frame. The same object each time for the same catalog object (catalogs are read-only).
 * Throws where the catalog has no such part: placements name none.
 */
export function solidOf(kind: PartKind, code: string, catalog: Catalog): Solid {
  const solids = shopOf(catalog).once(solidsAsked)
  const key = partKeyOf(kind, code)
  const known = solids.get(key)
  if (known) return known
  const parts = SOLIDS[kind](catalog, code, kind)
  if (!parts)
    throw new Error(`solidOf: no ${kind} ${JSON.stringify(code)} in catalog ${JSON.stringify(catalog.id)}`)
  const solid = solidFrom(parts, kind === 'deck-panel' ? deckColor(catalog, code) : undefined)
  solids.set(key, solid)
  return solid
}

/** Of the decking that this panel is laid for; undefined for one that frames carry anyway: that looks as its material does. */
const deckColor = ({ deckings = [] }: Catalog, panel: string): string | undefined =>
  deckings.find(({ panels }) => Object.values(panels).includes(panel))?.color

/** Planks in the color of their decking; what they lie on keeps its own. */
function panelBodies(catalog: Catalog, panel: Catalog['decking']['panels'][number]): Body[] {
  const made = pieceBodies(catalog, bodies.panelBody(catalog, panel))
  return deckColor(catalog, panel.code) === undefined
    ? made
    : made.map((body, i) => (i < panel.plank.count ? { ...body, look: 'decking' } : body))
}

/** Where a kind's items stand in a catalog, and what one of them is made of. */
type Made = (catalog: Catalog, code: string, kind: PartKind) => Body[] | null

const from =
  <T extends { readonly code: string }>(
    list: (catalog: Catalog, kind: PartKind) => readonly T[],
    make: (catalog: Catalog, item: T) => Body[],
  ): Made =>
  (catalog, code, kind) => {
    const item = list(catalog, kind).find((one) => one.code === code)
    return item ? make(catalog, item) : null
  }

/** Of stock: drawn from the pieces that its mass is worked out from. */
const stock = <T extends { readonly code: string }>(
  list: (catalog: Catalog) => readonly T[],
  body: (catalog: Catalog, item: T) => readonly bodies.Piece[],
): Made => from(list, (catalog, item) => pieceBodies(catalog, body(catalog, item)))

const extra = (make: (catalog: Catalog, part: ExtraPart) => Body[]): Made =>
  from(({ extras }, kind) => extras.flatMap(({ parts }) => parts.filter((part) => part.kind === kind)), make)

const bolt = from(({ hardware }, kind) => hardware.filter((one) => one.kind === kind), hardwareBodies)
const accessory = extra((_, part) => accessoryBodies(part))
const tie = from(({ tie }) => [tie], tiePlateBodies)

const SOLIDS: Readonly<Record<PartKind, Made>> = {
  frame: stock(({ frames }) => frames, bodies.frameBody),
  leg: stock(({ legs }) => legs, bodies.tubeBody),
  'foot-pad': stock(({ pads }) => pads, bodies.padBody),
  'pad-bolt': bolt,
  'leg-cap': from(
    ({ caps }) => [caps.leg],
    (catalog, cap) => capBodies(cap, legStock(catalog)),
  ),
  'sleeve-cap': from(
    ({ caps }) => [caps.sleeve],
    (catalog, cap) => capBodies(cap, catalog.stock[catalog.sleeve.stock]!),
  ),
  'set-bolt': bolt,
  'hook-bracket': from(({ hooks }) => [hooks.bracket], hookBracketBodies),
  'hook-bolt': bolt,
  'hinge-bar': stock(({ hinge }) => [hinge.bar], bodies.hingeBarBody),
  'bar-bolt': bolt,
  'hinge-pin': from(({ hinge }) => [hinge.pin], hingePinBodies),
  'pin-bolt': bolt,
  brace: stock(({ braces }) => braces, bodies.braceBody),
  'brace-clamp': from(({ clamp }) => [clamp], braceClampBodies),
  'brace-bolt': bolt,
  'deck-panel': from(({ decking }) => decking.panels, panelBodies),
  'deck-clip': from(({ decking }) => [decking.clip], deckClipBodies),
  bumper: extra((_, part) => bumperBodies(part)),
  'anchor-post': stock(
    ({ extras }) => extras.flatMap((one) => (one.place === 'post' ? one.posts : [])),
    bodies.tubeBody,
  ),
  auger: extra(augerBodies),
  'post-clamp': extra(postClampBodies),
  'fender-board': extra((_, board) => fenderBoardBodies(board)),
  'fender-bolt': extra(fenderBoltBodies),
  accessory: (...asked) => tie(...asked) ?? accessory(...asked),
}
