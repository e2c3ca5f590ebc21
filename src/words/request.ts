/** Asking the shop for a quote. Loaded with what says it, not before. */
import en from '../../rules/words/en/request.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type RequestWord = keyof typeof en
export const REQUEST = subject('request', en)
