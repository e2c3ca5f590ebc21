/** How wide text is, and how it is broken. Widths are those of the font that is embedded, without kerning: no writer kerns. mm. */
import metrics from './font-metrics.json' with { type: 'json' }
import type { Weight } from './marks.ts'

const EM = metrics.unitsPerEm
/** Of the em: capitals and digits over the baseline, and what hangs under it. */
export const CAP_HEIGHT = metrics.capHeight / EM
export const DESCENT = metrics.descent / EM

/** By code point: of each run the first one is its key. */
const widthsOf = (runs: Readonly<Record<string, string>>): ReadonlyMap<number, number> =>
  new Map(
    Object.entries(runs).flatMap(([first, widths]) =>
      widths.split(' ').map((width, i): [number, number] => [Number(first) + i, Number(width)]),
    ),
  )

const WIDTHS: Readonly<Record<Weight, ReadonlyMap<number, number>>> = {
  regular: widthsOf(metrics.regular),
  bold: widthsOf(metrics.bold),
}

/** What stands for a letter that the font lacks. */
const UNKNOWN = '?'

const isSet = (point: number): boolean => WIDTHS.regular.has(point) && WIDTHS.bold.has(point)

/** What is not seen by itself: how others are joined or shown. */
const UNSEEN = /^(?:\p{Cf}|\p{Variation_Selector})$/u
/** Blanks of other widths, such as the narrow one between thousands in French: one that does not break stands for each. */
const BLANK = /^\p{Zs}$/u
const NO_BREAK = '\u00a0'

/** Letters of a text for which a question mark stands on paper, in their order, each once. */
export const unsetLetters = (text: string): readonly string[] => [
  ...new Set(
    [...text.normalize('NFC')].filter((letter) => {
      const point = letter.codePointAt(0)!
      return point >= 0xa0 && !isSet(point) && !UNSEEN.test(letter) && !BLANK.test(letter) && point !== 0x2206
    }),
  ),
]

/**
 * Text as the font can write it: accents joined to their letters, line breaks and other controls as spaces, blanks of any width as one, a question mark for a
 * letter that it lacks (`unset.ts` says which on the sheet). What is drawn, measured and read back is this.
 */
export function printable(text: string): string {
  let clean = true
  for (let i = 0; i < text.length && clean; i++) {
    const code = text.charCodeAt(i)
    clean = code >= 0x20 && code < 0x7f
  }
  if (clean) return text
  let out = ''
  // U+2206 has the glyph of the Greek letter, and would be read back as that.
  for (const letter of text.normalize('NFC').replace(/\u2206/g, '\u0394')) {
    const point = letter.codePointAt(0)!
    if (point < 0x20 || (point >= 0x7f && point < 0xa0)) out += ' '
    else if (isSet(point)) out += letter
    else if (BLANK.test(letter)) out += NO_BREAK
    else if (!UNSEEN.test(letter)) out += UNKNOWN
  }
  return out
}

/** Of one line, mm; `size` is the em's, mm. */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
  const widths = WIDTHS[weight]
  let sum = 0
  const written = printable(text)
  for (let i = 0; i < written.length; i++) sum += widths.get(written.charCodeAt(i))!
  return (sum / EM) * size
}

/** Lines no wider than `width`; a word that alone is wider is broken where it must be. Empty text is one empty line. */
export function wrapText(
  text: string,
  width: number,
  size: number,
  weight: Weight = 'regular',
): readonly string[] {
  const lines: string[] = []
  const most = width + 5e-7
  // Nothing is kerned, so that widths add up.
  const blank = textWidth(' ', size, weight)
  for (const paragraph of text.split('\n')) {
    let line = ''
    let wide = 0
    for (const word of paragraph.split(' ').filter(Boolean)) {
      const own = textWidth(word, size, weight)
      if (line !== '' && wide + blank + own <= most) {
        line += ` ${word}`
        wide += blank + own
        continue
      }
      if (line !== '') lines.push(line)
      line = word
      wide = own
      while (wide > most && line.length > 1) {
        let end = line.length - 1
        while (end > 1 && textWidth(line.slice(0, end), size, weight) > most) end--
        lines.push(line.slice(0, end))
        line = line.slice(end)
        wide = textWidth(line, size, weight)
      }
    }
    lines.push(line)
  }
  return lines
}

/** One line no wider than `width`: what does not fit is cut, and an ellipsis says so. */
export function fitText(text: string, width: number, size: number, weight: Weight = 'regular'): string {
  if (textWidth(text, size, weight) <= width + 1e-6) return text
  for (let end = text.length - 1; end > 0; end--) {
    const shorter = `${text.slice(0, end).trimEnd()}…`
    if (textWidth(shorter, size, weight) <= width + 1e-6) return shorter
  }
  return ''
}
