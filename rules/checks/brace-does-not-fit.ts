import { toBed, toFrame, toPad } from '../parts/braces.ts'
import { triedOn } from '../parts/braces-tried.ts'
import { type Check, COMMON, meters, names, text } from './check.ts'

/** A pair that the trade braces, and no stock brace keeps its clearances there. */
export const braceDoesNotFit: Check = {
  code: 'brace-does-not-fit',
  severity: 'stop',
  basis: COMMON,
  find: (kit) =>
    kit.pairs
      .filter((p) => p.needsBrace && !p.leftOut && !p.fit && !p.pair.along)
      .map((braced) => {
        const { pair } = braced
        const [a, b] = pair.legs
        const best = triedOn(braced, kit)[0]
        return {
          parts: [pair.id, a.id, b.id],
          values: {
            pair: text(pair.id),
            spacing: meters(pair.spacing),
            brace: names(best ? [best.brace.code] : []),
            ...(best && {
              bed: meters(toBed(best, kit)),
              pad: meters(toPad(best, kit)),
              frame: meters(toFrame(best, kit)),
            }),
          },
        }
      }),
}
