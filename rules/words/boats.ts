/** What a boat is called, and the water under it: the same on screens, papers and requests. Not in the first load. */
import { lowLevel, underKeel } from '../clearance/keel.ts'
import type { Berth } from '../layout/berth.ts'
import type { Bed } from '../site/index.ts'
import { boatKindOf } from '../structure/strength/usual-boats.ts'
import en from './en/boats.json' with { type: 'json' }
import type { Reader } from './language.ts'
import { subject, wordsOf } from './messages.ts'

export const BOATS = subject('boats', en)

/** 'Pontoon, 20 ft' */
export const boatName = (boat: Parameters<typeof boatKindOf>[0], reader: Reader): string =>
  wordsOf(BOATS, reader)(`called.${boatKindOf(boat)}`, { length: { value: boat.length, unit: 'm' } })

/** '1 ft 2 in under the keel at low water' */
export function boatWater(berth: Berth, bed: Bed, levels: { readonly low: number }, reader: Reader): string {
  const under = underKeel(berth, bed, lowLevel(levels))
  return wordsOf(BOATS, reader)(under < 0 ? 'touches' : 'under', {
    water: { value: Math.abs(under), unit: 'm' },
  })
}
