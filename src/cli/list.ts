/** The packing list for a person at a bench, and as CSV. */
import {
  type DifferenceRow,
  type Dock,
  findingText,
  formatLength,
  formatMass,
  formatMoney,
  formatSlope,
  type PackingList,
  remedyText,
  type Units,
  wordsIn,
} from '../../rules/index.ts'
import { csvOf } from '../documents/files/csv.ts'
import { listRows } from '../documents/files/tables.ts'
import { visible } from '../documents/files/visible-text.ts'

export const listCsv = (list: PackingList): string => csvOf(listRows(list))

export const differenceCsv = (rows: readonly DifferenceRow[]): string => csvOf(rows)

/** Columns padded to their widest cell; numbers to the right. Cells are of one line: nobody's name makes a row of its own. */
function table(
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

export function differenceText(rows: readonly DifferenceRow[]): string {
  const changed = rows.filter((row) => row.add > 0 || row.over > 0)
  if (changed.length === 0) return 'Nothing to add: what is there is what is needed.\n'
  return table(
    ['Add', 'Over', 'Have', 'Need', 'Part', 'Code'],
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

export function listText(list: PackingList, dock: Dock, units: Units): string {
  const words = wordsIn('en')
  const { totals } = list
  const money = (minor: number): string => formatMoney(minor, totals.currency)
  const out: string[] = [
    `${list.name || 'Dock'}: packing list`,
    `${list.catalog}   check code ${list.fingerprint.all.slice(0, 12)}`,
    '',
  ]

  for (const { bag, rows } of list.groups) {
    out.push(bag === null ? 'Loose' : `Bag ${bag}`)
    out.push(
      ...table(
        ['[ ]', 'Qty', 'Spare', 'Part', 'Code', 'Weight', 'Price', 'Wrench'],
        rows.map((row) => [
          '[ ]',
          String(row.quantity),
          row.spares > 0 ? `+${row.spares}` : '',
          row.name,
          row.code,
          formatMass(row.mass, units),
          money(row.price),
          [
            row.wrench ?? '',
            ...row.turns.map(({ at, from, to }) => `${at} ${from === to ? from : `${from}-${to}`} turn`),
          ]
            .filter(Boolean)
            .join(', '),
        ]),
        new Set([1, 2, 5, 6]),
      ),
      '',
    )
  }

  out.push('Where each leg goes')
  out.push(
    ...table(
      ['Leg', 'Stock', 'To deck', 'To frame top'],
      list.legs.map((leg) => [
        leg.leg,
        leg.code ?? 'none long enough',
        formatLength(leg.setHeight, units),
        formatLength(leg.setHeightFrame, units),
      ]),
      new Set([2, 3]),
    ),
    '',
  )
  if (list.braces.length > 0) {
    out.push('Where each brace goes')
    out.push(
      ...table(
        ['Pair', 'Brace', 'Low end on'],
        list.braces.map((b) => [b.pair, b.code, b.low]),
        new Set(),
      ),
      '',
    )
  }

  if (dock.ramp)
    out.push(
      `Ramp: ${formatSlope(dock.ramp.slope)}, its end on ground ${formatLength(dock.ramp.shoreZ, units)} over the survey water`,
    )
  out.push(`Weight ${formatMass(totals.mass, units)}   Price ${money(totals.price)}`)
  if (totals.heaviestSection !== null)
    out.push(
      `Heaviest section to carry: ${totals.heaviestSection}, ${formatMass(totals.heaviestLift, units)}`,
    )
  out.push('', dock.findings.length > 0 ? 'Found' : 'Nothing found against it')
  for (const finding of dock.findings) {
    out.push(`  ${words.severities[finding.severity]}: ${findingText(finding, 'text', units)}`)
    if (finding.remedy) out.push(`      Remedy: ${remedyText(finding.remedy, units)}`)
  }
  out.push('', 'Cautions', ...words.cautions.map((caution) => `  ${caution}`))
  return out.map((line) => `${visible(line)}\n`).join('')
}
