/**
 * A language as plain data: its words by subject, and how it writes a number. English is built in, each subject with what says it
 * (`en/*.json`); any other language is a file of the same keys (`language-file.ts`), and what it lacks is said in English.
 */
import type { Units } from './figures.ts'

/** A sentence with `{names}`, or the forms of one by the figure that `count` names (keys as of Intl.PluralRules). */
export type Template =
  | string
  | { readonly count: string; readonly other: string; readonly [form: string]: string }

export type SubjectWords = Readonly<Record<string, Template>>

/** A language: how it writes numbers, which way it runs, and its words. */
export interface Language {
  /** BCP 47, canonical. */
  readonly tag: string
  readonly decimal: string
  /** Its ten digits, from nought on. */
  readonly digits: string
  /** Which way its words run. */
  readonly dir: 'ltr' | 'rtl'
  /** By subject, then by key. Empty for English. */
  readonly words: Readonly<Record<string, SubjectWords>>
}

/** Whom something is told: in these words and units. */
export interface Reader {
  readonly language: Language
  readonly units: Units
}

/** Plain English, which is in the code and needs no file. */
export const ENGLISH: Language = { tag: 'en', decimal: '.', digits: '0123456789', dir: 'ltr', words: {} }

/** The language that a text is in: English where the language has no words of its own. */
export const spokenIn = ({ tag, words }: Language): string =>
  Object.keys(words).length > 0 || tag.startsWith('en') ? tag : 'en'

/** A reader of plain English. */
export const english = (units: Units): Reader => ({ language: ENGLISH, units })

/** A number that is written with a point, as the language writes it. A minus stays before it where words run the other way. */
export function inDigits(number: string, { decimal, digits, dir }: Language): string {
  const text = dir === 'rtl' && number.startsWith('-') ? `\u200e${number}` : number
  if (decimal === '.' && digits === ENGLISH.digits) return text
  return text.replace(/[\d.]/g, (sign) => (sign === '.' ? decimal : (digits[Number(sign)] ?? sign)))
}

/** What a language's tables (Intl) are read with: to make one takes fifty times what it is used for. They go with the language. */
const tables = new WeakMap<Language, { readonly plural: Intl.PluralRules; readonly list: Intl.ListFormat }>()

function tablesOf(language: Language) {
  const known = tables.get(language)
  if (known) return known
  const { tag } = language
  const made = {
    plural: new Intl.PluralRules(tag),
    list: new Intl.ListFormat(tag, { type: 'unit', style: 'short' }),
  }
  tables.set(language, made)
  return made
}

/** The form of a sentence that a count asks for. */
export const pluralOf = (count: number, language: Language): string =>
  language.tag === 'en' ? (count === 1 ? 'one' : 'other') : tablesOf(language).plural.select(count)

export const listOf = (items: readonly string[], language: Language): string =>
  language.tag === 'en' ? items.join(', ') : tablesOf(language).list.format([...items])
