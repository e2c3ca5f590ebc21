/** The language that a page is told in. Comes with the first that is not plain English. */
import type { Language } from '../../rules/index.ts'
import { parseLanguageText } from '../../rules/words/language-file.ts'
import { languageOf } from '../../rules/words/language-of.ts'
import { within } from '../platform/time-limit.ts'
import { shippedWords } from '../words/shipped.ts'
import { type Fault, LONGEST, readFrom } from './sources.ts'

/** As the page says it: what language it is in, and the address of a file, which goes first. */
export interface Spoken {
  readonly lang: string
  readonly words: string | null
}

/**
 * Where the file cannot be used the faults say why: all is said in English then, with the numbers of `lang`. So it is, without a fault, where
 * nothing is shipped in `lang`.
 * @throws (rejects) where what is shipped does not come
 */
export async function languageFor(
  { lang, words }: Spoken,
  signal: AbortSignal,
): Promise<{ readonly language: Language; readonly faults: readonly Fault[] }> {
  const plain = languageOf(lang)
  if (words !== null) {
    const read = await readFrom(words, 'words', parseLanguageText, signal)
    return read.ok ? { language: read.value, faults: [] } : { language: plain, faults: read.faults }
  }
  const shipped = await within(LONGEST, shippedWords(plain.tag))
  return { language: shipped ? languageOf(lang, shipped) : plain, faults: [] }
}
