/** The language that the editor is told in: what is shipped beside its script, or the file that the page names. */
import { ENGLISH, type Language, languageOf } from '../../rules/index.ts'
import { parseLanguageText } from '../../rules/words/language-file.ts'
import { shorterTags } from '../../rules/words/shorter-tags.ts'
import { SHIPPED_LANGUAGES } from '../words/shipped-names.ts'

/** Kept from bundlers, which would take each file for one of theirs: the files lie in `words/` beside the script. */
const HERE: string = import.meta.url

/**
 * English, with the language's own numbers, where nothing is shipped for it.
 * @param words address of a language file, which goes first; null: none is named
 * @throws (rejects) with what is wrong where a file does not come, or is none
 */
export async function editorLanguage(
  lang: string,
  words: string | null,
  signal: AbortSignal,
): Promise<Language> {
  const plain = languageOf(lang)
  const tag = shorterTags(plain.tag).find((one) => SHIPPED_LANGUAGES.some((name) => name === one))
  if (words === null && tag === undefined) return /^en(?:-US)?$/i.test(lang) ? ENGLISH : plain
  const address = words ?? new URL(`words/${tag}.json`, HERE).href
  const answer = await fetch(address, { signal })
  if (!answer.ok) throw new Error(`${address}: ${`${answer.status} ${answer.statusText}`.trim()}`)
  const read = parseLanguageText(await answer.text())
  if (!read.ok) throw new Error(`${address}: ${read.issues[0]?.message ?? 'no language file'}`)
  return words === null ? languageOf(lang, read.value.words) : read.value
}
