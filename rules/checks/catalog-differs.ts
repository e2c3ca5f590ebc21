import { type Check, remedy, replace, SHOP, text } from './check.ts'

/** The Design was made with another catalog, or another edition of this one. */
export const catalogDiffers: Check = {
  code: 'catalog-differs',
  severity: 'note',
  basis: SHOP,
  find({ design, shop }) {
    const made = design.catalog
    const { id, edition } = shop.catalog
    if (!made || (made.id === id && String(made.version) === edition)) return []
    return [
      {
        parts: [],
        values: { made: text(`${made.id} ${made.version}`), now: text(`${id} ${edition}`) },
        remedy: remedy('take-catalog', [replace('/catalog', { id, version: edition })]),
      },
    ]
  },
}
