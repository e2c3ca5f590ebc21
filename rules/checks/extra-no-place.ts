import { type Check, key, remedy, remove, SHOP, text } from './check.ts'

/** An extra with a place that is not there, or is taken. */
export const extraNoPlace: Check = {
  code: 'extra-no-place',
  severity: 'warn',
  basis: SHOP,
  find: ({ extras, design }) =>
    extras.noPlace.map(({ index, code, why }) => {
      const { section, edge } = design.dock.placed![index]!
      return {
        parts: [],
        values: { extra: text(code), section: text(section), edge: key(edge), why: key(why) },
        remedy: remedy('leave-out', [remove(`/dock/placed/${index}`)]),
      }
    }),
}
