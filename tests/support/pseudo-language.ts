/**
 * A language made of English: every letter is another one, and each sentence is longer by a third. What is still in plain letters on a
 * screen or a paper did not come out of a language file.
 */
import { type Language, languageOf, type Template } from '../../rules/index.ts'
import { ENGLISH_WORDS } from '../../src/words/english.ts'

const PLAIN = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'
const OTHER = 'áƀçďéƒğħíĵķľɱñóþʠřšťúṽŵẋýžÁƁÇĎÉƑĞĦÍĴĶĽṀÑÓÞɊŘŠŤÚṼŴẊÝŽ'

export const pseudo = (text: string): string => {
  const told = text
    .split(/(\{\w+\})/)
    .map((part) =>
      part.startsWith('{')
        ? part
        : [...part].map((sign) => (PLAIN.includes(sign) ? OTHER[PLAIN.indexOf(sign)] : sign)).join(''),
    )
    .join('')
  return text.length < 4 ? told : `${told} ${'ö'.repeat(Math.ceil(text.length / 3))}`
}

const ofTemplate = (template: Template): Template =>
  typeof template === 'string'
    ? pseudo(template)
    : (Object.fromEntries(
        Object.entries(template).map(([form, text]) => [form, form === 'count' ? text : pseudo(text)]),
      ) as Template)

export const PSEUDO_WORDS: Language['words'] = Object.fromEntries(
  Object.entries(ENGLISH_WORDS).map(([subject, words]) => [
    subject,
    Object.fromEntries(Object.entries(words).map(([key, template]) => [key, ofTemplate(template)])),
  ]),
)

/** `en-x-pseudo` would be English; a tag for private use has no number signs of its own either. */
export const PSEUDO: Language = languageOf('qps', PSEUDO_WORDS)

/** Texts and keys anywhere in files of the user's or the shop's, and ids and codes of a dock: said as they are in any language. */
export function ownTexts(...of: readonly unknown[]): string[] {
  const found = new Set<string>()
  const walk = (value: unknown): void => {
    if (typeof value === 'string') found.add(value)
    else if (value !== null && typeof value === 'object') for (const item of Object.values(value)) walk(item)
  }
  for (const one of of) walk(one)
  return [...found].filter((text) => /[A-Za-z]/.test(text)).sort((a, b) => b.length - a.length)
}

/** Plain words of two letters and more that are neither one's own nor in the language. What was cut short may be a part of one's own. */
export function untold(texts: readonly string[], own: readonly string[]): string[] {
  const all = own.join('\n')
  return [...new Set(texts)].filter((text) => {
    if (!/[A-Za-z]{2,}/.test(text)) return false
    const left = own.reduce((rest, one) => rest.replaceAll(one, ' '), text)
    const words = left.match(/[A-Za-z]{2,}/g) ?? []
    return words.some((word) => !(text.includes('…') && all.includes(word)))
  })
}
