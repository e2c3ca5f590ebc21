/** Loads, cases, and what every part uses of its strength. Loaded with what says it, not before. */
import en from '../../rules/words/en/loads.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type LoadWord = keyof typeof en
export const LOADS = subject('loads', en)
