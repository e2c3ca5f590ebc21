/** What was found, listed: comes with the list, not before. */
import en from '../../rules/words/en/stands.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const STANDS = subject('stands', en)
