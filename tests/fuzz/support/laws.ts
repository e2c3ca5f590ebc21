/** What holds of anything that a border was asked, and of every dock and paper that follows. A law is broken by the sentences that it gives. */
import { isDeepStrictEqual } from 'node:util'
import {
  assess,
  type Catalog,
  type Design,
  type Dock,
  deriveKit,
  english,
  findingText,
  fingerprintOf,
  formatFigure,
  type Issue,
  type Parsed,
  packingList,
  projectOf,
  remedyText,
} from '../../../rules/index.ts'
import { setLegs } from '../../../rules/papers/set-legs.ts'
import {
  autumn,
  cartons,
  countCards,
  labels,
  parseQuoteFile,
  type QuoteAsked,
  quote,
  quoteFile,
  steps,
} from '../../../rules/papers.ts'
import { textsIn, uncleanIn } from './clean.ts'
import type { Tally } from './runs.ts'

const threw = (what: string, error: unknown): string =>
  `${what} threw ${error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 3).join(' ') : String(error)}`

/** Control characters but tab and line breaks, halves of letters, what turns words around it. */
const UNFIT = /[^\P{Cc}\t\n\r]|[\p{Cs}\u202a-\u202e\u2066-\u2069\ufffe\uffff]/u
/** Those, and line breaks: an issue is one line. */
const UNTOLD = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u

function issuesBroken(issues: readonly Issue[]): string[] {
  const out: string[] = []
  if (issues.length === 0 || issues.length > 50) out.push(`${issues.length} issues`)
  for (const { path, message, expected } of issues) {
    if (!/; expected ./.test(message) || expected === '')
      out.push(`an issue that expects nothing: ${message}`)
    if (UNTOLD.test(path + message))
      out.push(`an issue that is not one harmless line: ${JSON.stringify(message)}`)
    if (path.length + message.length > 4000) out.push(`an issue of ${path.length + message.length} letters`)
    // But for what the file itself says.
    if (/\bundefined\b|\[object/.test(message.replace(/"[^"]*"/g, '')))
      out.push(`an issue that says ${message}`)
  }
  return out
}

/**
 * Asked of any input at all: `parse` gives a value or issues, never an exception; what it takes is plain data, well-formed, its own
 * copy, and taken again as it is.
 */
export function parseBroken<T, I = unknown>(
  parse: (input: I) => Parsed<T>,
  input: I,
  tally: Tally,
  then: (value: T) => readonly string[] = () => [],
  /** What takes the value again, where `parse` reads a text. */
  again: (input: unknown) => Parsed<T> = parse as (input: unknown) => Parsed<T>,
): string[] {
  let parsed: Parsed<T>
  try {
    parsed = parse(input)
  } catch (error) {
    return [threw('parse', error)]
  }
  if (!parsed.ok) {
    tally.refused++
    return issuesBroken(parsed.issues)
  }
  tally.taken++
  const { value } = parsed
  return [...valueBroken(again, value), ...then(value)]
}

/** Of a value that was taken. */
function valueBroken<T>(parse: (input: unknown) => Parsed<T>, value: T): string[] {
  const out: string[] = []
  const text = JSON.stringify(value)
  if (!isDeepStrictEqual(JSON.parse(text), value)) out.push('not plain data')
  for (const one of textsIn(value))
    if (UNFIT.test(one)) out.push(`a text that is not fit: ${JSON.stringify(one)}`)
  const again = parse(value)
  if (!again.ok) out.push(`refused when asked again: ${again.issues[0]!.path}: ${again.issues[0]!.message}`)
  else if (!isDeepStrictEqual(again.value, value)) out.push('another value when asked again')
  return out
}

/** How far a dock is worked out: in the frame of a drag, or with its structure and clashes. */
export type Far = (design: Design, catalog: Catalog) => Dock
export const found: Far = (design, catalog) => assess(deriveKit(design, catalog), { remedies: false })

/** Of a design and a catalog that were taken. */
export function dockBroken(design: Design, catalog: Catalog, far: Far): string[] {
  let dock: Dock
  try {
    dock = far(design, catalog)
  } catch (error) {
    return [threw('derive', error)]
  }
  const own = textsIn(design, textsIn(catalog))
  if (design.catalog) own.add(`${design.catalog.id} ${design.catalog.version}`)
  const again = fingerprintOf(JSON.parse(JSON.stringify(design)), JSON.parse(JSON.stringify(catalog)))
  return [
    ...uncleanIn(dock, own),
    ...uncleanIn(sentencesOf(dock), own),
    ...moneyBroken(dock),
    ...(again.all === dock.fingerprint.all ? [] : ['another check code after JSON']),
    ...papersBroken(dock, design, catalog, { date: '2026-03-01' }, own),
  ]
}

function sentencesOf({ findings, reasons }: Dock): string[] {
  const said = (['metric', 'imperial'] as const).flatMap((units) =>
    findings.flatMap((finding) => [
      findingText(finding, 'plain', english(units)),
      findingText(finding, 'text', english(units)),
      ...(finding.remedy ? [remedyText(finding.remedy, english(units))] : []),
    ]),
  )
  const { waves, start, ramp, legs, pairs, placements, totals } = reasons
  const why = [waves, start, ramp, placements, totals, ...Object.values(legs), ...Object.values(pairs)].flat()
  return [
    ...said,
    ...why.flatMap(({ terms, result }) =>
      [...terms, result].map((figure) => formatFigure(figure, english('imperial'))),
    ),
  ]
}

function moneyBroken({ parts, totals }: Dock): string[] {
  const whole = (value: number): boolean => Number.isSafeInteger(value) && value >= 0
  const rows = parts.filter((row) => ![row.quantity, row.spares, row.unitPrice, row.price].every(whole))
  return [
    ...rows.map((row) => `a row of ${JSON.stringify(row)}`),
    ...(whole(totals.price) ? [] : [`a price of ${totals.price}`]),
  ]
}

/** Everything that is on the papers, as data. */
export function papersBroken(
  dock: Dock,
  design: Design,
  catalog: Catalog,
  asked: QuoteAsked,
  own: ReadonlySet<string>,
): string[] {
  const out: string[] = []
  const project = projectOf(design, catalog, dock)
  const paper = (name: string, make: () => unknown): void => {
    try {
      out.push(...uncleanIn(make(), own).map((where) => `${name}${where}`))
    } catch (error) {
      out.push(threw(name, error))
    }
  }
  paper('packing list', () => packingList(dock, catalog))
  paper('cartons', () => cartons(dock, catalog))
  paper('labels', () => labels(project))
  paper('count cards', () => countCards(dock, catalog))
  paper('set-legs', () => setLegs(project))
  paper('steps', () => [steps(project), autumn(project)])
  paper('quote', () => {
    const made = quote(dock, design, catalog, asked)
    for (const money of [made.net, made.total, made.goods, ...made.lines.map(({ amount }) => amount)])
      if (!Number.isSafeInteger(money)) out.push(`quote: ${money} cents`)
    if (made.goods < 0 || (!asked.other && made.total < 0)) out.push(`quote: ${made.total} in all`)
    const file = parseQuoteFile(JSON.parse(JSON.stringify(quoteFile(made, design))))
    if (!file.ok) out.push(`a quote's file is refused: ${file.issues[0]!.path}: ${file.issues[0]!.message}`)
    return made
  })
  return out
}
