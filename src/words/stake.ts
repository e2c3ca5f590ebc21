/** What stays on shore: a stake for distances, a mark for levels. Loaded with its fields, not before. */
import en from '../../rules/words/en/stake.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const STAKE = subject('stake', en)
