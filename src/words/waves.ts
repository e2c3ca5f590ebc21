/** Wind and waves in figures. Loaded with what says it, not before. */
import en from '../../rules/words/en/waves.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type WaveWord = keyof typeof en
export const WAVES = subject('waves', en)
