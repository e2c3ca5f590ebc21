import { between, lying } from '../layout/berth.ts'
import { moved } from './boat-places.ts'
import { type Check, meters } from './check.ts'

/** Two boats would lie on each other. */
export const boatsOverlap: Check = {
  code: 'boats-overlap',
  severity: 'warn',
  basis: 'Geometry',
  find: (kit) =>
    lying(kit).flatMap((b, i, all) =>
      all.slice(0, i).flatMap((a) => {
        const by = between(a, b)
        if (by === 0) return []
        return [
          {
            parts: [...new Set([a.section.id, b.section.id])],
            values: { a: meters(a.boat.length), b: meters(b.boat.length), by: meters(by) },
            // The later of the two gives way: the first may be the one that keeps to the lake end.
            remedy: moved(kit, b.id),
          },
        ]
      }),
    ),
}
