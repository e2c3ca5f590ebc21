import { type Check, COMMON } from './check.ts'

/** What nobody has measured or said of the site, and a value was taken for: the dock is laid out on it all the same. */
export const siteAssumed: Check = {
  code: 'site-assumed',
  severity: 'warn',
  basis: COMMON,
  find({ design: { site } }) {
    const taken = site.soundings.filter((s) => s.assumed)
    const keys = [
      ...(taken.some((s) => s.distance >= 0) ? ['depths'] : []),
      ...(taken.some((s) => s.distance < 0) ? ['bank'] : []),
      ...new Set(site.assumed),
    ]
    return keys.length === 0 ? [] : [{ parts: [], values: { keys: { value: keys, unit: 'key' } } }]
  },
}
