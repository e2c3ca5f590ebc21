/**
 * What the papers' font cannot write. A question mark stands for each such letter; a bar over the sheet says so, with their scripts and
 * numbers (Unicode), so that nobody takes the name for whole.
 */

import type { Reader } from '../../rules/index.ts'
import { listOf } from '../../rules/words/language.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { baselineOf, label, lineHeight, rect } from './blocks.ts'
import type { Ink, Mark, Paper, Sheet } from './marks.ts'
import { ALERT } from './style.ts'
import { fitText, unsetLetters } from './text.ts'

const SCRIPTS = {
  han: /\p{Script=Han}/u,
  kana: /[\p{Script=Hiragana}\p{Script=Katakana}]/u,
  hangul: /\p{Script=Hangul}/u,
  arabic: /\p{Script=Arabic}/u,
  hebrew: /\p{Script=Hebrew}/u,
  indic: /\p{Script=Devanagari}/u,
  thai: /\p{Script=Thai}/u,
  emoji: /\p{Extended_Pictographic}|\p{Regional_Indicator}/u,
  other: /./su,
} as const
type Script = keyof typeof SCRIPTS
const ALL = Object.keys(SCRIPTS) as readonly Script[]
/** So many of a script are told by their numbers. */
const TOLD = 4

/** What cannot be written of these texts, in words; empty where all can. */
export function unsetIn(texts: readonly string[], reader: Reader): string {
  const letters = [...new Set(texts.flatMap(unsetLetters))]
  if (letters.length === 0) return ''
  const t = wordsOf(PAPERS, reader)
  const scriptOf = (letter: string): Script => ALL.find((script) => SCRIPTS[script].test(letter))!
  const what = ALL.flatMap((script) => {
    const own = letters.filter((letter) => scriptOf(letter) === script)
    if (own.length === 0) return []
    const told = own.slice(0, TOLD).map(numberOf).join(' ')
    return [
      t('unset-letters', { script: t(`script-${script}`), letters: own.length > TOLD ? `${told} …` : told }),
    ]
  })
  return t('unset', { what: listOf(what, reader.language) })
}

const numberOf = (letter: string): string =>
  `U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`

/** Over the bar of what must not be built, in what every paper leaves free above, mm. */
const BAR = { side: 15, top: 4.9, height: 3.2, size: 2.35 } as const
const WHITE: Ink = '#ffffff'

/** The paper, with a bar over each sheet on which letters are missing. */
export const withUnset = (paper: Paper, reader: Reader): Paper => ({
  ...paper,
  sheets: paper.sheets.map((sheet) => {
    const said = unsetIn(textsOf(sheet), reader)
    return said === '' ? sheet : { ...sheet, marks: [...sheet.marks, ...bar(said, sheet.width)] }
  }),
})

const textsOf = ({ marks }: Sheet): string[] =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))

const bar = (said: string, width: number): Mark[] => [
  rect([BAR.side, BAR.top], width - 2 * BAR.side, BAR.height, null, ALERT),
  label(
    [width / 2, BAR.top + (BAR.height - lineHeight(BAR.size)) / 2 + baselineOf(BAR.size)],
    fitText(said, width - 2 * BAR.side - 4, BAR.size, 'bold'),
    { size: BAR.size, weight: 'bold', ink: WHITE, anchor: 'middle' },
  ),
]
