import { type Check, COMMON, key, meters } from './check.ts'

/** The rule for the start finds no place: no ground high enough for the ramp's end, or none low enough for the frame. */
export const startNotFound: Check = {
  code: 'start-not-found',
  severity: 'stop',
  basis: COMMON,
  find: ({ start, design, shop }) =>
    start.found
      ? []
      : [
          {
            parts: [],
            values: {
              rule: key(start.by === 'ramp' ? 'ramp' : 'frame'),
              wanted: meters(
                start.by === 'ramp'
                  ? design.site.levels.high + shop.rules.startMargin
                  : shop.rules.frameToBed,
              ),
            },
          },
        ],
}
