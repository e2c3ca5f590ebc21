/** What one check by itself says of a kit, and the steps that its remedies take. */
import { CHECKS } from '../../rules/index.ts'
import type { Kit } from '../../rules/kit.ts'

/** Lengths to 10 µm. */
export const found = (code: string, kit: Kit) =>
  CHECKS.find((check) => check.code === code)!
    .find({ ...kit, waves: null })
    .map(({ parts, values, remedy }) => ({
      parts,
      values: Object.fromEntries(
        Object.entries(values).map(([name, { value }]) => [
          name,
          typeof value === 'number' ? Math.round(value * 1e5) / 1e5 : value,
        ]),
      ),
      patch: remedy?.patch ?? null,
    }))

export const put = (path: string, value: unknown) => [{ op: 'replace', path, value }]
export const drop = (path: string) => [{ op: 'remove', path }]
