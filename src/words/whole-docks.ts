/** Three docks to choose from. Loaded with what shows them, not before. */
import en from '../../rules/words/en/whole-docks.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const WHOLE_DOCKS = subject('whole-docks', en)
