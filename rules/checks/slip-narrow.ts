import { type Berth, GAP, lying } from '../layout/berth.ts'
import type { PlacedSection } from '../layout/index.ts'
import { acrossFrom } from '../layout/room.ts'
import { moved } from './boat-places.ts'
import { type Check, COMMON, type Judged, meters, text } from './check.ts'

/** Left free beside a boat between two arms, m: an arm's length less than anybody steers to. Judgment. */
const BESIDE = 0.3

/** Between two arms of the dock there is too little room beside a boat to bring it in. */
export const slipNarrow: Check = {
  code: 'slip-narrow',
  severity: 'note',
  basis: COMMON,
  find: (kit) =>
    lying(kit).flatMap((berth) => {
      const room = narrow(berth, kit)
      if (room === null) return []
      const { beam } = berth.boat
      return [
        {
          parts: [berth.section.id],
          values: {
            section: text(berth.section.id),
            room: meters(room),
            beam: meters(beam),
            least: meters(GAP + beam + BESIDE),
          },
          remedy: moved(kit, berth.id, (other) => narrow(other, kit) === null),
        },
      ]
    }),
}

/** How much there is where that is too little, m. Where it lies on a section that is told elsewhere. */
function narrow(berth: Berth<PlacedSection>, { layout }: Judged): number | null {
  const room = acrossFrom(berth, layout.placed)
  const least = GAP + berth.boat.beam
  return room === null || room < least - 1e-6 || room >= least + BESIDE - 1e-6 ? null : room
}
