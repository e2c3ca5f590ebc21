import { deckDown } from '../deck-step.ts'
import { type Check, meters, remedy, replace, SHOP } from './check.ts'

/** At the low level it is a long step from the deck down to the boat, of several the one with the lowest side. */
export const stepToBoat: Check = {
  code: 'step-to-boat',
  severity: 'note',
  basis: SHOP,
  find({ design, shop }) {
    const { boat, boats = [], deckHeight } = design.dock
    const all = boat ? [boat, ...boats] : boats
    if (all.length === 0) return []
    const low = Math.min(0, design.site.levels.low)
    const side = Math.min(...all.map(({ height }) => height))
    const step = deckHeight - low - side
    const most = shop.rules.boatStepMax
    if (step <= most + 1e-6) return []
    const height = deckDown(low + side + most)
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
