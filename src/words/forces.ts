/** Colored forces and the swaying dock: both the screen and the scene tell them. Loaded with what says it, not before. */
import en from '../../rules/words/en/forces.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type ForceWord = keyof typeof en
export const FORCES = subject('forces', en)
