/** The packing list: package by package, bag by bag, to be ticked off; spares apart. */
import { formatLength, formatMass } from '../../rules/index.ts'
import { type Bag, cartons, type Package, type PackedItem } from '../../rules/papers/cartons.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { band, facts, paragraph, writeOn } from '../paper/blocks.ts'
import { documentOf, head as sheetHead, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, heightOf, together } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { type Column, table, tableHead } from '../paper/table.ts'

export function packingPaper(of: PaperOf): Paper {
  const { dock, catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const packed = cartons(dock, catalog)
  const columns: Column[] = [
    { title: '', tick: true },
    { title: t('count'), align: 'end', bold: true },
    { title: t('spares'), align: 'end' },
    { title: t('part') },
    { title: t('code') },
    { title: t('for'), flex: true },
    { title: t('mass'), align: 'end' },
  ]
  const row = ({ quantity, spares, name, code, of: places, mass }: PackedItem): string[] => [
    '',
    String(quantity),
    spares > 0 ? `+ ${spares}` : '',
    name,
    code,
    places.join(', '),
    formatMass(mass, options),
  ]
  const every = packed.packages.flatMap(({ items, bags }) => [...items, ...bags.flatMap((one) => one.items)])
  const like = every.map(row)
  const head = tableHead(columns, like, width)
  const rows = (items: readonly PackedItem[]): readonly Block[] =>
    table(columns, items.map(row), width, { like, head })
  const title = (one: Package): Block =>
    band(
      [
        `${t('package', { n: one.number })} · ${t(`package-${one.kind}`)}`,
        one.over && one.limit !== null
          ? `(${t('package-over', { limit: formatMass(one.limit, options) })})`
          : '',
      ]
        .filter(Boolean)
        .join(' '),
      formatMass(one.mass, options),
      width,
      { head, name: t('package', { n: one.number }) },
    )
  const bag = (one: Bag): Block[] => {
    const lines = paragraph(`${t('bag', { id: one.id })} · ${formatMass(one.mass, options)}`, width - 1.6, {
      size: SIZE.small + 0.25,
      weight: 'bold',
      ink: GRAY,
    })
    return [
      block(heightOf(lines), (x, y) => together(lines).marks(x + 1.6, y), { before: 1.4, keep: true, head }),
      ...rows(one.items),
    ]
  }
  const flow: Flow = [
    ...sheetHead(t('packing'), of, options, catalog),
    facts(
      [
        { label: t('packages'), value: String(packed.packages.length) },
        { label: t('pieces'), value: String(packed.pieces) },
        { label: t('shipping-mass'), value: formatMass(packed.mass, options) },
        { label: t('longest'), value: formatLength(packed.longest, options) },
        { label: t('heaviest'), value: formatMass(packed.heaviest, options) },
      ],
      width,
      5,
      { size: SIZE.heading },
    ),
    ...packed.packages.flatMap((one, i): Block[] => {
      const blocks = [title(one), ...rows(one.items), ...one.bags.flatMap(bag)]
      // Never the signatures alone on a sheet: the last package goes with them.
      return i < packed.packages.length - 1 ? blocks : blocks.map((block) => ({ ...block, keep: true }))
    }),
    { ...writeOn([t('packed-by'), t('checked-by'), t('date')], width), before: 6 },
  ]
  return documentOf(t('packing'), flow, catalog, options, of)
}
