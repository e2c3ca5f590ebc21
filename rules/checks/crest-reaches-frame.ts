import { type Check, meters, remedy, replace } from './check.ts'
import { upToCentimeter, WAVES } from './wave-words.ts'

/** The highest tenth of the waves come up to the frame, or nearer than the shop wants, with the lake as on the day of the survey. */
export const crestReachesFrame: Check = {
  code: 'crest-reaches-frame',
  severity: 'warn',
  basis: WAVES,
  find({ waves, shop }) {
    if (!waves) return []
    const { waveClearance } = shop.rules
    if (waves.clear >= waveClearance - 1e-6) return []
    const height = upToCentimeter(waves.recommendedDeckHeight)
    return [
      {
        parts: [],
        values: { crest: meters(waves.crest), clear: meters(waves.clear), least: meters(waveClearance) },
        remedy: remedy('raise-deck', [replace('/dock/deckHeight', height)], { height: meters(height) }),
      },
    ]
  },
}
