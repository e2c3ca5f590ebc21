import { type Check, COMMON, remedy, remove, text } from './check.ts'

/** The Design leaves out a brace that the trade would fit. */
export const braceLeftOut: Check = {
  code: 'brace-left-out',
  severity: 'warn',
  basis: COMMON,
  find: ({ pairs, design }) =>
    pairs
      .filter((p) => p.leftOut && p.needsBrace && !p.pair.along)
      .map(({ pair }) => ({
        parts: [pair.id, ...pair.legs.map((leg) => leg.id)],
        values: { pair: text(pair.id) },
        remedy: remedy('put-brace', [
          remove(`/dock/bracing/none/${design.dock.bracing!.none!.indexOf(pair.id)}`),
        ]),
      })),
}
