/** Words of packing, set-up, survey and quote. Loaded with the papers, not before; what a language lacks is said in English. */
import type { Figure } from '../dock.ts'
import type { Units } from './format.ts'
import en from './papers.en.json' with { type: 'json' }
import { fill } from './words.ts'

export type PaperWord = keyof typeof en
const LANGUAGES: Readonly<Record<string, typeof en>> = { en }

/** Words in one language and one system of units; numbers and text are taken as they are. */
export type PaperWords = (
  key: PaperWord,
  values?: Readonly<Record<string, Figure | string | number>>,
) => string

export function paperWords(lang: string, units: Units): PaperWords {
  const words = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
  return (key, values = {}) => {
    const figures = Object.entries(values).map(([name, value]): [string, Figure] => [
      name,
      typeof value === 'object' ? value : { value, unit: 'text' },
    ])
    return fill(words[key], Object.fromEntries(figures), units, lang)
  }
}
