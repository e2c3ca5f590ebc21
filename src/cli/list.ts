/** The packing list for a person at a bench, and as CSV. */
import {
  type Catalog,
  cautionsIn,
  type DifferenceRow,
  type Dock,
  findingText,
  formatLength,
  formatMass,
  formatSlope,
  moneyIn,
  type PackingList,
  type Reader,
  remedyText,
  severityWord,
  wordsOf,
} from '../../rules/index.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { EXISTING, leftLines, usedLines } from '../../rules/words/existing-text.ts'
import { fitLines } from '../../rules/words/fit-text.ts'
import { legListed, pairListed, withLegNumbers } from '../../rules/words/leg-name.ts'
import { csvOf } from '../documents/files/csv.ts'
import { listRows, marked } from '../documents/files/tables.ts'
import { visible } from '../documents/files/visible-text.ts'
import { withCaseInWords } from '../words/load-case-words.ts'
import { LOADS } from '../words/loads.ts'
import { TERMINAL } from '../words/terminal.ts'

export const listCsv = (list: PackingList, dock: Dock, order?: string): string =>
  csvOf(marked(listRows(list), dock, order))

export const differenceCsv = (rows: readonly DifferenceRow[]): string => csvOf(rows)

/** Columns padded to their widest cell; numbers to the right. Cells are of one line: nobody's name makes a row of its own. */
export function table(
  head: readonly string[],
  given: readonly (readonly string[])[],
  right: ReadonlySet<number>,
): string[] {
  const rows = given.map((row) => row.map(visible))
  const widths = head.map((cell, i) => Math.max(cell.length, ...rows.map((row) => row[i]!.length)))
  const line = (row: readonly string[]): string =>
    `  ${row.map((cell, i) => (right.has(i) ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!))).join('  ')}`.trimEnd()
  return [line(head), ...rows.map(line)]
}

export function differenceText(rows: readonly DifferenceRow[], reader: Reader): string {
  const t = wordsOf(TERMINAL, reader)
  const changed = rows.filter((row) => row.add > 0 || row.over > 0)
  if (changed.length === 0) return `${t('difference.none')}\n`
  return table(
    [t('add'), t('over'), t('have'), t('need'), t('part'), t('code')],
    changed.map((row) => [
      String(row.add),
      String(row.over),
      String(row.have),
      String(row.need),
      row.name,
      row.code,
    ]),
    new Set([0, 1, 2, 3]),
  )
    .map((line) => `${line}\n`)
    .join('')
}

export function listText(list: PackingList, dock: Dock, reader: Reader, shop?: Catalog['shop']): string {
  const t = wordsOf(TERMINAL, reader)
  const out: string[] = [
    t('list', { name: list.name || t('dock') }),
    t('check-code', { catalog: list.catalog, code: list.fingerprint.all.slice(0, 12) }),
    '',
    ...bagTables(list, reader),
    ...existingText(list, dock, reader),
    ...placeTables(list, dock, reader),
    ...sums(list, dock, reader),
    ...fitText(dock, reader),
    '',
    ...foundLines(dock, reader),
    '',
    t('cautions'),
    ...cautionsIn(reader, shop).map((caution) => `  ${caution}`),
  ]
  return out.map((line) => `${visible(line)}\n`).join('')
}

function bagTables({ groups, totals }: PackingList, reader: Reader): string[] {
  const t = wordsOf(TERMINAL, reader)
  const money = moneyIn(totals.currency, reader.language)
  const head = ['[ ]', t('quantity'), t('spare'), t('part'), t('code'), t('mass'), t('price'), t('wrench')]
  return groups.flatMap(({ bag, rows }) => [
    bag === null ? t('loose') : t('bag', { id: bag }),
    ...table(
      head,
      rows.map((row) => [
        '[ ]',
        String(row.quantity),
        row.spares > 0 ? `+${row.spares}` : '',
        row.name,
        row.code,
        formatMass(row.mass, reader),
        money(row.price),
        [
          row.wrench ?? '',
          ...row.turns.map(({ at, from, to }) =>
            t('turns', { at, turns: from === to ? String(from) : `${from}-${to}` }),
          ),
        ]
          .filter(Boolean)
          .join(', '),
      ]),
      new Set([1, 2, 5, 6]),
    ),
    '',
  ])
}

function existingText({ existing }: PackingList, dock: Dock, reader: Reader): string[] {
  if (!existing) return []
  const t = wordsOf(EXISTING, reader)
  const under = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : [title, ...lines.map((line) => `  ${line}`), '']
  return [
    ...under(t('used'), usedLines(existing, reader, dock)),
    ...under(t('left'), leftLines(existing, reader)),
  ]
}

function placeTables({ legs, braces }: PackingList, dock: Dock, reader: Reader): string[] {
  const t = wordsOf(TERMINAL, reader)
  return [
    t('legs'),
    ...table(
      [t('leg'), t('stock'), t('to-deck'), t('to-frame')],
      legs.map((leg) => [
        legListed(dock, leg.leg, reader),
        leg.code ?? t('none-long'),
        formatLength(leg.setHeight, reader),
        formatLength(leg.setHeightFrame, reader),
      ]),
      new Set([2, 3]),
    ),
    '',
    ...(braces.length === 0
      ? []
      : [
          t('braces'),
          ...table(
            [t('pair'), t('brace'), t('low-end')],
            braces.map((b) => [pairListed(dock, b.pair), b.code, String(legNumber(dock, b.low))]),
            new Set(),
          ),
          '',
        ]),
  ]
}

function sums({ totals, existing }: PackingList, { ramp }: Dock, reader: Reader): string[] {
  const t = wordsOf(TERMINAL, reader)
  const money = moneyIn(totals.currency, reader.language)
  return [
    ...(ramp
      ? [t('ramp', { slope: formatSlope(ramp.slope, reader), height: { value: ramp.shoreZ, unit: 'm' } })]
      : []),
    t(existing ? 'totals-new' : 'totals', {
      mass: formatMass(totals.mass, reader),
      price: money((existing ?? totals).price),
    }),
    ...(totals.heaviestSection === null
      ? []
      : [
          t('heaviest', {
            section: totals.heaviestSection,
            mass: formatMass(totals.heaviestLift, reader),
          }),
        ]),
  ]
}

function fitText({ fit, legs }: Dock, reader: Reader): string[] {
  return fit ? fitLines(fit, { legs }, reader) : []
}

function foundLines(dock: Dock, reader: Reader): string[] {
  const { findings } = dock
  const loads = { t: wordsOf(LOADS, reader) }
  const t = wordsOf(TERMINAL, reader)
  return [
    t(findings.length > 0 ? 'found' : 'found-none'),
    ...findings.flatMap((finding) => [
      `  ${severityWord(finding.severity, reader)}: ${findingText(withCaseInWords(withLegNumbers(finding, dock), loads), 'text', reader)}`,
      ...(finding.remedy ? [`      ${t('remedy', { remedy: remedyText(finding.remedy, reader) })}`] : []),
    ]),
  ]
}
