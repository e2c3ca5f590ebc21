/** Made parts: straight pieces of stock exactly as `rules/parts/bodies.ts` has them, so that shape and mass cannot differ. */
import type { bodies, Catalog } from '../../rules/index.ts'
import { length, sub } from '../vec.ts'
import { lookOf } from './looks.ts'
import type { Body } from './mesh.ts'
import { prism } from './prism.ts'
import { circle, type Ring, rectangle, sidesOf } from './rings.ts'

type Piece = ReturnType<typeof bodies.frameBody>[number]

function pieceBody(catalog: Catalog, { stock, from, to, up, miter }: Piece): Body {
  const look = lookOf(catalog, stock.material)
  const where = { from, to, up, look, miter }
  const hollow = (outer: Ring, inner: Ring): Body => prism({ ...where, outer, inner })
  switch (stock.shape) {
    case 'round-tube': {
      const { diameter, wall } = stock
      const sides = sidesOf(diameter)
      const inside = diameter - 2 * wall
      return inside > 0
        ? hollow(circle(diameter, sides), circle(inside, sides))
        : prism({ ...where, outer: circle(diameter, sides) })
    }
    case 'rect-tube': {
      const { width, height, wall } = stock
      const [w, h] = [width - 2 * wall, height - 2 * wall]
      return w > 0 && h > 0
        ? hollow(rectangle(width, height), rectangle(w, h))
        : prism({ ...where, outer: rectangle(width, height) })
    }
    case 'round-bar':
      return prism({ ...where, outer: circle(stock.diameter) })
    case 'flat':
      return prism({ ...where, outer: rectangle(stock.width, stock.height) })
  }
}

/** A piece without length (a lip no higher than the sole, say) has no body. */
export const pieceBodies = (catalog: Catalog, pieces: readonly Piece[]): Body[] =>
  pieces.filter(({ from, to }) => length(sub(to, from)) > 1e-9).map((piece) => pieceBody(catalog, piece))
