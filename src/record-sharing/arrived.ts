/** A record that came from elsewhere: checked, or what is wrong with it. */
import type { Issue, Parsed } from '../../rules/index.ts'
import type { SeasonRecord } from '../../rules/record/index.ts'

export interface Arrived {
  readonly record: SeasonRecord
  /** JPEG files that came along; links and codes bring none. */
  readonly photos: readonly Uint8Array<ArrayBuffer>[]
}

/** What cannot be read, and what would be. */
export function damaged(what: string, expected: string): Parsed<never> {
  const issue: Issue = {
    path: '',
    message: `${what} is damaged or cut short; expected ${expected}`,
    expected,
    received: `${what}, damaged`,
  }
  return { ok: false, issues: [issue] }
}

export const withPhotos = (record: Parsed<SeasonRecord>, photos: Arrived['photos'] = []): Parsed<Arrived> =>
  record.ok ? { ...record, value: { record: record.value, photos } } : record
