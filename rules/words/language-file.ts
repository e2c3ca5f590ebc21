/** A language as a file: `{ "format": "leadline/words", "version": 1, "lang": "fr-CA", "words": { SUBJECT: { KEY: TEMPLATE } } }`. */
import * as v from 'valibot'
import {
  type Issue,
  issue,
  type Notice,
  type Parsed,
  parseText,
  parseWith,
  plainOf,
  show,
  upgrade,
} from '../validation.ts'
import { type Language, languageOf, localeOf, type SubjectWords, type Template } from './language.ts'

const FORMAT = 'leadline/words'
const VERSION = 1
const MAX_BYTES = 2 * 1024 * 1024

const TemplateSchema = v.union([
  v.pipe(v.string(), v.maxLength(5000)),
  v.objectWithRest({ count: v.string(), other: v.string() }, v.string()),
])
export const LanguageFileSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  /** BCP 47. */
  lang: v.string(),
  words: v.record(v.string(), v.record(v.string(), TemplateSchema)),
})
export type LanguageFile = v.InferOutput<typeof LanguageFileSchema>

/** Never throws. Subjects and keys that nobody asks for are kept, and never said. */
export function parseLanguage(input: unknown): Parsed<Language> {
  const read = parseLanguageFile(input)
  return read.ok ? { ...read, value: languageOf(read.value.lang, read.value.words) } : read
}

const tagIssues = ({ lang }: LanguageFile): Issue[] =>
  lang !== 'en' && localeOf(lang) === 'en'
    ? [issue('lang', show(lang), 'a language as BCP 47 has it, such as fr or fr-CA')]
    : []

/** The same as the file that it is. */
export function parseLanguageFile(input: unknown): Parsed<LanguageFile> {
  const file = upgrade(plainOf(input), FORMAT, VERSION, {})
  return file.ok ? parseWith(LanguageFileSchema, file.plain, tagIssues) : file
}

export function parseLanguageText(text: string): Parsed<Language> {
  const json = parseText(text, MAX_BYTES)
  return json.ok ? parseLanguage(json.value) : json
}

/**
 * What a language lacks or has too much of, against English: a name in braces that English does not fill is a fault, a sentence that is
 * missing is said in English.
 */
export function againstEnglish(
  { words }: Pick<Language, 'words'>,
  english: Readonly<Record<string, SubjectWords>>,
): { readonly issues: readonly Issue[]; readonly notices: readonly Notice[] } {
  const issues: Issue[] = []
  const notices: Notice[] = []
  for (const [subject, own] of Object.entries(words)) {
    const known = Object.hasOwn(english, subject) ? english[subject] : undefined
    if (!known) {
      notices.push({ path: `words.${subject}`, message: 'not a subject; it is never said' })
      continue
    }
    for (const [key, template] of Object.entries(own)) {
      const path = `words.${subject}[${show(key)}]`
      const first = Object.hasOwn(known, key) ? known[key] : undefined
      if (first === undefined) notices.push({ path, message: 'not a key; it is never said' })
      else
        for (const name of namesIn(template))
          if (!namesIn(first).includes(name))
            issues.push(
              issue(
                path,
                `{${name}}`,
                namesIn(first)
                  .map((one) => `{${one}}`)
                  .join(', ') || 'no names',
              ),
            )
    }
  }
  for (const [subject, known] of Object.entries(english)) {
    const missing = Object.keys(known).filter((key) => !Object.hasOwn(words[subject] ?? {}, key)).length
    if (missing > 0)
      notices.push({
        path: `words.${subject}`,
        message: `${missing} of ${Object.keys(known).length} are said in English`,
      })
  }
  return { issues, notices }
}

const namesIn = (template: Template): string[] =>
  (typeof template === 'string'
    ? [template]
    : Object.entries(template).flatMap(([form, text]) => (form === 'count' ? [`{${text}}`] : [text]))
  ).flatMap((text) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!))
