/** Words of the layout drawing. Loaded with it, not before. */
import en from './drawing.en.json' with { type: 'json' }
import { type Say, wordsFrom } from './said.ts'

export type DrawingWord = keyof typeof en
export type DrawingWords = Say<DrawingWord>
export const drawingWords = wordsFrom<DrawingWord>({ en })
