/** The delivery note: what was handed over, package by package, to be ticked off and signed. It has no prices. */

import { formatMass } from '../../rules/index.ts'
import { cartons, type Package } from '../../rules/papers/cartons.ts'
import { isForbidden } from '../../rules/stops.ts'
import { listOf } from '../../rules/words/language.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { facts, paragraph, subheading, writeOn } from '../paper/blocks.ts'
import { documentOf, head, widthOf } from '../paper/document.ts'
import { type Flow, space } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { table } from '../paper/table.ts'

export function deliveryPaper(of: PaperOf): Paper {
  const { dock, catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const packed = cartons(dock, catalog)
  const inside = ({ bags, items }: Package): string =>
    listOf(
      [
        ...(bags.length > 0 ? [t('label-bags', { bags: bags.map(({ id }) => id).join(', ') })] : []),
        ...items.map(
          ({ quantity, spares, name }) => `${quantity}${spares > 0 ? ` + ${spares}` : ''} × ${name}`,
        ),
      ],
      options.language,
    )
  const flow: Flow = [
    ...head(t('delivery'), of, options, catalog),
    facts(
      [
        { label: t('packages'), value: String(packed.packages.length) },
        { label: t('pieces'), value: String(packed.pieces) },
        { label: t('shipping-mass'), value: formatMass(packed.mass, options) },
      ],
      width,
      3,
      { size: SIZE.heading },
    ),
    { ...writeOn([t('delivery-for')], width), before: 4 },
    ...paragraph(t('delivery-lead'), width, { ink: GRAY, before: 3 }),
    ...table(
      [
        { title: '', tick: true },
        { title: t('delivery-package'), align: 'end', bold: true },
        { title: t('delivery-kind') },
        { title: t('delivery-what'), flex: true },
        { title: t('mass'), align: 'end' },
      ],
      packed.packages.map((one) => [
        '',
        String(one.number),
        t(`package-${one.kind}`),
        inside(one),
        formatMass(one.mass, options),
      ]),
      width,
    ),
    { ...subheading(t('delivery-remarks'), width), before: 5 },
    { ...writeOn([''], width), keep: true },
    { ...writeOn([''], width), keep: true },
    // A dock that must not be built is not handed over.
    isForbidden(dock)
      ? space(0)
      : { ...writeOn([t('delivered-by'), t('received-by'), t('date')], width), before: 6 },
  ]
  return documentOf(t('delivery'), flow, catalog, options, of)
}
