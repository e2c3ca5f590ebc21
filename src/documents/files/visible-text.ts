/**
 * Characters that are not seen but have an effect: control characters, which a terminal obeys; line breaks of any kind; marks that change
 * the direction of text, so that a line reads differently from what it says; lone surrogates. The two joiners stay: several scripts and emoji
 * need them.
 */
const UNSEEN = /(?![\u200C\u200D])[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu

/** As JSON writes it: U+001B as `\u001b`, what is beyond U+FFFF as its two halves. */
const escaped = (sign: string): string =>
  [...Array(sign.length).keys()].map((i) => `\\u${sign.charCodeAt(i).toString(16).padStart(4, '0')}`).join('')

/** One line of text as it may be shown: what is not seen is written out. */
export const visible = (text: string): string => text.replace(UNSEEN, escaped)

/** The same of text whose line ends are meant. */
export const visibleLines = (text: string): string => text.split('\n').map(visible).join('\n')

/** A value as indented JSON with nothing unseen in it but its own line ends. The same value comes back. */
export const jsonText = (value: unknown): string => `${visibleLines(JSON.stringify(value, null, 2))}\n`
