import type { Shop } from '../catalog-index.ts'
import { deckUp } from '../deck-step.ts'
import type { Waves } from '../dock.ts'
import { type Check, type Found, meters, remedy, replace } from './check.ts'
import { WAVES } from './wave-words.ts'

/** What is told of the crests of the highest tenth, with the lake as on the day of the survey, and the deck that clears them. */
function crestFound(waves: Waves, { rules }: Shop): Found {
  const height = deckUp(waves.recommendedDeckHeight)
  return {
    parts: [],
    values: {
      crest: meters(waves.crest),
      clear: meters(waves.clear),
      least: meters(rules.waveClearance),
    },
    remedy: remedy('raise-deck', [replace('/dock/deckHeight', height)], { height: meters(height) }),
  }
}

/** They come up to the frame and beat on it. */
export const crestReachesFrame: Check = {
  code: 'crest-reaches-frame',
  severity: 'warn',
  basis: WAVES,
  find: ({ waves, shop }) => (waves && waves.clear < -1e-6 ? [crestFound(waves, shop)] : []),
}

/** They come nearer to it than the shop wants: spray, and no more. */
export const crestNearFrame: Check = {
  code: 'crest-near-frame',
  severity: 'note',
  basis: WAVES,
  find: ({ waves, shop }) =>
    waves && waves.clear >= -1e-6 && waves.clear < shop.rules.waveClearance - 1e-6
      ? [crestFound(waves, shop)]
      : [],
}
