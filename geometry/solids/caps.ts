/** Leg and sleeve caps: a flange on the mouth of the tube and a plug in it. */
import type { Catalog, Stock } from '../../rules/index.ts'
import { outline } from './fits.ts'
import type { Body } from './mesh.ts'
import { prism } from './prism.ts'

type Cap = Catalog['caps']['leg']

/** Share of a cap's height that stands over the mouth. */
const OVER = 0.3

/** Origin in the middle of the mouth. `tube`: what it closes. */
export function capBodies(cap: Cap, tube: Stock): Body[] {
  const high = cap.size[2]
  const inside =
    tube.shape === 'round-tube' || tube.shape === 'rect-tube' ? -tube.wall * 1.1 : -cap.size[0] / 10
  const piece = (grow: number, z0: number, z1: number): Body =>
    prism({ outer: outline(tube, grow), from: [0, 0, z0], to: [0, 0, z1], up: [1, 0, 0], look: 'plastic' })
  return [piece(0, 0, high * OVER), piece(inside, -high * (1 - OVER), 0)]
}
