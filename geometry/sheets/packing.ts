/** The packing list: package by package, bag by bag, to be ticked off; spares apart. */
import { formatLength, formatMass } from '../../rules/index.ts'
import {
  type Bag,
  cartons,
  type Package,
  type Packages,
  type PackedItem,
} from '../../rules/papers/cartons.ts'
import { loading, runsOf } from '../../rules/papers/loading.ts'
import { groupBy } from '../../rules/papers/order.ts'
import { isForbidden } from '../../rules/stops.ts'
import { fitOnPaper } from '../../rules/words/fit-text.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { band, facts, paragraph, subheading, writeOn } from '../paper/blocks.ts'
import { documentOf, inColumns, head as sheetHead, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, heightOf, together as stacked } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { type Column, table, tableHead } from '../paper/table.ts'
import { existingBlocks } from './existing.ts'
import { foundBlocks } from './found.ts'

export function packingPaper(of: PaperOf): Paper {
  const { dock, catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const packed = cartons(dock, catalog)
  const list = listOf(packed, options, width)
  const groups = alikeOf(packed.packages)
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
    ...fitOnPaper(dock, options).flatMap((line) => paragraph(line, width)),
    ...foundBlocks(of, width),
    ...existingBlocks(of, width),
    ...loadingBlocks(of, packed, width),
    ...groups.flatMap((alike, i): Block[] => {
      const blocks = [
        list.title(alike),
        ...list.rows(inEach(alike)),
        ...alike.flatMap(({ bags }) => bags.flatMap(list.bag)),
      ]
      // Never the signatures alone on a sheet: the last package goes with them.
      return i < groups.length - 1 ? blocks : blocks.map((block) => ({ ...block, keep: true }))
    }),
    ...(isForbidden(dock)
      ? []
      : [{ ...writeOn([t('packed-by'), t('checked-by'), t('date')], width), before: 6 }]),
  ]
  return documentOf(t('packing'), flow, catalog, options, of)
}

const COLUMNS = 3

/** In which order they go onto the truck or trailer. */
function loadingBlocks({ dock, options }: PaperOf, packed: Packages, width: number): Block[] {
  const t = wordsOf(PAPERS, options)
  const steps = loading(dock, packed)
  if (steps.length < 2 || isForbidden(dock)) return []
  const cell = (width - 6 * (COLUMNS - 1)) / COLUMNS
  const lines = steps.map(({ section, packages }, i) => {
    const values = { n: i + 1, packages: runsOf(packages), section: section ?? '' }
    return stacked(
      paragraph(t(section === null ? 'loading-spares' : 'loading-step', values), cell, {
        size: SIZE.small + 0.25,
        before: 0,
      }),
    )
  })
  return [
    subheading(t('loading'), width),
    ...paragraph(t('loading-lead'), width, { size: SIZE.small, ink: GRAY, before: 0.4 }),
    ...inColumns(lines, COLUMNS, width).map((row) => ({ ...row, before: 0.8 })),
  ]
}

/** The blocks of a list whose columns stand under one another, whatever package they are of. */
function listOf({ packages }: Packages, options: PaperOptions, width: number) {
  const t = wordsOf(PAPERS, options)
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
  const like = packages.flatMap(({ items, bags }) => [...items, ...bags.flatMap((one) => one.items)]).map(row)
  const head = tableHead(columns, like, width)
  const rows = (items: readonly PackedItem[]): readonly Block[] =>
    table(columns, items.map(row), width, { like, head })
  return {
    rows,
    /** Packages that are alike are one: their numbers, and what each of them weighs. */
    title(alike: readonly Package[]): Block {
      const one = alike[0]!
      const several = alike.length > 1
      const name = several
        ? t('package-alike', {
            count: { value: alike.length, unit: 'count' },
            packages: runsOf(alike.map(({ number }) => number)),
          })
        : t('package', { n: one.number })
      const over =
        one.over && one.limit !== null
          ? ` (${t('package-over', { limit: formatMass(one.limit, options) })})`
          : ''
      const mass = formatMass(one.mass, options)
      return band(
        `${name} · ${t(`package-${one.kind}`)}${over}`,
        several ? t('package-each', { mass }) : mass,
        width,
        { head, name: t('package', { n: one.number }) },
      )
    },
    bag(one: Bag): Block[] {
      const lines = paragraph(`${t('bag', { id: one.id })} · ${formatMass(one.mass, options)}`, width - 1.6, {
        size: SIZE.small + 0.25,
        weight: 'bold',
        ink: GRAY,
      })
      return [
        block(heightOf(lines), (x, y) => stacked(lines).marks(x + 1.6, y), { before: 1.4, keep: true, head }),
        ...rows(one.items),
      ]
    },
  }
}

/** Packages that hold the same, wherever they stand. */
function alikeOf(packages: readonly Package[]): Package[][] {
  const key = ({ kind, items, bags, number }: Package): string =>
    bags.length > 0
      ? `bags ${number}`
      : [kind, ...items.map(({ code, quantity, spares }) => `${code} ${quantity} ${spares}`)].join('\n')
  return [...groupBy(packages, key).values()]
}

/** What is in each of them, for the places of all. */
const inEach = (alike: readonly Package[]): readonly PackedItem[] =>
  alike[0]!.items.map((item, i) => ({ ...item, of: alike.flatMap(({ items }) => items[i]!.of) }))
