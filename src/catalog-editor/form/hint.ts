/** What the schema says of a field, in the reader's language: its English is the key. */
import type { Reader } from '../../../rules/index.ts'
import { subject, wordOf } from '../../../rules/words/messages.ts'

/** English is the schema's own: `rules/words/en/catalog-hints.json` holds it for translators, and is not loaded. */
const HINTS = subject('catalog-hints', {})

/** Units stand beside the field, not in what is said of it. */
const withoutUnit = (says: string): string =>
  says
    .replace(/,? ?(?:\bm2?|kg(?:\/m3)?|Pa|N(?:\/m3?)?|N·m\/rad|rad|degrees)(?=$|;)/, '')
    .replace(/^Unit price .*/, '')

/** The catalog is a file, the form is not: what is said of how a value stands in the file is said otherwise here. */
const ON_SCREEN: Readonly<Record<string, string>> = {
  'Of `waterWidth`': 'Of the width of the water there',
  'PNG or JPEG as data: `data:image/png;base64,…`; one that cannot be read is said and left out':
    'PNG or JPEG, at most 2000 pixels wide and high',
  'Totals are rounded to the nearest multiple of this, in minor units of the currency (cents); where absent they are as they come':
    'Totals are rounded to the nearest multiple of this: 1 for whole dollars, 5, 10; where absent they are as they come',
}

export const hintIn = (says: string, { language }: Pick<Reader, 'language'>): string =>
  wordOf([HINTS], says, language, withoutUnit(ON_SCREEN[says] ?? says))
