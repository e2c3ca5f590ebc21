/** Words by code and language. A language is one JSON file beside this one; what it lacks is said in English. */
import type { Figure, Finding, Remedy } from '../dock.ts'
import en from './en.json' with { type: 'json' }
import { formatFigure, localeOf, type Units } from './format.ts'

/** A sentence with `{names}`, or the forms of one by the figure that `count` names (keys as of Intl.PluralRules). */
type Template = string | { readonly count: string; readonly other: string; readonly [form: string]: string }

export type Words = typeof en
const LANGUAGES: Readonly<Record<string, Words>> = { en }

/** The language asked for, its base language, or English. */
export const wordsIn = (lang: string): Words => inLanguage(LANGUAGES, lang) ?? en

/** The language asked for and its base language, as keys: none is a name that every object has, such as `constructor`. */
const tagsOf = (lang: string): readonly string[] => {
  const tag = localeOf(lang)
  return [tag, tag.split('-')[0]!]
}

/** The language's own entry, or that of its base language. */
export function inLanguage<T>(languages: Readonly<Record<string, T>>, lang: string): T | undefined {
  const [tag, base] = tagsOf(lang)
  return languages[tag!] ?? languages[base!]
}

const plurals = new Map<string, Intl.PluralRules>()

/** Made once for each language: to make one takes longer than all else that a sentence takes. */
function pluralsOf(lang: string): Intl.PluralRules {
  let rules = plurals.get(lang)
  if (!rules) {
    rules = new Intl.PluralRules(localeOf(lang))
    plurals.set(lang, rules)
  }
  return rules
}

/**
 * Fills a template: `{name}` becomes the figure in the reader's units, of several the first few and how many more. Figures of `kind`,
 * and those of `key` by the name that they have in the sentence, are words of the language.
 */
export function fill(
  template: Template,
  values: Readonly<Record<string, Figure>>,
  units: Units = 'metric',
  lang = 'en',
  more: MoreWords = NONE,
): string {
  const sentence =
    typeof template === 'string'
      ? template
      : (template[pluralsOf(lang).select(Number(values[template.count]?.value ?? 0))] ?? template.other)
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const figure = values[name]
    if (!figure) return whole
    const { value, unit } = figure
    const one = (item: number | string): string =>
      unit === 'kind'
        ? kindIn(item, lang)
        : unit === 'key'
          ? keyIn(name, item, lang, more)
          : formatFigure({ value: item, unit }, units)
    return typeof value === 'object' ? listIn(value.map(one), lang) : one(value)
  })
}

/** More than this are not listed: the first so many, and how many more. */
const LISTED = { most: 4, first: 3 } as const

function listIn(items: readonly string[], lang: string): string {
  const { join, more, none } = wordsIn(lang).list
  if (items.length === 0) return none
  if (items.length <= LISTED.most) return items.join(join)
  const left = items.length - LISTED.first
  return more.replace('{items}', items.slice(0, LISTED.first).join(join)).replace('{more}', String(left))
}

/** A kind of part within a sentence. */
const kindIn = (kind: number | string, lang: string): string =>
  wordsIn(lang).kinds[kind as keyof Words['kinds']]?.toLocaleLowerCase(localeOf(lang)) ?? String(kind)

type Keys = Readonly<Record<string, Readonly<Record<string, string>> | undefined>>

/** A word of the engine's own: `why` of a finding, say, has a table of that name. */
function keyIn(name: string, key: number | string, lang: string, more: MoreWords): string {
  const own = (keys: Keys | undefined): string | undefined =>
    keys?.[name] && Object.hasOwn(keys[name], key) ? keys[name][key] : undefined
  return own(wordsIn(lang).keys) ?? inMore(lang, more, (words) => own(words.keys)) ?? String(key)
}

/** By code. */
type Said = Readonly<Record<string, Readonly<Record<'plain' | 'text', Template>> | undefined>>

/** Words of a part of the engine that comes later; beside the first ones, so that nothing of them is loaded before it. */
export interface LaterWords {
  readonly findings: Said
  readonly remedies: Readonly<Record<string, Template>>
  readonly keys?: Keys
}
/** By language. */
export type MoreWords = Readonly<Record<string, LaterWords>>
const NONE: MoreWords = {}

/** In the language asked for, its base language, or English. */
function inMore<T>(lang: string, more: MoreWords, find: (words: LaterWords) => T | undefined): T | undefined {
  for (const one of [...tagsOf(lang), 'en']) {
    const words = Object.hasOwn(more, one) ? more[one] : undefined
    const found = words && find(words)
    if (found !== undefined) return found
  }
  return undefined
}

/** What a finding says: `plain` for a homeowner, `text` with its figures. `more`: the words of what is found later. */
export function findingIn(
  { code, values }: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  units: Units = 'metric',
  lang = 'en',
  more: MoreWords = NONE,
): string {
  const words = wordsIn(lang)
  const entry =
    (words.findings as Said)[code] ??
    (words.clashes as Said)[code] ??
    inMore(lang, more, ({ findings }) => (Object.hasOwn(findings, code) ? findings[code] : undefined))
  return entry ? fill(entry[form], values, units, lang, more) : code
}

export function remedyIn(
  { key, values }: Remedy,
  units: Units = 'metric',
  lang = 'en',
  more: MoreWords = NONE,
): string {
  const template =
    wordsIn(lang).remedies[key as keyof Words['remedies']] ??
    inMore(lang, more, ({ remedies }) => (Object.hasOwn(remedies, key) ? remedies[key] : undefined))
  return template ? fill(template, values, units, lang, more) : key
}
