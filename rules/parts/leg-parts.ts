/** What stands at each leg: tube, foot pad with its bolts, cap. */
import type { Shop } from '../catalog-index.ts'
import type { EmitPart } from './emit-part.ts'
import type { PlacedLeg } from './legs.ts'
import { headingTurn } from './turn.ts'

export function emitLeg(emit: EmitPart, leg: PlacedLeg, deck: number, shop: Shop): void {
  const { id, section, x, y, pad, stock } = leg
  const { rules, types } = shop
  const turn = headingTurn(section.heading)
  const bottom = leg.bed + pad.sole
  if (stock) emit(shop.type('leg', stock.code), id, section, x, y, bottom, turn)
  // The upturned edge points along the dock, ashore, so that the pad slides when the section is dragged out.
  emit(shop.type('foot-pad', pad.code), id, section, x, y, leg.bed, headingTurn(section.heading + 180))
  for (let i = 0; i < rules.padBolts; i++) {
    const z = bottom + (pad.socket.height * (i + 1)) / (rules.padBolts + 1)
    emit(types['pad-bolt'], id, section, x, y, z, headingTurn(section.heading + 90))
  }
  // A leg without a length keeps its cap in the count: it is shown at the deck until a length is found.
  emit(types.legCap, id, section, x, y, stock ? bottom + stock.length : deck, turn)
}
