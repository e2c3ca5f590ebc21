import type { Check } from './check.ts'

/** What the Design says and this engine does not use. Bearing and benchmark are on the papers, so they are not among it. */
export const notConsidered: Check = {
  code: 'not-considered',
  severity: 'note',
  basis: 'This version of Leadline',
  find({ design }) {
    const { site } = design
    const given: [string, boolean][] = [
      ['site.soundings.landward', site.shore?.kind === 'wall' && site.soundings.some((s) => s.distance < 0)],
    ]
    const keys = given.filter(([, unused]) => unused).map(([key]) => key)
    return keys.length === 0 ? [] : [{ parts: [], values: { keys: { value: keys, unit: 'key' } } }]
  },
}
