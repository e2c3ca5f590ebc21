/** The questions about a shore. Loaded with what asks them, not before. */
import en from '../../rules/words/en/start.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const START = subject('start', en)
