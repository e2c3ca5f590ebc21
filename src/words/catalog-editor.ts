/** The catalog editor: a page of its own, with its own script. */
import en from '../../rules/words/en/catalog-editor.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type EditorWord = keyof typeof en
export const CATALOG_EDITOR = subject('catalog-editor', en)
