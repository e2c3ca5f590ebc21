/** Labels that stay on frames and legs, and those on packages; on sheets of labels as they are bought, or cut along dashes. */
import { formatMass } from '../../rules/index.ts'
import { labels, type PackageLabel, type PartLabel, packageLabels } from '../../rules/papers/labels.ts'
import { sentence } from '../../rules/papers/saying.ts'
import { isForbidden } from '../../rules/stops.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWords } from '../../rules/words/papers.ts'
import { baselineOf, label, lineHeight, paragraph, type TextStyle, textLine } from '../paper/blocks.ts'
import { codeOf, cutApart, documentOf, head, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, together } from '../paper/flow.ts'
import { type LabelGrid, labelSheet } from '../paper/label-grid.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { ALERT, GRAY, SIZE } from '../paper/style.ts'
import { fitText, textWidth, unsetLetters } from '../paper/text.ts'
import { EVEN, type Face, faceMarks, naturalHeight, PAD } from './label-face.ts'

const COLUMNS = 3
/** Of a label that is cut out, mm. */
const LEAST = 26
/** Kept free at the edge of a sheet, mm: where printers do not reach. */
const EDGE = 5.6

export function labelsPaper(of: PaperOf): Paper {
  const { catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const parts = labels(of).map((one) => partFace(one, of, t))
  const packages = packageLabels(of).map((one) => packageFace(one, of, t))
  if (options.labels) return onGrid([...parts, ...packages], options.labels, of, t)
  const width = widthOf(options)
  const flow: Flow = [
    ...head(t('labels'), of, options, catalog),
    ...paragraph(t('labels-lead'), width, { ink: GRAY }),
    // One after the other: what is on a package says so itself.
    ...cut([...parts, ...packages], width),
  ]
  return documentOf(t('labels'), flow, catalog, options, of)
}

function cut(faces: readonly Face[], width: number): Block[] {
  const cell = (width - 6 * (COLUMNS - 1)) / COLUMNS
  const cards = faces.map((face): Block => {
    const height = naturalHeight(face, cell, LEAST)
    return block(height, (x, y) =>
      faceMarks(face, [x, y], { width: cell, height, pads: EVEN, code: LEAST - 2 * PAD }),
    )
  })
  return cutApart(cards, COLUMNS, width)
}

/** Nothing but labels, each in its place. */
function onGrid(
  faces: readonly Face[],
  grid: LabelGrid,
  { dock, catalog, options }: PaperOf,
  t: PaperWords,
): Paper {
  const { sheet, places, width, height } = labelSheet(grid)
  const sheets = Math.max(1, Math.ceil(faces.length / places.length))
  return {
    title: t('labels'),
    author: catalog.name,
    subject: `${dock.name} · ${codeOf(dock)}`,
    lang: options.language.tag,
    sheets: Array.from({ length: sheets }, (_, s) => ({
      ...sheet,
      bookmark: s === 0 ? t('labels') : null,
      marks: places.flatMap(([x, y], i) => {
        const face = faces[s * places.length + i]
        const pads = {
          left: Math.max(PAD, EDGE - x),
          top: Math.max(PAD, EDGE - y),
          right: Math.max(PAD, EDGE - (sheet.width - x - width)),
          bottom: Math.max(PAD, EDGE - (sheet.height - y - height)),
        }
        return face ? faceMarks(face, [x, y], { width, height, pads }) : []
      }),
    })),
  }
}

const small = (text: string, width: number, style: TextStyle = {}): Block =>
  together(paragraph(text, width, { size: SIZE.tiny, before: 0.4, ...style }))

/** What is large on a label: smaller where it is long, so that it is whole. */
function titleBlock(text: string, width: number, most: number): Block {
  const size = Math.max(SIZE.body, Math.min(most, most * (width / textWidth(text, most, 'bold'))))
  return block(lineHeight(size), (x, y) => [
    label([x, y + baselineOf(size)], fitText(text, width, size, 'bold'), {
      size,
      weight: 'bold',
      tag: { role: 'H3' },
    }),
  ])
}

/** Above all else on a label of a dock that must not be built. */
const alert = (of: PaperOf, t: PaperWords, width: number): Block[] =>
  isForbidden(of.dock)
    ? [textLine(t('forbidden-mark'), width, { size: SIZE.small, weight: 'bold', ink: ALERT })]
    : []

function partFace({ id, number, name, where, qr }: PartLabel, of: PaperOf, t: PaperWords): Face {
  const title = number === null ? id : t('label-leg', { number })
  const lines = where.map((line) => sentence(line, t))
  return {
    codes: codesOf(qr, id, [title, ...lines, name], of),
    title: (width, most) => titleBlock(title, width, most),
    lines: (width) => [
      ...alert(of, t, width),
      ...lines.map((line) => small(line, width)),
      small(name, width, { size: SIZE.small }),
    ],
    foot: (width) => foot(number === null ? codeOf(of.dock) : `${id} · ${codeOf(of.dock)}`, width),
  }
}

function packageFace(one: PackageLabel, of: PaperOf, t: PaperWords): Face {
  const { dock, design, options } = of
  const title = t('label-package', { n: one.number, of: one.of })
  const mass = formatMass(one.mass, options)
  const heft = one.people > 1 ? `${mass} · ${t('label-people', { people: one.people })}` : mass
  const whose = [dock.name, design.job?.customer ?? '', design.job?.order ?? ''].filter(Boolean).join(' · ')
  const kind = t(`package-${one.packing}`)
  const items =
    one.bags.length > 0
      ? [t('label-bags', { bags: one.bags.map(({ id }) => id).join(', ') })]
      : one.items.map(
          ({ quantity, spares, name }) => `${quantity}${spares > 0 ? ` + ${spares}` : ''} × ${name}`,
        )
  return {
    codes: codesOf(one.qr, one.id, [title, heft, kind, ...items], of),
    title: (width, most) => titleBlock(title, width, most),
    lines: (width) => [
      ...alert(of, t, width),
      small(heft, width, { size: SIZE.small, weight: 'bold' }),
      ...(unsetLetters(whose).length > 0 && options.labels
        ? [small(t('unset-label'), width, { ink: ALERT })]
        : []),
      ...(whose === '' ? [] : [small(whose, width)]),
      small(kind, width),
    ],
    list: {
      items: (width) => items.map((line) => small(line, width)),
      more: (width, count, shown) =>
        small(t(shown > 0 ? 'label-more' : 'label-kinds', { count: { value: count, unit: 'count' } }), width),
    },
    foot: (width) => foot(codeOf(dock), width),
  }
}

const foot = (text: string, width: number): Block =>
  together(paragraph(text, width, { size: SIZE.tiny, ink: GRAY }), { before: 0.8 })

/** A link that opens it, then all that is on it, then the least: its id and the dock's check code, which the others begin or end with. */
function codesOf(qr: string, id: string, told: readonly string[], { options }: PaperOf): string[] {
  return [
    ...(options.link === undefined ? [] : [linkTo(options.link, id)]),
    [qr, ...told].join('\n'),
    ...told.map((_, i) => [qr, ...told.slice(0, told.length - 1 - i)].join('\n')),
  ]
}

/** The address that opens the dock, with what is to be shown of it. */
function linkTo(address: string, id: string): string {
  const [, base = '', fragment = ''] = /^([^#]*)(#.*)?$/s.exec(address) ?? []
  return `${base}${base.includes('?') ? '&' : '?'}leadline-at=${encodeURIComponent(id)}${fragment}`
}
