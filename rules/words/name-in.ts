/** What a shop calls its own parts in another language (`words` of its catalog): the name that it has there, or the catalog's own. */
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
export function nameIn({ words }: Pick<Catalog, 'words'>, { code, name }: Named, { tag }: Language): string {
  for (const one of words ? shorterTags(tag) : []) {
    const told = own(own(words, one), code)
    if (told !== undefined) return told
  }
  return name
}
