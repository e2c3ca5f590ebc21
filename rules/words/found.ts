/**
 * The words of all that is found, those of the structure too. A page that wants its first picture soon imports `words.ts` alone and gets
 * these with the structure (`FOUND_WORDS`).
 */
import type { Finding, Remedy } from '../dock.ts'
import type { Units } from './format.ts'
import english from './structure.en.json' with { type: 'json' }
import { findingIn, type MoreWords, remedyIn } from './words.ts'

/** What is found after the frame of an edit. */
export const FOUND_WORDS: MoreWords = { en: english }

/** What a finding says: `plain` for a homeowner, `text` with its figures. */
export const findingText = (
  finding: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  units: Units = 'metric',
  lang = 'en',
): string => findingIn(finding, form, units, lang, FOUND_WORDS)

export const remedyText = (remedy: Remedy, units: Units = 'metric', lang = 'en'): string =>
  remedyIn(remedy, units, lang, FOUND_WORDS)
