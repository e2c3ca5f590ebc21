import { quantize } from '../numbers.ts'
import { type Check, meters, remedy, replace, SHOP } from './check.ts'

/** At the low level it is a long step from the deck down to the boat. */
export const stepToBoat: Check = {
  code: 'step-to-boat',
  severity: 'note',
  basis: SHOP,
  find({ design, shop }) {
    const { boat, deckHeight } = design.dock
    if (!boat) return []
    const low = Math.min(0, design.site.levels.low)
    const step = deckHeight - low - boat.height
    const most = shop.rules.boatStepMax
    if (step <= most + 1e-6) return []
    const height = quantize(Math.floor((low + boat.height + most) * 100 + 1e-6) / 100)
    const fits = height > Math.max(0, design.site.levels.high) + shop.rules.deckOverHigh
    return [
      {
        parts: [],
        values: { step: meters(step), most: meters(most) },
        remedy: fits
          ? remedy('lower-deck', [replace('/dock/deckHeight', height)], { height: meters(height) })
          : null,
      },
    ]
  },
}
