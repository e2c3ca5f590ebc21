/** A dock's shape by hand. Loaded with what shows it, not before. */
import en from '../../rules/words/en/plan-editor.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const PLAN_EDITOR = subject('plan-editor', en)
