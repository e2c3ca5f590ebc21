/** Levels from a gauge's record. Loaded with what shows it, not before. */
import en from '../../rules/words/en/gauge.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const GAUGE = subject('gauge', en)
