/** The bed from above. Loaded with what shows it, not before. */
import en from '../../rules/words/en/bed-plan.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const BED_PLAN = subject('bed-plan', en)
