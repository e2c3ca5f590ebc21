import { toBed, toFrame, toPad } from '../parts/braces.ts'
import { clampsBeside, triedOn } from '../parts/braces-tried.ts'
import { type Check, meters, names } from './check.ts'

/** A lengthwise brace is asked for, and none of the shop's keeps its clearances there: the dock stands as it would without. */
export const braceAlongDoesNotFit: Check = {
  code: 'brace-along-does-not-fit',
  severity: 'note',
  basis: 'Geometry',
  find(kit) {
    const bare = kit.pairs.filter(({ pair, fit, leftOut }) => pair.along && !fit && !leftOut)
    if (bare.length === 0) return []
    const [first] = bare
    const best = triedOn(first!, kit)[0]
    const beside = best ? clampsBeside(best, first!.pair, kit) : null
    return [
      {
        parts: bare.flatMap(({ pair }) => [pair.id, ...pair.legs.map((leg) => leg.id)]),
        values: {
          pairs: names(bare.map(({ pair }) => pair.id)),
          brace: names(best ? [best.brace.code] : []),
          ...(best && {
            bed: meters(toBed(best, kit)),
            pad: meters(toPad(best, kit)),
            frame: meters(toFrame(best, kit)),
          }),
          ...(beside !== null && { beside: meters(beside) }),
        },
      },
    ]
  },
}
