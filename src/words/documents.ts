/** Papers and models on the screen. Loaded with what says it, not before. */
import en from '../../rules/words/en/documents.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type DocumentWord = keyof typeof en
export const DOCUMENTS = subject('documents', en)
