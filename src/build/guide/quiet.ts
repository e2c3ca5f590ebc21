/**
 * How quiet the findings are on ordinary docks: `public/guide/quiet.md`, from what the engine says now beside what it said before.
 *
 *     npm run build:quiet -- --runs 120            docks a cell; of both shops, one after the other
 *     npm run build:quiet -- --runs 120 --before   what it says now is what is compared with from here on
 *
 * Takes a minute and a half of one core at 120, so no test runs it whole; `tests/rules/quiet.test.ts` holds its two main figures on fewer docks.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Catalog, demoCatalog, parseCatalogText, type Severity } from '../../../rules/index.ts'
import { type Cell, type Counted, countAll } from './quiet-count.ts'

const HERE = dirname(fileURLToPath(import.meta.url))
const ROOT = join(HERE, '../../..')
const BEFORE = join(HERE, 'quiet-before.json')
const WHY = join(HERE, 'quiet-why.json')
const PAGE = join(ROOT, 'public/guide/quiet.md')

/** A warning on more of the docks of some row than this is said why. */
const OFTEN = 0.15
const SEVERITIES: readonly Severity[] = ['stop', 'warn', 'note']

const percent = (share: number | null): string => (share === null ? '–' : `${Math.round(share * 100)} %`)
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string => {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`
  return [line(head), line(head.map((_, i) => (i === 0 ? '---' : '--:'))), ...rows.map(line)].join('\n')
}
const nameOf = ({ scene, posts, boat }: Cell): string =>
  `${scene}, ${posts === 0 ? 'no' : posts} posts${boat ? ', a boat' : ''}`

/** The row of the other count that is about the same docks; null where that one has none. */
const same = (counted: Counted, cell: Cell): Cell | null =>
  counted.cells.find(
    ({ scene, posts, boat }) => scene === cell.scene && posts === cell.posts && boat === cell.boat,
  ) ?? null

const shareOf = (cell: Cell | null, code: string, severity: Severity): number | null =>
  cell && (cell.codes[code]?.[severity] ?? 0) / cell.docks

function warnedTable(before: Counted, after: Counted): string {
  const part = (cell: Cell | null, key: 'warned' | 'stopped'): string =>
    percent(cell && cell[key] / cell.docks)
  return table(
    ['', 'a warning or stop, before', 'after', 'a stop, before', 'after'],
    after.cells.map((cell) => {
      const was = same(before, cell)
      return [
        nameOf(cell),
        part(was, 'warned'),
        part(cell, 'warned'),
        part(was, 'stopped'),
        part(cell, 'stopped'),
      ]
    }),
  )
}

/** One table to a scene: every code by severity, before → after, columns by posts and boat. */
function codesTable(before: Counted, after: Counted, scene: string): string {
  const cells = after.cells.filter((cell) => cell.scene === scene)
  const was = cells.map((cell) => same(before, cell))
  const codes = [...new Set([...was, ...cells].flatMap((cell) => Object.keys(cell?.codes ?? {})))]
  const rows = codes.flatMap((code) =>
    SEVERITIES.map((severity) => {
      const pairs = cells.map(
        (cell, i) => [shareOf(was[i]!, code, severity), shareOf(cell, code, severity)] as const,
      )
      const most = Math.max(...pairs.flat().map((share) => share ?? 0))
      return { code, severity, pairs, most }
    }),
  )
  return table(
    ['', '', ...cells.map(({ posts, boat }) => `${posts} posts${boat ? ', boat' : ''}`)],
    rows
      .filter(({ most }) => most > 0)
      .sort(
        (a, b) =>
          SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
          b.most - a.most ||
          (a.code < b.code ? -1 : 1),
      )
      .map(({ code, severity, pairs }) => [
        `\`${code}\``,
        severity,
        ...pairs.map(([was, is]) => `${percent(was)} → ${percent(is)}`),
      ]),
  )
}

/** Every code that still warns often, where it does most, and the sentence that says why; where none is written, that is said. */
function whyOften(after: Counted, why: Readonly<Record<string, string>>): string {
  const codes = [...new Set(after.cells.flatMap((cell) => Object.keys(cell.codes)))]
  const often = codes
    .map((code) => {
      const shares = after.cells.map((cell) => shareOf(cell, code, 'warn')!)
      const most = Math.max(...shares)
      return { code, most, where: nameOf(after.cells[shares.indexOf(most)]!) }
    })
    .filter(({ most }) => most > OFTEN)
    .sort((a, b) => b.most - a.most)
  if (often.length === 0) return 'None.'
  return often
    .map(
      ({ code, most, where }) =>
        `- \`${code}\`, up to ${percent(most)} (${where}): ${why[code] ?? 'not explained yet.'}`,
    )
    .join('\n')
}

export function quietPage(
  text: string,
  before: Counted,
  after: Counted,
  why: Readonly<Record<string, string>>,
): string {
  const places: Record<string, string> = {
    runs: `${after.runs} docks to a row now, ${before.runs} before.`,
    warned: warnedTable(before, after),
    cove: codesTable(before, after, 'quiet cove'),
    lake: codesTable(before, after, 'open small lake'),
    why: whyOften(after, why),
  }
  return Object.entries(places).reduce((page, [place, content]) => {
    const pattern = new RegExp(`(<!-- ${place} -->\\n)[\\s\\S]*?(<!-- end -->)`)
    if (!pattern.test(page)) throw new Error(`quiet.md: no place for ${place}`)
    return page.replace(pattern, (_, open: string, close: string) => `${open}\n${content}\n\n${close}`)
  }, text)
}

function shops(): readonly Catalog[] {
  const metric = parseCatalogText(readFileSync(join(ROOT, 'tests/support/metric-shop.json'), 'utf8'))
  if (!metric.ok) throw new Error(JSON.stringify(metric.issues))
  return [demoCatalog, metric.value]
}

function main(args: readonly string[]): void {
  const at = args.indexOf('--runs')
  const runs = at < 0 ? 120 : Number(args[at + 1])
  if (!Number.isInteger(runs) || runs < 1) throw new Error('--runs: a whole number of docks, at least 1')
  const now = countAll(runs, shops())
  if (args.includes('--before')) writeFileSync(BEFORE, `${JSON.stringify(now, null, 2)}\n`)
  const read = (file: string) => JSON.parse(readFileSync(file, 'utf8'))
  writeFileSync(PAGE, quietPage(readFileSync(PAGE, 'utf8'), read(BEFORE), now, read(WHY)))
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main(process.argv.slice(2))
