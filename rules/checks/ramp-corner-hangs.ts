import { type Check, COMMON, meters } from './check.ts'

/** A gap that nobody would notice or pack, m (judgment). */
const PACKED = 0.02

/** The bank falls to one side under the ramp's end: one corner rests, the other hangs until something is put under it. */
export const rampCornerHangs: Check = {
  code: 'ramp-corner-hangs',
  severity: 'note',
  basis: COMMON,
  find({ ramp, layout }) {
    const gap = ramp?.contact ? Math.max(...ramp.gaps) : 0
    return gap <= PACKED ? [] : [{ parts: [layout.ramp!.id], values: { gap: meters(gap) } }]
  },
}
