/** The screen's words by key and language. A language is one JSON file beside this one; what it lacks is said in English. */
import { type Figure, fill, type Units } from '../../rules/index.ts'
import en from './en.json' with { type: 'json' }

export type Word = keyof typeof en
type Template = (typeof en)[Word]
const LANGUAGES: Readonly<Record<string, Partial<typeof en>>> = { en }

/** A sentence by its key, its `{names}` filled with figures in the reader's units. */
export function say(
  lang: string,
  units: Units,
  key: Word,
  values: Readonly<Record<string, Figure>> = {},
): string {
  const words = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
  const template: Template = words[key] ?? en[key]
  // Most have nothing to fill in, and all are asked for at every move of a drag.
  return typeof template === 'string' && !template.includes('{')
    ? template
    : fill(template, values, units, lang)
}

export const meters = (value: number): Figure => ({ value, unit: 'm' })
export const count = (value: number): Figure => ({ value, unit: 'count' })
export const text = (value: string): Figure => ({ value, unit: 'text' })
