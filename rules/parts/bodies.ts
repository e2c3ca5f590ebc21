/**
 * What each made part consists of: straight pieces of stock in the part's own frame (`rules/part-kinds.ts` says where that is).
 * Masses are computed from these and shapes are drawn from these, so neither can differ from the other. Pieces touch and never overlap.
 */
import type { BraceStock, Catalog, Extra, Frame, LegStock, Pad, Panel, Stock } from '../catalog/index.ts'
import { sectionProperties } from '../catalog/section-properties.ts'
import type { Vec3 } from '../dock.ts'
import { cornerBody, cornerPanelBody } from './corner-piece.ts'

export interface Piece {
  readonly stock: Stock
  readonly from: Vec3
  readonly to: Vec3
  /** Direction of the stock's height; its width is square to this and to its length. */
  readonly up: Vec3
  /**
   * Of ends that are not cut square: how much farther on each reaches for a meter of the stock's width (up × length), at `from` and at `to`.
   * Its length between the middles of its ends is that of its mass.
   */
  readonly miter?: readonly [from: number, to: number]
}

const UP: Vec3 = [0, 0, 1]
const ALONG: Vec3 = [1, 0, 0]

const stockOf = (catalog: Catalog, code: string): Stock => catalog.stock[code]!

/** Two side rails full length, end rails and cross members between them, four sleeves. */
export function frameBody(catalog: Catalog, frame: Frame): Piece[] {
  if (frame.turn) return cornerBody(catalog, frame)
  const rail = stockOf(catalog, frame.rail)
  const end = stockOf(catalog, frame.ends)
  const cross = stockOf(catalog, frame.cross.stock)
  const sleeve = stockOf(catalog, catalog.sleeve.stock)
  const railSize = sectionProperties(rail)
  const endSize = sectionProperties(end)
  const crossSize = sectionProperties(cross)
  const top = -catalog.decking.rise
  const y = frame.width / 2 - railSize.width / 2
  const inner = frame.width / 2 - railSize.width
  const pieces: Piece[] = []
  for (const side of [1, -1]) {
    const z = top - railSize.height / 2
    pieces.push({ stock: rail, from: [0, side * y, z], to: [frame.length, side * y, z], up: UP })
  }
  for (const x of [endSize.width / 2, frame.length - endSize.width / 2]) {
    const z = top - endSize.height / 2
    pieces.push({ stock: end, from: [x, -inner, z], to: [x, inner, z], up: UP })
  }
  for (let i = 1; i <= frame.cross.count; i++) {
    const x = (frame.length * i) / (frame.cross.count + 1)
    const z = top - railSize.height + crossSize.height / 2
    pieces.push({ stock: cross, from: [x, -inner, z], to: [x, inner, z], up: UP })
  }
  for (const x of [catalog.sleeve.along, frame.length - catalog.sleeve.along])
    for (const side of [1, -1]) {
      const across = side * (frame.width / 2 - catalog.sleeve.across)
      pieces.push({
        stock: sleeve,
        from: [x, across, top - catalog.sleeve.length],
        to: [x, across, top],
        up: ALONG,
      })
    }
  return pieces
}

/** One upright tube from its bottom: a leg or a post. */
export function tubeBody(
  catalog: Catalog,
  part: LegStock | Extract<Extra, { place: 'post' }>['posts'][number],
): Piece[] {
  return [{ stock: stockOf(catalog, part.stock), from: [0, 0, 0], to: [0, 0, part.length], up: ALONG }]
}

export function braceBody(catalog: Catalog, brace: BraceStock): Piece[] {
  return [
    {
      stock: stockOf(catalog, brace.stock),
      from: [-brace.end, 0, 0],
      to: [brace.holes + brace.end, 0, 0],
      up: UP,
    },
  ]
}

/** Plate, upturned edge of the same plate, socket for the leg. */
export function padBody(catalog: Catalog, pad: Pad): Piece[] {
  const { length, width, material } = pad.plate
  const plate: Stock = { shape: 'flat', width, height: pad.sole, material }
  const x = length / 2 - pad.sole / 2
  return [
    { stock: plate, from: [-length / 2, 0, pad.sole / 2], to: [length / 2, 0, pad.sole / 2], up: UP },
    { stock: plate, from: [x, 0, pad.sole], to: [x, 0, pad.lip], up: ALONG },
    {
      stock: stockOf(catalog, pad.socket.stock),
      from: [0, 0, pad.sole],
      to: [0, 0, pad.sole + pad.socket.height],
      up: ALONG,
    },
  ]
}

/** Height of a pad over its underside, m: what a brace must keep clear of. */
export const padHeight = (pad: Pad): number => Math.max(pad.lip, pad.sole + pad.socket.height)

/** Planks across the dock, those at the outer end cut back for the legs, on battens. */
export function panelBody(catalog: Catalog, panel: Panel): Piece[] {
  if (panel.turn) return cornerPanelBody(catalog, panel)
  const plank = stockOf(catalog, panel.plank.stock)
  const batten = stockOf(catalog, panel.batten.stock)
  const plankSize = sectionProperties(plank)
  const battenSize = sectionProperties(batten)
  const pieces: Piece[] = []
  const n = panel.plank.count
  for (let i = 0; i < n; i++) {
    const x =
      n === 1 ? 0 : -panel.length / 2 + plankSize.width / 2 + (i * (panel.length - plankSize.width)) / (n - 1)
    const notched =
      panel.notch !== undefined && x + plankSize.width / 2 > panel.length / 2 - panel.notch.along
    const half = panel.width / 2 - (notched ? panel.notch!.across : 0)
    const z = -plankSize.height / 2
    pieces.push({ stock: plank, from: [x, -half, z], to: [x, half, z], up: UP })
  }
  for (let i = 0; i < panel.batten.count; i++) {
    const y = panel.width * ((i + 0.5) / panel.batten.count - 0.5)
    const z = -plankSize.height - battenSize.height / 2
    pieces.push({
      stock: batten,
      from: [-panel.batten.length / 2, y, z],
      to: [panel.batten.length / 2, y, z],
      up: UP,
    })
  }
  return pieces
}

export function hingeBarBody(catalog: Catalog): Piece[] {
  const half = catalog.hinge.bar.length / 2
  return [{ stock: stockOf(catalog, catalog.hinge.bar.stock), from: [0, -half, 0], to: [0, half, 0], up: UP }]
}

/** kg, from area, length and density. */
export function massOf(catalog: Catalog, pieces: readonly Piece[]): number {
  let mass = 0
  for (const { stock, from, to } of pieces) {
    const long = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])
    mass += sectionProperties(stock).area * long * catalog.materials[stock.material]!.density
  }
  return mass
}
