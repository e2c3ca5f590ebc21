/** The autumn sheet: what stood how, the way back, bags counted, wear looked for, where it is stored. */
import type { PartKind } from '../../rules/dock.ts'
import { cartons } from '../../rules/papers/cartons.ts'
import { autumn } from '../../rules/papers/steps/set-up.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWord, type PaperWords } from '../../rules/words/papers.ts'
import { list, paragraph, subheading, writeOn } from '../paper/blocks.ts'
import { documentOf, head, inColumns, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, together } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { SIZE } from '../paper/style.ts'
import { type Column, table, tableHead } from '../paper/table.ts'
import { legTableBlocks, legTableLead, ROWS } from './leg-setting.ts'
import { dayLine, hangingBlocks, orderBlocks, stopBlocks, whoBlocks } from './work-order.ts'
import { backTable } from './work-tables.ts'

export function autumnPaper(of: PaperOf): Paper {
  const { catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const sheet = autumn(of)
  const flow: Flow = [
    ...head(t('autumn'), of, options, catalog),
    dayLine(of, 'autumn', width),
    ...legTableLead(of, width, 'autumn'),
    ...legTableBlocks(of, width, 'autumn', ROWS[3]),
    ...orderBlocks(of, sheet, width),
    ...stopBlocks(t, sheet, width, catalog.shop?.cautions),
    ...whoBlocks(of, sheet, width),
    ...hangingBlocks(of, 'autumn', width),
    ...backTable(of, sheet, width),
    ...bags(of, width, t),
    ...wear(of, width, t),
  ]
  return documentOf(t('autumn'), flow, catalog, options, of)
}

/** Each kind of piece in its bag, how many came, how many go back, what is to be ordered; in two tables side by side. */
function bags({ dock, catalog }: PaperOf, width: number, t: PaperWords): Block[] {
  const all = cartons(dock, catalog).bags.flatMap(({ id, items }) =>
    items.map(({ name, quantity, spares }) => [
      id,
      name,
      spares > 0 ? `${quantity} + ${spares}` : String(quantity),
      '',
      '',
    ]),
  )
  if (all.length === 0) return []
  const columns: Column[] = [
    { title: t('bag-short'), bold: true },
    { title: t('part'), flex: true },
    { title: t('bags-packed'), align: 'end' },
    { title: t('bags-back'), least: 8, write: true },
    { title: t('bags-order'), least: 8, write: true },
  ]
  const gap = 6
  const cell = (width - gap) / 2
  const style = { row: 5.1, size: SIZE.small, like: all, head: tableHead(columns, all, cell, SIZE.small) }
  const half = Math.ceil(all.length / 2)
  const [left, right] = [all.slice(0, half), all.slice(half)].map((rows) => table(columns, rows, cell, style))
  const rows = left!.map((one, r): Block => {
    const beside = right![r]
    return {
      ...one,
      height: Math.max(one.height, beside?.height ?? 0),
      head: null,
      marks: (x, y) => [...one.marks(x, y), ...(beside?.marks(x + cell + gap, y) ?? [])],
    }
  })
  const both = block(style.head.height, (x, y) => [
    ...style.head.marks(x, y),
    ...(right!.length > 0 ? style.head.marks(x + cell + gap, y) : []),
  ])
  return [
    { ...subheading(t('bags-title'), width), name: t('bags-title') },
    ...rows.map((row) => ({ ...row, head: both })),
  ]
}

/** What is looked over, and how it lies over the winter: of what this dock has. */
function wear({ dock }: PaperOf, width: number, t: PaperWords): Block[] {
  const small = { size: SIZE.small }
  const gap = 6
  const aside = (width - gap) / 2
  const has = (kind: PartKind): boolean => dock.placements.some((piece) => piece.kind === kind)
  const posts = has('anchor-post')
  const extras = dock.placements.some(({ kind }) => EXTRAS.has(kind))
  const looked: PaperWord[] = [
    'wear-legs',
    'wear-frames',
    ...(has('brace') ? (['wear-braces'] as const) : []),
    ...(has('hook-bracket') || has('hinge-bar') ? (['wear-hooks'] as const) : []),
    'wear-panels',
    'wear-pads',
    ...(posts ? (['wear-posts'] as const) : []),
    ...(extras ? (['wear-extras'] as const) : []),
  ]
  const stored: PaperWord[] = [
    'storage-frames',
    'storage-panels',
    'storage-legs',
    ...(posts ? (['storage-posts'] as const) : []),
    ...(extras ? (['storage-extras'] as const) : []),
    'storage-bags',
  ]
  const column = (title: PaperWord, keys: readonly PaperWord[]): Block =>
    together([
      subheading(t(title), aside),
      ...list(
        keys.map((key) => t(key)),
        aside,
        'tick',
        small,
      ).map((one) => ({ ...one, before: 0.8 })),
    ])
  const order = [...paragraph(t('wear-note'), aside, { ...small, before: 2 }), writeOn([''], aside, 7)]
  const columns = [column('wear-title', looked), together([column('storage-title', stored), ...order])]
  return inColumns(columns, 2, width, gap).map((one) => ({ ...one, before: 4, name: t('wear-title') }))
}

/** What hangs on a dock beside its posts. */
const EXTRAS: ReadonlySet<PartKind> = new Set<PartKind>(['bumper', 'fender-board', 'accessory'])
