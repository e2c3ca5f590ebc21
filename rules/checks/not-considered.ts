import { type Check, text } from './check.ts'

/** What the Design says and this engine keeps without using it yet. */
export const notConsidered: Check = {
  code: 'not-considered',
  severity: 'note',
  basis: 'This version of Leadline',
  find({ design }) {
    const { site } = design
    const given: [string, unknown][] = [
      ['site.bearing', site.bearing],
      ['site.benchmark', site.benchmark],
      [
        'site.soundings landward of the wall',
        site.shore?.kind === 'wall' && site.soundings.some((s) => s.distance < 0) ? true : undefined,
      ],
    ]
    const keys = given.filter(([, value]) => value !== undefined).map(([key]) => key)
    return keys.length === 0 ? [] : [{ parts: [], values: { keys: text(keys.join(', ')) } }]
  },
}
