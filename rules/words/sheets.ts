/** Heads, columns and labels of the papers, where `papers.en.json` has their sentences. Loaded with them, not before. */
import { type Say, wordsFrom } from './said.ts'
import en from './sheets.en.json' with { type: 'json' }

export type SheetWord = keyof typeof en
export type SheetWords = Say<SheetWord>
export const sheetWords = wordsFrom<SheetWord>({ en })
