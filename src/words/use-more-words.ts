/** The words of the parts that come later; beside the screen's own, so that nothing of them is loaded at first sight. */
import { useMemo } from 'react'
import { type Figure, fill } from '../../rules/index.ts'
import en from './more.json' with { type: 'json' }
import { useWords } from './use-words.ts'

export type MoreWord = keyof typeof en
const LANGUAGES: Readonly<Record<string, Partial<typeof en>>> = { en }

export function useMoreWords() {
  const words = useWords()
  return useMemo(() => {
    const { lang, units } = words
    const inLang = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
    const more = (key: MoreWord, values: Readonly<Record<string, Figure>> = {}): string =>
      fill((inLang[key] ?? en[key]) as Parameters<typeof fill>[0], values, units, lang)
    return { ...words, more }
  }, [words])
}

export type MoreWords = ReturnType<typeof useMoreWords>

/** Whether there are words for a key that comes from the engine. */
export const isMoreWord = (key: string): key is MoreWord => Object.hasOwn(en, key)
