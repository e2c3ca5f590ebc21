/** Words of what is seen on request: colored forces, the swaying dock. Both the screen and the scene tell them. */
import { type Figure, fill, type Units } from '../../rules/index.ts'
import en from './seen.json' with { type: 'json' }

export type SeenWord = keyof typeof en
const LANGUAGES: Readonly<Record<string, Partial<typeof en>>> = { en }

export function seen(
  lang: string,
  units: Units,
  key: SeenWord,
  values: Readonly<Record<string, Figure>> = {},
): string {
  const words = LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en
  return fill(words[key] ?? en[key], values, units, lang)
}
