/** The packing list: package by package, bag by bag, to be ticked off; spares apart. */
import { formatLength, formatMass } from '../../../rules/index.ts'
import { type Bag, cartons, type Package, type PackedItem } from '../../../rules/papers/cartons.ts'
import { sheetWords } from '../../../rules/words/sheets.ts'
import { paragraph, subheading, writeOn } from '../blocks.ts'
import { documentOf, head, type PaperOf, widthOf } from '../document.ts'
import type { Block, Flow } from '../flow.ts'
import type { Paper } from '../marks.ts'
import { GRAY } from '../style.ts'
import { type Column, table } from '../table.ts'

export function packingPaper(of: PaperOf): Paper {
  const { dock, catalog, options } = of
  const { units, lang } = options
  const t = sheetWords(lang, units)
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
    formatMass(mass, units),
  ]
  const every = packed.packages.flatMap(({ items, bags }) => [...items, ...bags.flatMap((one) => one.items)])
  const like = every.map(row)
  const rows = (items: readonly PackedItem[], headless = false): readonly Block[] =>
    table(columns, items.map(row), width, { like, headless })
  const title = (one: Package): string =>
    [
      `${t('package', { n: one.number })}: ${t(`package-${one.kind}`)}, ${formatMass(one.mass, units)}`,
      one.over && one.limit !== null ? `(${t('package-over', { limit: formatMass(one.limit, units) })})` : '',
    ]
      .filter(Boolean)
      .join(' ')
  const bag = (one: Bag, i: number): Block[] => [
    ...paragraph(`${t('bag', { id: one.id })}, ${formatMass(one.mass, units)}`, width, {
      weight: 'bold',
      before: 2.4,
    }).map((block) => ({ ...block, keep: true })),
    ...rows(one.items, i > 0),
  ]
  const flow: Flow = [
    ...head(t('packing'), of, options),
    ...paragraph(
      t('packing-lead', {
        packages: String(packed.packages.length),
        pieces: String(packed.pieces),
        mass: formatMass(packed.mass, units),
        longest: formatLength(packed.longest, units),
        heaviest: formatMass(packed.heaviest, units),
      }),
      width,
      { ink: GRAY },
    ),
    ...packed.packages.flatMap((one): Block[] => [
      subheading(title(one), width),
      ...rows(one.items),
      ...one.bags.flatMap(bag),
    ]),
    writeOn([t('packed-by'), t('checked-by'), t('date')], width),
  ]
  return documentOf(t('packing'), flow, catalog, options, of)
}
