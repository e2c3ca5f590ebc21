/** Sentences by subject and key, filled with figures: `wordsOf(papers, reader)('station')`. */
import type { Figure } from '../dock.ts'
import dock from './en/dock.json' with { type: 'json' }
import { formatFigure } from './figures.ts'
import { inDigits, type Language, listOf, pluralOf, type Reader, type Template } from './language.ts'

/** What is said of one subject: its name in a language file, and its English. */
export interface Subject<K extends string = string> {
  readonly name: string
  readonly english: Readonly<Record<K, Template>>
}

/** A subject of messages, by its name in language files, with their English. */
export const subject = <K extends string>(
  name: string,
  english: Readonly<Record<K, Template>>,
): Subject<K> => ({ name, english })

/** Numbers and text are taken as they are. */
export type Values = Readonly<Record<string, Figure | string | number>>
/** Says a message by its key, with values for the names in it. */
export type Say<K extends string> = (key: K, values?: Values) => string

/** Says messages of one subject to one reader. */
export const wordsOf =
  <K extends string>(of: Subject<K>, reader: Reader): Say<K> =>
  (key, values) =>
    say(of, reader, key, values)

/** A message of a subject in the reader's language; in English where that has none. @param more subjects that have the words of keys among the values */
export function say<K extends string>(
  of: Subject<K>,
  reader: Reader,
  key: K,
  values: Values = {},
  more: readonly Subject[] = [],
): string {
  const template = reader.language.words[of.name]?.[key] ?? of.english[key]
  // Most have nothing to fill in, and all are asked for at every move of a drag.
  return typeof template === 'string' && !template.includes('{')
    ? template
    : fill(template, values, reader, more)
}

/** Of what comes from outside: `constructor` may be a key, and is none of every object's. */
export const own = <T>(of: Readonly<Record<string, T>> | undefined, name: string): T | undefined =>
  of && Object.hasOwn(of, name) ? of[name] : undefined

/** The template of a key that comes from the engine or from outside; undefined where nobody has words for it. */
export function templateOf(
  subjects: readonly Subject[],
  key: string,
  { words }: Language,
): Template | undefined {
  for (const { name, english } of subjects) {
    const found = own(own(words, name), key) ?? own(english, key)
    if (found !== undefined) return found
  }
  return undefined
}

/**
 * Fills a template: `{name}` becomes the figure in the reader's units, of several the first few and how many more. Figures of `kind`,
 * and those of `key` by the name that they have in the sentence, are words of the language.
 * @param more subjects that have the words of keys
 */
export function fill(
  template: Template,
  values: Values,
  reader: Reader,
  more: readonly Subject[] = [],
): string {
  const sentence = typeof template === 'string' ? template : formOf(template, values, reader.language)
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const figure = values[name]
    if (figure === undefined) return whole
    if (typeof figure === 'string') return figure
    if (typeof figure === 'number') return inDigits(String(figure), reader.language)
    const { value, unit } = figure
    const one = (item: number | string): string =>
      unit === 'kind'
        ? wordOf([DOCK], `kind-in-sentence.${item}`, reader.language, item)
        : unit === 'key'
          ? wordOf(more, `name.${name}.${item}`, reader.language, item)
          : formatFigure({ value: item, unit }, reader)
    if (typeof value !== 'object') return one(value)
    return (unit === 'list' ? listOf : firstFew)(value.map(one), reader.language)
  })
}

/** Of sections, parts and lists: `kind.leg`, `corner.start.left`, `severity.stop`, `caution.1`. */
export const DOCK = subject('dock', dock)

function formOf(template: Exclude<Template, string>, values: Values, language: Language): string {
  const counted = values[template.count]
  const count = Number(typeof counted === 'object' ? counted.value : (counted ?? 0))
  return template[pluralOf(count, language)] ?? template.other
}

/** A single word; the key itself where there is none. */
export function wordOf(
  subjects: readonly Subject[],
  key: string,
  language: Language,
  otherwise: string | number,
): string {
  const found = templateOf(subjects, key, language)
  return typeof found === 'string' ? found : String(otherwise)
}

/** More than this are not listed: the first so many, and how many more. */
const LISTED = { most: 4, first: 3 } as const

function firstFew(items: readonly string[], language: Language): string {
  if (items.length === 0) return wordOf([DOCK], 'list.none', language, '')
  if (items.length <= LISTED.most) return listOf(items, language)
  const more = wordOf([DOCK], 'list.more', language, '')
  const left = inDigits(String(items.length - LISTED.first), language)
  return more.replace('{items}', () => listOf(items.slice(0, LISTED.first), language)).replace('{more}', left)
}
