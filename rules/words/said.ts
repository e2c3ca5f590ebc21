/** Words that come in files of their own: by key, filled with figures in a reader's language and units. */
import type { Figure } from '../dock.ts'
import type { Units } from './format.ts'
import { fill, inLanguage } from './words.ts'

type Template = Parameters<typeof fill>[0]

/** Numbers and text are taken as they are. */
export type Say<K extends string> = (
  key: K,
  values?: Readonly<Record<string, Figure | string | number>>,
) => string

/** @param languages by BCP 47 code; what a language lacks is said in English */
export const wordsFrom =
  <K extends string>(
    languages: { readonly en: Readonly<Record<K, Template>> } & Readonly<
      Record<string, Readonly<Partial<Record<K, Template>>>>
    >,
  ) =>
  (lang: string, units: Units): Say<K> => {
    const words = inLanguage(languages, lang) ?? languages.en
    return (key, values = {}) => {
      const figures = Object.entries(values).map(([name, value]): [string, Figure] => [
        name,
        typeof value === 'object' ? value : { value, unit: 'text' },
      ])
      return fill(words[key] ?? languages.en[key], Object.fromEntries(figures), units, lang)
    }
  }
