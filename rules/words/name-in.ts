/**
 * What a part is called in another language: as the shop says (`words` of its catalog), else as the language has it for a part of that English
 * name, else by the catalog's own name. The demo shop's names are those that every language has.
 */
import type { Catalog } from '../catalog/index.ts'
import type { Language } from './language.ts'
import { own } from './messages.ts'
import { shorterTags } from './shorter-tags.ts'

/** Something of the shop's own, by its code and the name that the catalog has. */
export interface Named {
  readonly code: string
  readonly name: string
}

/** Of `fr-CA` first, then of `fr`. */
export function nameIn({ words }: Pick<Catalog, 'words'>, { code, name }: Named, of: Language): string {
  const { tag } = of
  for (const one of words ? shorterTags(tag) : []) {
    const told = own(own(words, one), code)
    if (told !== undefined) return told
  }
  const usual = own(own(of.words, 'usual-names'), name)
  return typeof usual === 'string' ? usual : name
}
