/** Frames with their deck panels, clips and sleeves: caps in the empty ones, set bolts in the used. */
import type { Corner, Placement } from '../dock.ts'
import { CORNERS } from '../layout/index.ts'
import type { Shop } from '../shop.ts'
import { legAxis } from './legs.ts'
import { frameTop, inSection, type Pose, put, spread } from './put.ts'

export function putFrame(out: Placement[], pose: Pose, legged: readonly Corner[], shop: Shop): void {
  const { frame, id } = pose.placed
  const { catalog, rules } = shop
  const top = frameTop(shop)
  put(out, 'frame', frame.code, id, id, inSection(pose, 0, 0, 0))

  const panel = catalog.decking.panels.find((p) => p.code === frame.panel)!
  spread(frame.panels, frame.length).forEach((offset, i) => {
    const x = frame.length / 2 + offset
    const outward = i < Math.floor(frame.panels / 2) ? 180 : 0
    put(out, 'deck-panel', panel.code, id, id, inSection(pose, x, 0, 0, outward))
    const sides = Math.ceil(rules.clipsPerPanel / 2)
    const places = spread(sides, panel.length)
    for (let k = 0; k < rules.clipsPerPanel; k++) {
      const side = k % 2 === 0 ? 1 : -1
      const along = x + places[Math.floor(k / 2)]!
      put(out, 'deck-clip', catalog.decking.clip.code, id, id, inSection(pose, along, (side * panel.width) / 2, top, side > 0 ? 0 : 180))
    }
  })

  const setBolt = shop.bolt('set-bolt')
  for (const corner of CORNERS) {
    const [x, y] = legAxis(pose.placed, corner, shop)
    if (legged.includes(corner)) {
      // Heads point along the section to its middle, where a wrench has room.
      const inward = corner.startsWith('start') ? 0 : 180
      for (const down of catalog.sleeve.bolts)
        put(out, 'set-bolt', setBolt.code, `${id}.${corner}`, id, inSection(pose, x, y, top - down, inward))
    } else put(out, 'sleeve-cap', catalog.caps.sleeve.code, `${id}.${corner}`, id, inSection(pose, x, y, top))
  }
}
