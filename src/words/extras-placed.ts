/** Extras put in their place. Loaded with what shows it, not before. */
import en from '../../rules/words/en/extras-placed.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const EXTRAS_PLACED = subject('extras-placed', en)
