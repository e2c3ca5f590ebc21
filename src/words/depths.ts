/** The table of depths, and how to measure. Loaded with what says it, not before. */
import en from '../../rules/words/en/depths.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const DEPTHS = subject('depths', en)
