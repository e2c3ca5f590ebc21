import { pointer } from '../design/pointer.ts'
import { atLeast } from '../numbers.ts'
import { requiredOf } from '../parts/legs.ts'
import { type Check, COMMON, meters, remedy, remove, text } from './check.ts'

/** A leg length set by hand that is shorter than the place asks. */
export const legOverrideShort: Check = {
  code: 'leg-override-short',
  severity: 'stop',
  basis: COMMON,
  find: (kit) =>
    kit.legs
      .filter((leg) => leg.by === 'override' && !atLeast(leg.stock!.length, requiredOf(leg, kit)))
      .map((leg) => ({
        parts: [leg.id],
        values: {
          leg: text(leg.id),
          stock: meters(leg.stock!.length),
          required: meters(requiredOf(leg, kit)),
        },
        remedy: remedy('length-by-rule', [remove(`/dock/overrides/${pointer(leg.id)}`)]),
      })),
}
