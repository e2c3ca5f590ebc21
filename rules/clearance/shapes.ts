/** What each part is measured as: its pieces as full cylinders and boxes (a tube as if it were not hollow), in its own frame. */
import type { Catalog, Stock } from '../catalog/index.ts'
import { sectionProperties } from '../catalog/section-properties.ts'
import type { Vec3 } from '../dock.ts'
import { factsOf, type KindsWith, type PartKind } from '../part-kinds.ts'
import * as bodies from '../parts/bodies.ts'
import { braceClampPlates, clampPlate, legStock } from '../parts/clamp-plates.ts'
import { add, cross, length, scale, sub } from '../vec.ts'
import { type Box, boxBetween, type Cylinder } from './convex.ts'

/** Parts whose clearances are told. */
export type MeasuredKind = KindsWith<'measured', 'to-parts' | 'to-all'>
export const isMeasured = (kind: PartKind): kind is MeasuredKind => factsOf(kind).measured !== null

export interface PartShape {
  readonly shape: Cylinder | Box
  /** A frame's sleeve: legs go through it. */
  readonly sleeve: boolean
}

type Piece = ReturnType<typeof bodies.frameBody>[number]

const isRound = (stock: Stock): boolean => stock.shape === 'round-tube' || stock.shape === 'round-bar'

/** A strip's ends are off those of its piece by so much at the most, m. */
const STEP = 0.004

/** A piece that is not cut square as strips that are, side by side. */
function inStrips(piece: Piece): readonly Piece[] {
  const { stock, from, to, up, miter } = piece
  if (!miter) return [piece]
  const { width, height } = sectionProperties(stock)
  const run = sub(to, from)
  const axis = scale(run, 1 / length(run))
  const wide = cross(up, axis)
  const slope = Math.max(Math.abs(miter[0]), Math.abs(miter[1]))
  const n = Math.max(1, Math.ceil((width * slope) / (2 * STEP)))
  return Array.from({ length: n }, (_, i): Piece => {
    const x = width * ((i + 0.5) / n - 0.5)
    const end = (base: Vec3, k: 0 | 1): Vec3 => add(base, add(scale(wide, x), scale(axis, miter[k] * x)))
    const strip: Stock = { shape: 'flat', width: width / n, height, material: stock.material }
    return { stock: strip, from: end(from, 0), to: end(to, 1), up }
  })
}

function pieceShape({ stock, from, to, up }: Piece): Cylinder | Box {
  const { width, height } = sectionProperties(stock)
  const run = sub(to, from)
  const long = length(run)
  const axis = scale(run, 1 / long)
  const middle = scale(add(from, to), 0.5)
  if (isRound(stock)) return { shape: 'cylinder', middle, axis, half: long / 2, radius: width / 2 }
  const wide = cross(up, axis)
  return { shape: 'box', middle, edges: [scale(run, 0.5), scale(wide, width / 2), scale(up, height / 2)] }
}

/** Shapes of one part; a frame's sleeves come last, as `frameBody` has them. Throws where the catalog has no such part. */
export function shapesOf(kind: MeasuredKind, code: string, catalog: Catalog): PartShape[] {
  const find = <T extends { readonly code: string }>(list: readonly T[]): T => {
    const item = list.find((i) => i.code === code)
    if (!item)
      throw new Error(`shapesOf: no ${kind} ${JSON.stringify(code)} in catalog ${JSON.stringify(catalog.id)}`)
    return item
  }
  const pieces = (list: readonly Piece[]): PartShape[] =>
    list
      .filter(({ from, to }) => length(sub(to, from)) > 1e-9)
      .flatMap(inStrips)
      .map((piece) => ({ shape: pieceShape(piece), sleeve: false }))
  switch (kind) {
    case 'frame': {
      const all = pieces(bodies.frameBody(catalog, find(catalog.frames)))
      return all.map(({ shape }, i) => ({ shape, sleeve: i >= all.length - 4 }))
    }
    case 'leg':
      return pieces(bodies.tubeBody(catalog, find(catalog.legs)))
    case 'anchor-post':
      return pieces(
        bodies.tubeBody(catalog, find(catalog.extras.flatMap((e) => (e.place === 'post' ? e.posts : [])))),
      )
    case 'foot-pad':
      return pieces(bodies.padBody(catalog, find(catalog.pads)))
    case 'brace':
      return pieces(bodies.braceBody(catalog, find(catalog.braces)))
    case 'deck-panel':
      return pieces(bodies.panelBody(catalog, find(catalog.decking.panels)))
    case 'fender-board': {
      const { size } = find(catalog.extras.flatMap(({ parts }) => parts.filter((part) => part.kind === kind)))
      const [out, along, high] = size
      return [{ shape: boxBetween([0, -along / 2, -high], [out, along / 2, 0]), sleeve: false }]
    }
    case 'brace-clamp': {
      const tube = legStock(catalog)
      const half = sectionProperties(tube).width / 2 + clampPlate(catalog)
      const z = catalog.clamp.height / 2
      const collar: Cylinder | Box = isRound(tube)
        ? { shape: 'cylinder', middle: [0, 0, 0], axis: [0, 0, 1], half: z, radius: half }
        : boxBetween([-half, -half, -z], [half, half, z])
      return [collar, ...braceClampPlates(catalog).map(([a, b]) => boxBetween(a, b))].map((shape) => ({
        shape,
        sleeve: false,
      }))
    }
  }
}
