import { type Check, COMMON } from './check.ts'

/** What nobody has measured or said of the site, and a value was taken for: the dock is laid out on it all the same. */
export const siteAssumed: Check = {
  code: 'site-assumed',
  severity: 'warn',
  basis: COMMON,
  find({ design: { site } }) {
    const taken = site.soundings.filter((s) => s.assumed)
    const depths = taken.some((s) => s.distance >= 0)
    const bank = taken.some((s) => s.distance < 0)
    // One name for both: no more are told of than a sentence lists in full.
    const shore = depths && bank ? ['shore'] : depths ? ['depths'] : bank ? ['bank'] : []
    const keys = [...shore, ...new Set(site.assumed)]
    return keys.length === 0 ? [] : [{ parts: [], values: { keys: { value: keys, unit: 'key' } } }]
  },
}
