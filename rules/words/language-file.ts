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
import type { Language, SubjectWords, Template } from './language.ts'
import { languageOf, localeOf } from './language-of.ts'

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

/** How a language differs from English in one place. */
export type Difference = {
  readonly path: string
  readonly subject: string
  readonly key: string
} & (
  | { readonly kind: 'missing' | 'unknown-subject' | 'unknown-key' }
  /** A name in braces that English does not fill there; or one that is said in English, and not here. */
  | { readonly kind: 'wrong-name' | 'no-name'; readonly name: string; readonly known: readonly string[] }
  /** Forms by number that the language has and the sentence has not; or that it has, and the language has not. */
  | { readonly kind: 'no-form' | 'wrong-form'; readonly form: string }
)

/** Every difference, one a message, in the order of English. */
export function differencesFromEnglish(
  { tag, words }: Pick<Language, 'tag' | 'words'>,
  english: Readonly<Record<string, SubjectWords>>,
): Difference[] {
  const found: Difference[] = []
  const forms = formsOf(tag)
  for (const [subject, known] of Object.entries(english)) {
    const own = Object.hasOwn(words, subject) ? words[subject]! : {}
    for (const [key, first] of Object.entries(known)) {
      const at = { path: `words.${subject}[${show(key)}]`, subject, key }
      if (Object.hasOwn(own, key))
        found.push(...ofTemplate(own[key]!, first, forms).map((one) => ({ ...at, ...one })))
      else found.push({ ...at, kind: 'missing' })
    }
  }
  for (const [subject, own] of Object.entries(words))
    if (!Object.hasOwn(english, subject))
      found.push({ path: `words.${subject}`, subject, key: '', kind: 'unknown-subject' })
    else
      for (const key of Object.keys(own))
        if (!Object.hasOwn(english[subject]!, key))
          found.push({ path: `words.${subject}[${show(key)}]`, subject, key, kind: 'unknown-key' })
  return found
}

type OfTemplate =
  | Pick<Extract<Difference, { name: string }>, 'kind' | 'name' | 'known'>
  | Pick<Extract<Difference, { form: string }>, 'kind' | 'form'>

function ofTemplate(own: Template, english: Template, forms: readonly string[]): OfTemplate[] {
  const known = [...new Set(namesIn(english))]
  const told = [...new Set(namesIn(own))]
  const found: OfTemplate[] = []
  for (const name of told) if (!known.includes(name)) found.push({ kind: 'wrong-name', name, known })
  for (const name of known) if (!told.includes(name)) found.push({ kind: 'no-name', name, known })
  if (typeof own === 'string') {
    // One sentence for all numbers, where English has several: every form that the language has is missing.
    if (typeof english !== 'string') for (const form of forms) found.push({ kind: 'no-form', form })
    return found
  }
  for (const form of forms) if (!Object.hasOwn(own, form)) found.push({ kind: 'no-form', form })
  for (const form of Object.keys(own))
    if (form !== 'count' && !CATEGORIES.includes(form)) found.push({ kind: 'wrong-form', form })
  return found
}

/** Most keys that are listed by name. */
const LISTED = 20
const CATEGORIES = ['zero', 'one', 'two', 'few', 'many', 'other']
/** What is counted here is under this. Some languages have a form for whole millions alone. */
const MOST = 1000

/** The forms of a sentence that whole numbers ask for, and `other`. */
export function formsOf(tag: string): readonly string[] {
  const rules = new Intl.PluralRules(tag)
  const asked = new Set(Array.from({ length: MOST }, (_, n) => rules.select(n)).concat('other'))
  return CATEGORIES.filter((form) => asked.has(form as Intl.LDMLPluralRule))
}

/** A difference as a sentence of `leadline check`. */
export function differenceLine(one: Difference): string {
  switch (one.kind) {
    case 'missing':
      return 'missing; it is said in English'
    case 'unknown-subject':
      return 'not a subject; it is never said'
    case 'unknown-key':
      return 'not a key; it is never said'
    case 'wrong-name':
      return `{${one.name}} is no name there; expected ${one.known.map((name) => `{${name}}`).join(', ') || 'no names'}`
    case 'no-name':
      return `{${one.name}} is in the English and not here`
    case 'no-form':
      return `no form "${one.form}", which the language has`
    case 'wrong-form':
      return `"${one.form}" is no form; expected ${CATEGORIES.join(', ')}`
  }
}

/**
 * The same for whoever made it: a name in braces that English does not fill is a fault, a sentence that is missing is said in English, the
 * rest is told.
 */
export function againstEnglish(
  language: Pick<Language, 'tag' | 'words'>,
  english: Readonly<Record<string, SubjectWords>>,
): { readonly issues: readonly Issue[]; readonly notices: readonly Notice[] } {
  const issues: Issue[] = []
  const notices: Notice[] = []
  const missing = new Map<string, string[]>()
  for (const one of differencesFromEnglish(language, english)) {
    const { kind, path, subject, key } = one
    if (kind === 'wrong-name')
      issues.push(issue(path, `{${one.name}}`, one.known.map((name) => `{${name}}`).join(', ') || 'no names'))
    else if (kind === 'missing') missing.set(subject, [...(missing.get(subject) ?? []), key])
    else notices.push({ path, message: differenceLine(one) })
  }
  for (const [subject, keys] of missing) {
    const all = Object.keys(english[subject] ?? {}).length
    const which =
      keys.length < all ? `: ${keys.slice(0, LISTED).join(', ')}${keys.length > LISTED ? ', …' : ''}` : ''
    notices.push({
      path: `words.${subject}`,
      message: `${keys.length} of ${all} are said in English${which}`,
    })
  }
  return { issues, notices }
}

const namesIn = (template: Template): string[] =>
  (typeof template === 'string'
    ? [template]
    : Object.entries(template).flatMap(([form, text]) => (form === 'count' ? [`{${text}}`] : [text]))
  ).flatMap((text) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!))
