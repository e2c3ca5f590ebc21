/** Files of soundings. Loaded with what reads them, not before. */
import en from '../../rules/words/en/soundings-file.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const SOUNDINGS_FILE = subject('soundings-file', en)
