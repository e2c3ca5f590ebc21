import { footingAt } from '../site/footing.ts'
import { type Check, COMMON, meters, names, remedy, text } from './check.ts'

/** Legs on muck without the pads that are made for it. Where firm bottom was sounded under the muck the leg stands on that. */
export const muckWithoutMudPad: Check = {
  code: 'muck-without-mud-pad',
  severity: 'warn',
  basis: COMMON,
  find({ legs, bed, shop, design }) {
    const soft = legs.filter((leg) => !leg.pad.mud && footingAt(bed, leg.x, leg.y) === 'muck')
    if (soft.length === 0) return []
    const mud = shop.catalog.pads.find((pad) => pad.mud)
    const op = design.dock.pad === undefined ? 'add' : 'replace'
    return [
      {
        parts: soft.map((leg) => leg.id),
        values: { legs: names(soft.map((leg) => leg.id)), sinkage: meters(soft[0]!.pad.sinkage.muck) },
        remedy: mud
          ? remedy('mud-pads', [{ op, path: '/dock/pad', value: mud.code }], { pad: text(mud.name) })
          : null,
      },
    ]
  },
}
