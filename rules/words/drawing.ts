/** Words of the layout drawing. Loaded with it, not before. */
import en from './en/drawing.json' with { type: 'json' }
import { type Say, subject } from './messages.ts'

export const DRAWING = subject('drawing', en)
export type DrawingWords = Say<keyof typeof en>
