/** Frames with their deck panels, clips and sleeves: caps in the empty ones, set bolts in the used. */

import { panelFor, type Shop } from '../catalog-index.ts'
import type { Corner } from '../dock.ts'
import { CORNERS } from '../layout/index.ts'
import { fromSlant, sidePlace, slantOf } from './corner-piece.ts'
import { type EmitPart, emitIn, frameTop, type Pose, spread } from './emit-part.ts'
import { axisAcross, axisAlong } from './legs.ts'

/** @param finish decking asked for; undefined: the frame's own */
export function emitFrame(
  emit: EmitPart,
  pose: Pose,
  legged: readonly Corner[],
  shop: Shop,
  finish: string | undefined,
): void {
  const { frame, id } = pose.placed
  const { catalog, rules, types } = shop
  const top = frameTop(shop)
  emitIn(emit, shop.type('frame', frame.code), id, pose, 0, 0, 0)

  const panel = panelFor(shop, finish, frame)
  const panelType = shop.type('deck-panel', panel.code)
  const rows = Math.ceil(rules.clipsPerPanel / 2)
  if (frame.turn) {
    const slanted = frame.turn / 2
    const [x, y] = fromSlant(slantOf(frame), 0, 0)
    emitIn(emit, panelType, id, pose, x, y, 0, slanted)
    for (let k = 0; k < rules.clipsPerPanel; k++) {
      const side = k % 2 === 0 ? 1 : -1
      const place = sidePlace(frame, side, (long) => spread(Math.floor(k / 2), rows, long))
      emitIn(emit, types.deckClip, id, pose, ...place, top, slanted + (side > 0 ? 0 : 180))
    }
  }
  for (let i = 0; !frame.turn && i < frame.panels; i++) {
    const x = frame.length / 2 + spread(i, frame.panels, frame.length)
    const outward = i < Math.floor(frame.panels / 2) ? 180 : 0
    emitIn(emit, panelType, id, pose, x, 0, 0, outward)
    for (let k = 0; k < rules.clipsPerPanel; k++) {
      const side = k % 2 === 0 ? 1 : -1
      const along = x + spread(Math.floor(k / 2), rows, panel.length)
      emitIn(emit, types.deckClip, id, pose, along, (side * panel.width) / 2, top, side > 0 ? 0 : 180)
    }
  }

  for (const corner of CORNERS) {
    const x = axisAlong(frame, corner, shop)
    const y = axisAcross(frame, corner, shop)
    if (legged.includes(corner)) {
      // Heads point along the section to its middle, where a wrench has room.
      const inward = corner.startsWith('start') ? 0 : 180 + (frame.turn ?? 0)
      const of = `${id}.${corner}`
      for (const down of catalog.sleeve.bolts)
        emitIn(emit, types['set-bolt'], of, pose, x, y, top - down, inward)
    } else emitIn(emit, types.sleeveCap, id, pose, x, y, top)
  }
}
