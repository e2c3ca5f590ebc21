/** What a field is called: by its place in the schema, else by its key. */

import type { Reader } from '../../../rules/index.ts'
import { templateOf } from '../../../rules/words/messages.ts'
import { CATALOG_EDITOR } from '../../words/catalog-editor.ts'
import type { Path } from '../draft.ts'

/** Names of the shop's own are between some of the schema's keys. */
const OWN: readonly (readonly string[])[] = [
  ['stock'],
  ['materials'],
  ['spares', 'byKind'],
  ['deckings', 'panels'],
  ['words'],
]

/** The schema's keys of a path: without places in lists and without names of the shop's own. */
function keysIn(path: Path): string[] {
  const keys: string[] = []
  let own = 0
  for (const key of path) {
    if (own > 0) own -= 1
    else if (typeof key === 'string') {
      keys.push(key)
      if (OWN.some((one) => one.length === keys.length && one.every((part, i) => part === keys[i])))
        own = key === 'words' ? 2 : 1
    }
  }
  return keys
}

/** Undefined where there are no words for it. */
export function labelOf(path: Path, { language }: Reader): string | undefined {
  const keys = keysIn(path)
  const last = path.at(-1)
  const tries =
    typeof last === 'number' && keys.at(-1) === 'size'
      ? [`label.size.${last}`]
      : [keys.slice(-2).join('.'), keys.length === 1 ? `catalog.${keys[0]}` : '', keys.at(-1) ?? ''].map(
          (key) => `label.${key}`,
        )
  for (const key of tries) {
    const found = templateOf([CATALOG_EDITOR], key, language)
    if (typeof found === 'string') return found
  }
  return undefined
}
