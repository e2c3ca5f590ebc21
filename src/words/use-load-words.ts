/** The words of loads and cases; beside the screen's own, so that nothing of them is loaded before someone asks for figures. */
import { useMemo } from 'react'
import { type Figure, fill, formatFigure } from '../../rules/index.ts'
import en from './loads.json' with { type: 'json' }
import { useWords } from './use-words.ts'

export type LoadWord = keyof typeof en
const LANGUAGES: Readonly<Record<string, Partial<typeof en>>> = { en }

export function useLoadWords() {
  const words = useWords()
  return useMemo(() => {
    const { lang, units } = words
    const inLang = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
    const loads = (key: LoadWord, values: Readonly<Record<string, Figure>> = {}): string =>
      fill(inLang[key] ?? en[key], values, units, lang)
    return { ...words, loads, figure: (of: Figure) => formatFigure(of, units) }
  }, [words])
}

export type LoadWords = ReturnType<typeof useLoadWords>
