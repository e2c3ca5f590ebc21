/** What stands at each leg: tube, foot pad with its bolts, cap. */
import type { Placement } from '../dock.ts'
import type { Shop } from '../shop.ts'
import type { PlacedLeg } from './legs.ts'
import { put } from './put.ts'
import { quarterTurn } from './turn.ts'

export function putLeg(out: Placement[], leg: PlacedLeg, deck: number, shop: Shop): void {
  const { id, section, x, y, pad, stock } = leg
  const { catalog, rules } = shop
  const turn = quarterTurn(section.heading)
  const bottom = leg.bed + pad.sole
  if (stock) put(out, 'leg', stock.code, id, section.id, { x, y, z: bottom, turn })
  // The upturned edge points along the dock, ashore, so that the pad slides when the section is dragged out.
  put(out, 'foot-pad', pad.code, id, section.id, { x, y, z: leg.bed, turn: quarterTurn(section.heading + 180) })
  const bolt = shop.bolt('pad-bolt')
  for (let i = 0; i < rules.padBolts; i++) {
    const z = bottom + (pad.socket.height * (i + 1)) / (rules.padBolts + 1)
    put(out, 'pad-bolt', bolt.code, id, section.id, { x, y, z, turn: quarterTurn(section.heading + 90) })
  }
  // A leg without a length keeps its cap in the count: it is shown at the deck until a length is found.
  const z = stock ? bottom + stock.length : deck
  put(out, 'leg-cap', catalog.caps.leg.code, id, section.id, { x, y, z, turn })
}
