/** The day at the lake. Loaded with what shows it, not before. */
import en from '../../rules/words/en/waterside.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type WatersideWord = keyof typeof en
export const WATERSIDE = subject('waterside', en)
