/** How a language writes numbers, and which way it runs, by the tables of whatever runs this. Not in the first load: a page in plain English needs none. */
import { ENGLISH, type Language } from './language.ts'

/** A language by its tag and, where there are any, its words; numbers by the tables (Intl) of whatever runs this. Never throws. @param tag as a page says it: `fr`, `fr-CA`, `en_US`, nothing, or anything (then English) */
export function languageOf(tag: string, words: Language['words'] = {}): Language {
  const locale = localeOf(tag)
  if (locale === 'en') return { ...ENGLISH, words }
  const format = new Intl.NumberFormat(locale, { useGrouping: false })
  const decimal = format.formatToParts(0.5).find(({ type }) => type === 'decimal')?.value ?? '.'
  return {
    tag: locale,
    decimal,
    digits: [...ENGLISH.digits].map((n) => format.format(Number(n))).join(''),
    // English in its place runs as English does.
    dir:
      Object.keys(words).length > 0 && RIGHT_TO_LEFT.has(new Intl.Locale(locale).maximize().script ?? '')
        ? 'rtl'
        : 'ltr',
    words,
  }
}

/** Scripts of ISO 15924 that run from right to left, of those in use today. */
const RIGHT_TO_LEFT: ReadonlySet<string> = new Set(
  'Adlm Arab Aran Hebr Mand Nkoo Rohg Samr Syrc Thaa'.split(' '),
)

/** The tag of a language (BCP 47) that formats take: a page may say `en_US`, nothing, or anything; English where it is none. */
export function localeOf(lang: string): string {
  if (lang === 'en') return lang
  try {
    return Intl.getCanonicalLocales(lang.replaceAll('_', '-'))[0] ?? 'en'
  } catch {
    return 'en'
  }
}
