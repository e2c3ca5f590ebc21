/** The least dock for a boat's draught. Loaded with what shows it, not before. */
import en from '../../rules/words/en/depth-search.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const DEPTH_SEARCH = subject('depth-search', en)
