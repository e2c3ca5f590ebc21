/** What the rules where the dock stands allow. Loaded with what shows it, not before. */
import en from '../../rules/words/en/limits.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const LIMIT_WORDS = subject('limits', en)
