import { atLeast } from '../numbers.ts'
import { type Check, meters } from './check.ts'

/** Ramp and standing section share less of an edge than the hinge bar is long. */
export const hingeShort: Check = {
  code: 'hinge-short',
  severity: 'stop',
  basis: 'Geometry',
  find({ joints, shop }) {
    const hinge = joints.all.find((joint) => joint.kind === 'hinge')
    const least = shop.catalog.hinge.bar.length
    if (!hinge || atLeast(hinge.to - hinge.from, least)) return []
    return [
      {
        parts: [hinge.host.id, hinge.guest.id],
        values: { shared: meters(Math.max(0, hinge.to - hinge.from)), least: meters(least) },
      },
    ]
  },
}
