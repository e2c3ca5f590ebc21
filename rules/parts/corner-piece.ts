/**
 * A corner piece: a frame that turns the run. Its two sides are parallel, so all of it is said along them and square to them: `e` along its
 * sides from the line between their middles, `u` across them, left positive, m. Start and end rails lie between the sides as in any frame,
 * and what meets at an angle is cut to it.
 */
import type { Catalog, Frame, Panel, Stock } from '../catalog/index.ts'
import { sectionProperties } from '../catalog/section-properties.ts'
import type { Corner, Vec3 } from '../dock.ts'
import { cosOf, type Size, sideLength, sideMiddle, sinOf } from '../layout/footprint.ts'
import type { Piece } from './bodies.ts'

/** Of a frame with a turn, or of a panel for one. */
interface Slant {
  /** Cosine, sine and tangent of half the turn. */
  readonly c: number
  readonly s: number
  readonly t: number
  /** Between its sides, m. */
  readonly high: number
  /** To where an edge is at the middle line, e. */
  readonly half: number
  /** That line's middle in the frame's own coordinates. */
  readonly ox: number
  readonly oy: number
}

export function slantOf(size: Size): Slant {
  const c = cosOf(size.turn! / 2)
  const s = sinOf(size.turn! / 2)
  const [lx, ly] = sideMiddle(size, 'left')
  const [rx, ry] = sideMiddle(size, 'right')
  return {
    c,
    s,
    t: s / c,
    high: size.width * c,
    half: (size.length + sideLength(size, 'right')) / 4,
    ox: (lx + rx) / 2,
    oy: (ly + ry) / 2,
  }
}

/** To a frame's own coordinates. */
export const fromSlant = ({ c, s, ox, oy }: Slant, e: number, u: number): readonly [x: number, y: number] => [
  ox + c * e - s * u,
  oy + s * e + c * u,
]

/** Where, at `u`, the place is that lies so far inside of the end edge: e; of the start edge its negative. */
const inside = ({ c, t, half }: Slant, u: number, off: number): number => half - u * t - off / c

/** A leg's axis in the frame's own coordinates: so far inside of its edges as in any frame. */
export function cornerAxis(
  frame: Size,
  corner: Corner,
  { along, across }: Pick<Catalog['sleeve'], 'along' | 'across'>,
): readonly [x: number, y: number] {
  const slant = slantOf(frame)
  const u = (slant.high / 2 - across) * (corner.endsWith('left') ? 1 : -1)
  const e = inside(slant, u, along)
  return fromSlant(slant, corner.startsWith('end') ? e : -e, u)
}

const UP: Vec3 = [0, 0, 1]

/** Side rails from edge to edge, end rails and cross members between them, four sleeves. */
export function cornerBody(catalog: Catalog, frame: Frame): Piece[] {
  const slant = slantOf(frame)
  const stockOf = (code: string): Stock => catalog.stock[code]!
  const [rail, end, cross] = [stockOf(frame.rail), stockOf(frame.ends), stockOf(frame.cross.stock)]
  const [railSize, endSize, crossSize] = [rail, end, cross].map(sectionProperties) as [
    ReturnType<typeof sectionProperties>,
    ReturnType<typeof sectionProperties>,
    ReturnType<typeof sectionProperties>,
  ]
  const top = -catalog.decking.rise
  const { t, high } = slant
  const at = (e: number, u: number, z: number): Vec3 => [...fromSlant(slant, e, u), z]
  const pieces: Piece[] = []
  for (const side of [1, -1]) {
    const u = side * (high / 2 - railSize.width / 2)
    const e = inside(slant, u, 0)
    const z = top - railSize.height / 2
    pieces.push({ stock: rail, from: at(-e, u, z), to: at(e, u, z), up: UP, miter: [t, -t] })
  }
  const inner = high / 2 - railSize.width
  for (const way of [-1, 1]) {
    const z = top - endSize.height / 2
    const e = (u: number): number => way * inside(slant, u, endSize.width / 2)
    const cut = way * t
    pieces.push({
      stock: end,
      from: at(e(-inner), -inner, z),
      to: at(e(inner), inner, z),
      up: UP,
      miter: [cut, cut],
    })
  }
  for (let i = 1; i <= frame.cross.count; i++) {
    const e = frame.length * (i / (frame.cross.count + 1) - 0.5)
    const z = top - railSize.height + crossSize.height / 2
    pieces.push({ stock: cross, from: at(e, -inner, z), to: at(e, inner, z), up: UP })
  }
  for (const corner of ['start.left', 'start.right', 'end.left', 'end.right'] as const) {
    const [x, y] = cornerAxis(frame, corner, catalog.sleeve)
    pieces.push({
      stock: stockOf(catalog.sleeve.stock),
      from: [x, y, top - catalog.sleeve.length],
      to: [x, y, top],
      up: [1, 0, 0],
    })
  }
  return pieces
}

/** Planks along the sides, cut to the edges; those that a leg stands through are cut back. Battens across them. Own origin: `e` 0, `u` 0. */
export function cornerPanelBody(catalog: Catalog, panel: Panel): Piece[] {
  const slant = slantOf(panel)
  const { t, high } = slant
  const plank = catalog.stock[panel.plank.stock]!
  const batten = catalog.stock[panel.batten.stock]!
  const plankSize = sectionProperties(plank)
  const battenSize = sectionProperties(batten)
  const pieces: Piece[] = []
  const n = panel.plank.count
  for (let i = 0; i < n; i++) {
    const u = n === 1 ? 0 : -high / 2 + plankSize.width / 2 + (i * (high - plankSize.width)) / (n - 1)
    const notched =
      panel.notch !== undefined && Math.abs(u) + plankSize.width / 2 > high / 2 - panel.notch.across
    const e = inside(slant, u, notched ? panel.notch!.along : 0)
    if (e <= 0) continue
    const z = -plankSize.height / 2
    pieces.push({ stock: plank, from: [-e, u, z], to: [e, u, z], up: UP, miter: [t, -t] })
  }
  for (let i = 0; i < panel.batten.count; i++) {
    const e = panel.length * ((i + 0.5) / panel.batten.count - 0.5)
    const z = -plankSize.height - battenSize.height / 2
    const half = panel.batten.length / 2
    pieces.push({ stock: batten, from: [e, -half, z], to: [e, half, z], up: UP })
  }
  return pieces
}

/** Where clips hold it to its sides: the `k`-th of `n` places along each. */
export function sidePlace(
  frame: Size,
  side: 1 | -1,
  along: (length: number) => number,
): readonly [x: number, y: number] {
  const slant = slantOf(frame)
  const e = along(sideLength(frame, side > 0 ? 'left' : 'right'))
  return fromSlant(slant, e, (side * slant.high) / 2)
}
