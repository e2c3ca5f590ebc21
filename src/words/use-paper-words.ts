/** The words of papers and models on the screen; beside the screen's own, so that nothing of them is loaded before someone asks. */
import { useMemo } from 'react'
import { type Figure, fill } from '../../rules/index.ts'
import en from './papers.json' with { type: 'json' }
import { useWords } from './use-words.ts'

export type PaperWord = keyof typeof en
const LANGUAGES: Readonly<Record<string, Partial<typeof en>>> = { en }

export function usePaperWords() {
  const words = useWords()
  return useMemo(() => {
    const { lang, units } = words
    const inLang = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
    const p = (key: PaperWord, values: Readonly<Record<string, Figure>> = {}): string =>
      fill(inLang[key] ?? en[key], values, units, lang)
    return { ...words, p }
  }, [words])
}
