/** Count cards, one for each bag: what is in it, where it goes, which wrench, how tight. Cut along the dashes. */

import { formatMass } from '../../rules/index.ts'
import { countCards } from '../../rules/papers/count-cards.ts'
import { sentence } from '../../rules/papers/saying.ts'
import { listOf } from '../../rules/words/language.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { label, paragraph } from '../paper/blocks.ts'
import { codeOf, cutApart, documentOf, head, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, together } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'

const PAD = 2.6
const COLUMNS = 3

export function cardsPaper(of: PaperOf): Paper {
  const { dock, catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const cell = (width - 6 * (COLUMNS - 1)) / COLUMNS
  const inner = cell - 2 * PAD
  const cards = countCards(dock, catalog).map(({ bag, rows }): Block => {
    const body = together([
      block(7, (x, y) => [
        label([x, y + 5.2], t('bag', { id: bag.id }), { size: 5.6, weight: 'bold' }),
        label([x + inner, y + 5.2], formatMass(bag.mass, options), { anchor: 'end', ink: GRAY }),
      ]),
      ...rows.flatMap((row): Block[] => [
        ...paragraph(`${row.quantity}${row.spares > 0 ? ` + ${row.spares}` : ''} × ${row.name}`, inner, {
          size: SIZE.small + 0.35,
          weight: 'bold',
          before: 2,
        }),
        ...paragraph(sentence(row.goes, t), inner, { size: SIZE.tiny, before: 0.3 }),
        ...(row.wrench === null
          ? []
          : paragraph(
              [`${t('wrench')} ${row.wrench}`, ...row.turns.map((turn) => sentence(turn.say, t))].join(' · '),
              inner,
              { size: SIZE.tiny, before: 0.3 },
            )),
        ...(row.places.length === 0
          ? []
          : paragraph(
              listOf(
                [
                  ...row.places.map(({ section, count }) => t('card-places', { section, count })),
                  t('card-needed', { needed: row.needed }),
                ],
                options.language,
              ),
              inner,
              { size: SIZE.tiny, ink: GRAY, before: 0.4 },
            )),
      ]),
      ...paragraph(`${dock.name} · ${codeOf(dock)}`, inner, { size: SIZE.tiny, ink: GRAY, before: 2.4 }),
    ])
    return block(body.height + 2 * PAD, (x, y) => body.marks(x + PAD, y + PAD))
  })
  const flow: Flow = [
    ...head(t('cards'), of, options, catalog),
    ...paragraph(t('cards-lead'), width, { ink: GRAY }),
    ...cutApart(cards, COLUMNS, width),
  ]
  return documentOf(t('cards'), flow, catalog, options, of)
}
