/** What the terminal prints for people. Faults of arguments and files are told in English: programs read them too. */
import en from '../../rules/words/en/terminal.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export const TERMINAL = subject('terminal', en)
