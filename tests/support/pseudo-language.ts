/**
 * A language made of English: every letter is another one, and each sentence is longer by a third. What is still in plain letters on a
 * screen or a paper did not come out of a language file.
 */
import { type Language, languageOf, type Template } from '../../rules/index.ts'
import { ENGLISH_WORDS } from '../../src/words/english.ts'

const PLAIN = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'
const OTHER = 'áƀçďéƒğħíĵķľɱñóþʠřšťúṽŵẋýžÁƁÇĎÉƑĞĦÍĴĶĽṀÑÓÞɊŘŠŤÚṼŴẊÝŽ'

interface Way {
  readonly letters: string
  /** What is added to a text of four letters and more. */
  more(length: number): string
}

const toldIn = (text: string, { letters, more }: Way): string => {
  const told = text
    .split(/(\{\w+\})/)
    .map((part) =>
      part.startsWith('{')
        ? part
        : [...part].map((sign) => (PLAIN.includes(sign) ? letters[PLAIN.indexOf(sign)] : sign)).join(''),
    )
    .join('')
  const added = text.length < 4 ? '' : more(text.length)
  return added === '' ? told : `${told} ${added}`
}

/** So much longer, in words as long as words are. */
const longerBy = (share: number, letter: string) => (length: number) => {
  let left = Math.max(1, Math.ceil(length * share) - 1)
  const words: string[] = []
  while (left > 0) {
    words.push(letter.repeat(Math.min(left, WORD)))
    left -= WORD + 1
  }
  return words.join(' ')
}
const WORD = 8

const THIRD: Way = { letters: OTHER, more: (length) => 'ö'.repeat(Math.ceil(length / 3)) }
const LONG: Way = { letters: OTHER, more: longerBy(0.4, 'ö') }
/** A unit is as long in every language. */
const UNITS: Way = { letters: OTHER, more: () => '' }
/** Hebrew letters, of which there are no two kinds. */
const HEBREW = 'אבגדהוזחטיכלמנסעפצקרשתךםןף'
const RTL: Way = { letters: HEBREW + HEBREW, more: longerBy(0.1, 'ץ') }

export const pseudo = (text: string): string => toldIn(text, THIRD)
export const pseudoRtl = (text: string): string => toldIn(text, RTL)

const templateIn = (template: Template, way: Way): Template =>
  typeof template === 'string'
    ? toldIn(template, way)
    : (Object.fromEntries(
        Object.entries(template).map(([form, text]) => [form, form === 'count' ? text : toldIn(text, way)]),
      ) as Template)

const wordsIn = (way: Way, units = way): Language['words'] =>
  Object.fromEntries(
    Object.entries(ENGLISH_WORDS).map(([subject, words]) => [
      subject,
      Object.fromEntries(
        Object.entries(words).map(([key, template]) => [
          key,
          templateIn(template, subject === 'figures' ? units : way),
        ]),
      ),
    ]),
  )

export const PSEUDO_WORDS = wordsIn(THIRD)
/** Each sentence longer by two fifths: as much as German is where it is longest. */
export const LONG_WORDS = wordsIn(LONG, UNITS)
/** Its tag names a script that runs from right to left. */
export const RTL_WORDS = wordsIn(RTL, { ...RTL, more: () => '' })
export const RTL_TAG = 'qps-Hebr'

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
