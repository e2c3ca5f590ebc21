/** The words of the first picture, and figures to fill into any. What is said later stands in a file a subject beside this one. */
import type { Figure } from '../../rules/index.ts'
import en from '../../rules/words/en/screen.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type Word = keyof typeof en
export const SCREEN = subject('screen', en)

export const meters = (value: number): Figure => ({ value, unit: 'm' })
export const count = (value: number): Figure => ({ value, unit: 'count' })
export const text = (value: string): Figure => ({ value, unit: 'text' })
