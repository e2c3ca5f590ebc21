import { pointer } from '../design/pointer.ts'
import { type Check, number, remedy, replace, SHOP, text } from './check.ts'

/** More extras asked for than there is free edge to put them on. */
export const extraNoRoom: Check = {
  code: 'extra-no-room',
  severity: 'warn',
  basis: SHOP,
  find: ({ extras, design }) =>
    extras.noRoom.map(({ code, missing }) => {
      const placed = design.dock.extras[code]! - missing
      return {
        parts: [],
        values: { extra: text(code), placed: number(placed), missing: number(missing) },
        remedy: remedy('fewer-extras', [replace(`/dock/extras/${pointer(code)}`, placed)], {
          count: number(placed),
        }),
      }
    }),
}
