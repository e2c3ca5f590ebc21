/** Labels that stay on frames and legs: large id, where it goes, a square code that a phone reads. Cut along the dashes. */
import { labels } from '../../rules/papers/labels.ts'
import { sentence } from '../../rules/papers/saying.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { label, paragraph } from '../paper/blocks.ts'
import { codeOf, cutApart, documentOf, head, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, together } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { qrMarks } from '../paper/qr.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { fitText } from '../paper/text.ts'

const COLUMNS = 2
const HEIGHT = 34
const PAD = 3.5
const CODE = 24

export function labelsPaper(of: PaperOf): Paper {
  const { dock, catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const cell = (width - 6 * (COLUMNS - 1)) / COLUMNS
  const inner = cell - 3 * PAD - CODE
  const cards = labels(of).map(({ id, name, where, qr }): Block => {
    const text = together([
      block(8.5, (x, y) => [
        label([x, y + 6.6], fitText(id, inner, 6.6, 'bold'), { size: 6.6, weight: 'bold' }),
      ]),
      ...paragraph(name, inner, { size: SIZE.sub, before: 0.6 }),
      ...where.flatMap((line) => paragraph(sentence(line, t), inner, { size: SIZE.small, before: 0.5 })),
      ...paragraph(codeOf(dock), inner, { size: SIZE.tiny, ink: GRAY, before: 0.8 }),
    ])
    const height = Math.max(HEIGHT, text.height + 2 * PAD)
    return block(height, (x, y) => [
      ...qrMarks(qr, [x + PAD, y + (height - CODE) / 2], CODE),
      ...text.marks(x + 2 * PAD + CODE, y + (height - text.height) / 2),
    ])
  })
  const flow: Flow = [
    ...head(t('labels'), of, options, catalog),
    ...paragraph(t('labels-lead'), width, { ink: GRAY }),
    ...cutApart(cards, COLUMNS, width),
  ]
  return documentOf(t('labels'), flow, catalog, options, of)
}
