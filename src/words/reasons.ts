/** Why legs, braces, start and ramp are as they are. Loaded with what says it, not before. */
import en from '../../rules/words/en/reasons.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type ReasonWord = keyof typeof en
export const REASONS = subject('reasons', en)
