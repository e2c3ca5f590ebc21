/** Words by code and language. A language is one JSON file beside this one; what it lacks is said in English. */
import type { Figure, Finding, Remedy } from '../dock.ts'
import en from './en.json' with { type: 'json' }
import { formatFigure, type Units } from './format.ts'

/** A sentence with `{names}`, or the forms of one by the figure that `count` names (keys as of Intl.PluralRules). */
type Template = string | { readonly count: string; readonly other: string; readonly [form: string]: string }

export type Words = typeof en
const LANGUAGES: Readonly<Record<string, Words>> = { en }

/** The language asked for, its base language, or English. */
export const wordsIn = (lang: string): Words => LANGUAGES[lang] ?? LANGUAGES[lang.split('-')[0]!] ?? en

const plurals = new Map<string, Intl.PluralRules>()

/** Made once for each language: to make one takes longer than all else that a sentence takes. */
function pluralsOf(lang: string): Intl.PluralRules {
  let rules = plurals.get(lang)
  if (!rules) {
    rules = new Intl.PluralRules(lang)
    plurals.set(lang, rules)
  }
  return rules
}

/** Fills a template: `{key}` becomes the figure in the reader's units. */
export function fill(
  template: Template,
  values: Readonly<Record<string, Figure>>,
  units: Units = 'metric',
  lang = 'en',
): string {
  const sentence =
    typeof template === 'string'
      ? template
      : (template[pluralsOf(lang).select(Number(values[template.count]?.value ?? 0))] ?? template.other)
  return sentence.replace(/\{(\w+)\}/g, (whole, key: string) => {
    const figure = values[key]
    if (figure?.unit === 'kind') return kindIn(figure.value, lang)
    return figure ? formatFigure(figure, units) : whole
  })
}

/** A kind of part within a sentence. */
const kindIn = (kind: number | string, lang: string): string =>
  wordsIn(lang).kinds[kind as keyof Words['kinds']]?.toLocaleLowerCase(lang) ?? String(kind)

/** By code. */
type Said = Readonly<Record<string, Readonly<Record<'plain' | 'text', Template>> | undefined>>

/** Words of a part of the engine that comes later; beside the first ones, so that nothing of them is loaded before it. */
export interface LaterWords {
  readonly findings: Said
  readonly remedies: Readonly<Record<string, Template>>
}
const later: Record<string, LaterWords[]> = {}

/** Adds words of a language, once. */
export function addWords(lang: string, words: LaterWords): void {
  later[lang] ??= []
  if (!later[lang].includes(words)) later[lang].push(words)
}

function laterWord<K extends keyof LaterWords>(
  lang: string,
  kind: K,
  key: string,
): LaterWords[K][string] | undefined {
  for (const one of [lang, lang.split('-')[0]!, 'en'])
    for (const words of later[one] ?? [])
      if (Object.hasOwn(words[kind], key)) return words[kind][key] as LaterWords[K][string]
  return undefined
}

/** What a finding says: `plain` for a homeowner, `text` with its figures. */
export function findingText(
  finding: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  units: Units = 'metric',
  lang = 'en',
): string {
  const words = wordsIn(lang)
  const entry =
    (words.findings as Said)[finding.code] ??
    (words.clashes as Said)[finding.code] ??
    laterWord(lang, 'findings', finding.code)
  return entry ? fill(entry[form], finding.values, units, lang) : finding.code
}

export function remedyText({ key, values }: Remedy, units: Units = 'metric', lang = 'en'): string {
  const template = wordsIn(lang).remedies[key as keyof Words['remedies']] ?? laterWord(lang, 'remedies', key)
  return template ? fill(template, values, units, lang) : key
}
