/** How far out, what it is decked with. Loaded with what shows it, not before. */
import en from '../../rules/words/en/wants.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const WANTS = subject('wants', en)
