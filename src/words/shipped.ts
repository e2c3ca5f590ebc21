/** The languages that come with the page: one file each in `public/words`, one chunk each, loaded when it is asked for. A further file is a further language. */
import type { LanguageFile } from '../../rules/words/language-file.ts'
import { shorterTags } from '../../rules/words/shorter-tags.ts'

const SHIPPED = import.meta.glob<LanguageFile>('../../public/words/*.json', { import: 'default' })

/** The words of `fr` for `fr-CA`, where there are none of its own. Null where there are none at all. */
export async function shippedWords(tag: string): Promise<LanguageFile['words'] | null> {
  for (const name of shorterTags(tag)) {
    const load = SHIPPED[`../../public/words/${name}.json`]
    if (load) return (await load()).words
  }
  return null
}
