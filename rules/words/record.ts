/** Words of the season record and its papers. Loaded with them, not before. */
import en from './en/record.json' with { type: 'json' }
import { subject } from './messages.ts'

export type RecordWord = keyof typeof en
export const RECORD = subject('record', en)
