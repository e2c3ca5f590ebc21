/** Words of the layout drawing. Loaded with it, not before; what a language lacks is said in English. */
import type { Figure } from '../dock.ts'
import en from './drawing.en.json' with { type: 'json' }
import type { Units } from './format.ts'
import { fill } from './words.ts'

export type DrawingWord = keyof typeof en
const LANGUAGES: Readonly<Record<string, typeof en>> = { en }

/** A figure, or text as it is. */
type Said = Figure | string | number

/** Words in one language and one system of units. */
export type DrawingWords = (key: DrawingWord, values?: Readonly<Record<string, Said>>) => string

export function drawingWords(lang: string, units: Units): DrawingWords {
  const words = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
  return (key, values = {}) =>
    fill(
      words[key],
      Object.fromEntries(
        Object.entries(values).map(([name, value]): [string, Figure] => [
          name,
          typeof value === 'object' ? value : { value, unit: 'text' },
        ]),
      ),
      units,
      lang,
    )
}
