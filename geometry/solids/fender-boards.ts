/** A fender board, upright against the outside of the frame, and the bolts that hold it. Own x axis outward. */
import type { Catalog } from '../../rules/index.ts'
import { railWidth } from './fits.ts'
import type { Body } from './mesh.ts'
import { bar, box } from './prism.ts'
import { circle, hexagon } from './rings.ts'

type ExtraPart = Catalog['extras'][number]['parts'][number]

/** Its top at the deck surface, its inner face on the frame's edge. */
export function fenderBoardBodies({ size: [out, along, high] }: ExtraPart): Body[] {
  return [box([0, -along / 2, -high], [out, along / 2, 0], 'wood')]
}

/** Of the head's diameter: the shank, and the head's own height. About what carriage bolts have (from memory, for looks only). */
const SHANK = 0.5
const HEAD = 0.25
/** Of the shank's diameter: the nut across its flats, and its height. */
const FLATS = 1.5
const NUT = 0.85

/** Its round head is let into the board, flush with the outer face; its nut is inside the rail, where its thread still reaches. */
export function fenderBoltBodies(catalog: Catalog, bolt: ExtraPart): Body[] {
  const [length, wide] = bolt.size
  const board = catalog.extras
    .find(({ parts }) => parts.includes(bolt))
    ?.parts.find(({ kind }) => kind === 'fender-board')
  const face = board?.size[0] ?? 0
  const shank = SHANK * wide
  const head = Math.min(HEAD * wide, length / 2)
  const tip = face - length
  const nut = Math.max(-railWidth(catalog), tip + NUT * shank)
  return [
    bar(circle(wide, 24), [face - head, 0, 0], [face, 0, 0], 'steel'),
    bar(circle(shank, 6), [tip, 0, 0], [face - head, 0, 0], 'steel'),
    bar(hexagon(FLATS * shank), [nut - NUT * shank, 0, 0], [nut, 0, 0], 'steel'),
  ]
}
