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
      : (template[new Intl.PluralRules(lang).select(Number(values[template.count]?.value ?? 0))] ??
        template.other)
  return sentence.replace(/\{(\w+)\}/g, (whole, key: string) => {
    const figure = values[key]
    return figure ? formatFigure(figure, units) : whole
  })
}

type FindingCode = keyof Words['findings']

/** What a finding says: `plain` for a homeowner, `text` with its figures. */
export function findingText(
  finding: Pick<Finding, 'code' | 'values'>,
  form: 'plain' | 'text',
  units: Units = 'metric',
  lang = 'en',
): string {
  const entry = wordsIn(lang).findings[finding.code as FindingCode]
  return entry ? fill(entry[form], finding.values, units, lang) : finding.code
}

export function remedyText({ key, values }: Remedy, units: Units = 'metric', lang = 'en'): string {
  const template = wordsIn(lang).remedies[key as keyof Words['remedies']]
  return template ? fill(template, values, units, lang) : key
}
