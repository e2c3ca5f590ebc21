import { footingAt } from '../../site/footing.ts'
import { presumptiveBearing, sinkageUnder } from '../../structure/strength/index.ts'
import { meters, pascals, text, worst } from '../check.ts'
import { largerPad, type StructureCheck } from './judged.ts'

/** With the deck full a foot presses harder than the bottom is presumed to bear. */
export const footSinks: StructureCheck = {
  code: 'foot-sinks',
  severity: 'warn',
  basis:
    'International Building Code 2018 table 1806.2, presumptive bearing; sinkage by Vesić 1973 and Skempton 1951 (from memory)',
  find({ kit, structure }) {
    const over = structure.feet.filter((foot) => foot.pressure > bears(kit, foot.leg))
    if (over.length === 0) return []
    const most = worst(over, (foot) => foot.pressure / bears(kit, foot.leg))
    const leg = kit.legs.find(({ id }) => id === most.leg)!
    const { length, width } = leg.pad.plate
    const depth = sinkageUnder(footingAt(kit.bed, leg.x, leg.y), most.pressure, Math.min(length, width))
    return [
      {
        parts: over.map((foot) => foot.leg),
        values: {
          leg: text(most.leg),
          pressure: pascals(most.pressure),
          bears: pascals(bears(kit, most.leg)),
          ...(depth !== null && Number.isFinite(depth) && { sinks: meters(depth) }),
        },
        remedy: largerPad(kit),
      },
    ]
  },
}

const bears = (kit: Parameters<typeof largerPad>[0], id: string): number => {
  const leg = kit.legs.find((l) => l.id === id)!
  return presumptiveBearing(footingAt(kit.bed, leg.x, leg.y)) ?? Number.POSITIVE_INFINITY
}
