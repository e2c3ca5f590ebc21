import { deckDown } from '../deck-step.ts'
import { type Check, meters, remedy, replace } from './check.ts'

/** 30 in, over what is below within 36 in to the side. */
const GUARD_FROM = 0.762

/**
 * With the lake low it is a long fall from the deck's edge: to the water, or to ground where that has run dry. A code counts to the
 * grade below, water or none; most ask no guard of a dock's edges, so this is a note.
 */
export const deckGuard: Check = {
  code: 'deck-guard',
  severity: 'note',
  basis: 'IBC 2018 1015.2, as guidance: local code decides for docks',
  find({ design, shop, legs }) {
    if (legs.length === 0) return []
    const { deckHeight } = design.dock
    const low = Math.min(0, design.site.levels.low)
    const below = Math.min(...legs.map(({ bed }) => Math.max(bed, low)))
    const drop = deckHeight - below
    if (drop <= GUARD_FROM + 1e-6) return []
    const height = deckDown(below + GUARD_FROM)
    const fits = height > Math.max(0, design.site.levels.high) + shop.rules.deckOverHigh
    return [
      {
        parts: [],
        values: { drop: meters(drop), most: meters(GUARD_FROM) },
        remedy: fits
          ? remedy('lower-deck', [replace('/dock/deckHeight', height)], { height: meters(height) })
          : null,
      },
    ]
  },
}
