/** One command of the terminal: arguments to output and exit code. */

import { existingFrom, partsOfDesign } from '../../rules/existing/from-parts.ts'
import {
  type Catalog,
  type Design,
  demoDesign,
  derive,
  difference,
  ENGINE_VERSION,
  type Have,
  type Issue,
  nameIn,
  type Parsed,
  packingList,
  parseCatalog,
  parseDesign,
  rowsOfList,
  type Units,
} from '../../rules/index.ts'
import { parseQuoteFile } from '../../rules/papers/quote-file.ts'
import { verifyQuote } from '../../rules/papers/quote-verify.ts'
import { parseRecord } from '../../rules/record/parse.ts'
import { parseRequest, verifyRequest } from '../../rules/request.ts'
import { isForbidden } from '../../rules/stops.ts'
import { inFours } from '../../rules/words/check-code-text.ts'
import { dockIn } from '../../rules/words/part-names.ts'
import { jsonText } from '../documents/files/visible-text.ts'
import { ENGLISH_WORDS } from '../words/english.ts'
import { type Arguments, parseArguments } from './args.ts'
import {
  checkedLanguage,
  designOf,
  formatOf,
  issueLines,
  readCatalog,
  readDesign,
  readJson,
  readLanguage,
  Unusable,
} from './files.ts'
import { levelsCommand } from './levels.ts'
import { lines } from './lines.ts'
import { differenceCsv, differenceText, listCsv, listText } from './list.ts'

export interface Outcome {
  /** 0; 1 where a `stop` finding stands; 2 for input that cannot be used. */
  readonly code: 0 | 1 | 2
  readonly out: string
  readonly err: string
}

export const HELP = `leadline ${ENGINE_VERSION}: seasonal sectional docks from soundings to the last bolt

  leadline derive DESIGN.json [--catalog CATALOG.json]
      the whole dock as JSON
  leadline list DESIGN.json [--catalog CATALOG.json] [--have OLD.json] [--csv | --json] [--units imperial | metric]
                [--lang TAG | --words LANGUAGE.json]
      what to pack, where each leg goes, and what was found;
      with --have only what is to be added to what is there: an older design, or a list saved with --json (in the
      place of what the design says to be there, dock.existing)
  leadline sheet DESIGN.json --out FILE [--what PAPER] [--size letter | a4 | tabloid | a3] [--units imperial | metric]
                 [--date 2026-05-01] [--by TEXT] [--link ADDRESS] [--catalog CATALOG.json] [--format FORMAT] [--bom]
                 [--base water | feet] [--lake none | water | bed | both]
                 [--labels SHEET] [--services CODE[=QUANTITY],...] [--discount 5% | 120.00] [--fetched] [--untaxed]
                 [--each] [--since QUOTE.json] [--audience shop | customer | crew] [--lang TAG | --words LANGUAGE.json]
      by the ending of FILE: a paper as .pdf or .svg, the drawing's views in true units as .dxf, figures as .csv or
      .json, the dock as a model in 3D as .glb or .usdz; the same bytes for the same design and date;
      FILE - with --format for standard output.
      PAPER: drawing, permit, packing, cards, labels, delivery, set-up, autumn, survey, quote; packet: all but the
      permit drawing, the survey form, the delivery note and what is cut out (cards, labels);
      of .csv and .json: packing (by package), list (by part), quote. --bom: .csv as spreadsheets want it, with a
      byte order mark; money is in whole units of its currency, with decimals.
      SHEET of labels: letter-2x5 (4 x 2 in), letter-2x7 (4 x 1 1/3 in), letter-3x10 (2 5/8 x 1 in), a4-2x4
      (99.1 x 67.7 mm), a4-2x7 (99.1 x 38.1 mm), a4-3x8 (70 x 37 mm); else they are cut out of plain paper. Their
      codes open ADDRESS with what they are on, where it fits them, and else say it.
      A model's height 0 is the water of the survey day, or with --base feet its lowest foot, to stand it on a lawn;
      --lake puts the water's surface and the bed in.
      The quote: services of the catalog, what is taken off, fetched (no freight), untaxed, each part with its price;
      what changed since an earlier one (saved with --what quote --out QUOTE.json).
      A customer's papers (--audience customer) have an estimate at the catalog's prices in its place, without any of
      that; a crew's have no prices
  leadline verify FILE.json [--catalog CATALOG.json]
      works a quote out again from its own design and terms, or a customer's request from its design, and says what is
      another; exit code 1 where something is
  leadline check FILE...
      validates design, catalog, list, language, request and record files
  leadline levels RECORD [--from MONTH] [--to MONTH] [--unit ft | m | cm | mm | in] [--order mdy | dmy] [--at LEVEL]
                  [--design DESIGN.json] [--units imperial | metric] [--lang TAG | --words LANGUAGE.json]
      what a gauge's record (a date and a level a line, in any columns) says of the season from one month to another
      (1 to 12; May to October): mean, range, the levels that it is under and over for 5 % of the time. --unit and
      --order where the record does not say them; --at what the gauge showed on the day of the survey: then low and
      high as a design has them; with --design also how long the deck is awash and the boat aground
  leadline soundings FILE [--csv | --geojson] [--units imperial | metric] [--place LATITUDE,LONGITUDE,BEARING]
                     [--down | --up]
      soundings of a table (CSV, TSV, GPX, GeoJSON) as a design has them (JSON), or those of a design for others;
      how the table was read, and each row that gives none, on standard error. --units: of plain numbers without a
      unit; --down, --up: which way figures are positive; --place: the water's edge and the compass bearing lakeward,
      degrees, where the file has places on earth (else fitted to the depths)
  leadline record RECORD.json... [--what WHAT] [--season YEAR] [--level LEVEL] [--keep planned | over-water | as-last]
                  [--out FILE] [--json] [--catalog CATALOG.json] [--units imperial | metric] [--size letter | a4 | tabloid | a3]
                  [--date 2026-05-01] [--by TEXT] [--lang TAG | --words LANGUAGE.json]
      the season records of one dock, put together, whichever phones they are from; FILE .json is the record of them all.
      WHAT: as-built (how each leg stood; where nothing else is said), next-year (each leg up or down by how much for
      this year's LEVEL over the water of the survey day, as -7in or -0.18m; --keep: the deck as it was planned, as high over the
      water as planned, or where it stood last), take-out (the sections in the order in
      which they come out, who lifts what), reorder (what was noted as worn, for the shop), learned (of records of any docks:
      how far soundings are off and how far feet settle, with how many measurements; --json has it as a change of the
      catalog). FILE .pdf or .svg is that as a paper, --json as data
  leadline demo
      the demo's design, as a file to begin with
  leadline words
      all that is said, in English, as a language file to be put into another language
  leadline --help | --version

A file may be - for standard input. Without --catalog the demo shop's catalog is used.
--lang TAG (de, es, fr, also with a region, as fr-CA): what is said, and how numbers are written; --words a file of
one's own in its place. Without either: English.
A file that is written is whole or as it was before; one that is read is never written over.
Exit code: 0; 1 where something found must not be built so (everything is still printed);
2 for arguments or input that cannot be used, one line a problem on stderr: PATH: what is wrong; expected what;
3 where what was made cannot be written (a full disk, a reader that went), one line; 4 for a fault of the program's own.
`

export function run(args: readonly string[]): Outcome {
  try {
    return perform(parseArguments(args))
  } catch (error) {
    if (error instanceof Unusable) return { code: 2, out: '', err: lines(error.lines) }
    throw error
  }
}

/** @throws Unusable */
export function perform({ command, files, values }: Arguments): Outcome {
  if (values.version) return { code: 0, out: `${ENGINE_VERSION}\n`, err: '' }
  if (values.help) return { code: 0, out: HELP, err: '' }
  switch (command) {
    case undefined:
      return { code: 2, out: '', err: HELP }
    case 'derive':
      return deriveCommand(one(command, files), values.catalog)
    case 'list':
      return listCommand(one(command, files), { ...values, units: unitsOf(values.units) })
    case 'check':
      return checkCommand(files)
    case 'verify':
      return verifyCommand(one(command, files, 'quote or request'), values.catalog)
    case 'levels':
      return levelsCommand(one(command, files, 'record'), { ...values, units: unitsOf(values.units) })
    case 'demo':
      if (files.length > 0) throw new Unusable([`demo: ${files.length} files; expected none`])
      return { code: 0, out: jsonText(demoDesign), err: '' }
    case 'words':
      if (files.length > 0) throw new Unusable([`words: ${files.length} files; expected none`])
      return {
        code: 0,
        out: jsonText({ format: 'leadline/words', version: 1, lang: 'en', words: ENGLISH_WORDS }),
        err: '',
      }
    case 'sheet':
    case 'soundings':
    case 'record':
      throw new Error(`run: ${command} is made by a file of its own`)
  }
}

/** @throws Unusable */
export function unitsOf(units: string | undefined): Units {
  if (units === undefined || units === 'imperial' || units === 'metric') return units ?? 'imperial'
  throw new Unusable([`--units: "${units}"; expected imperial or metric`])
}

export function one(name: string, files: readonly string[], kind = 'design'): string {
  if (files.length !== 1) throw new Unusable([`${name}: ${files.length} files; expected one ${kind} file`])
  return files[0]!
}

function deriveCommand(file: string, catalogFile: string | undefined): Outcome {
  const catalog = readCatalog(catalogFile)
  const design = readDesign(file)
  const dock = derive(design.value, catalog.value)
  return {
    code: isForbidden(dock) ? 1 : 0,
    out: jsonText(dock),
    err: lines([...catalog.notices, ...design.notices]),
  }
}

/** A quote or a request, worked out again. Codes are told to people in fours, as on the paper. */
function verifyCommand(file: string, catalogFile: string | undefined): Outcome {
  const catalog = readCatalog(catalogFile)
  const input = readJson(file)
  const usable = <T>(parsed: Parsed<T>): T => {
    if (parsed.ok) return parsed.value
    throw new Unusable(issueLines(file, parsed.issues))
  }
  const outcome = (issues: readonly Issue[], code: string): Outcome => {
    const err = lines([...catalog.notices, ...issueLines(file, issues)])
    return issues.length > 0
      ? { code: 1, out: '', err }
      : { code: 0, out: lines([`${file}: as it is worked out; check code ${inFours(code)}`]), err }
  }
  if (formatOf(input) === 'leadline/request') {
    const request = usable(parseRequest(input))
    return outcome(verifyRequest(request, catalog.value), request.fingerprint.all)
  }
  const quote = usable(parseQuoteFile(input))
  return outcome(verifyQuote(quote, catalog.value), quote.check!)
}

interface ListOptions {
  readonly catalog?: string | undefined
  readonly have?: string | undefined
  readonly csv?: boolean | undefined
  readonly json?: boolean | undefined
  readonly units: Units
  readonly words?: string | undefined
  readonly lang?: string | undefined
}

function listCommand(file: string, options: ListOptions): Outcome {
  if (options.csv && options.json) throw new Unusable(['--csv: given with --json; expected one of the two'])
  const catalog = readCatalog(options.catalog)
  const reader = { language: readLanguage(options), units: options.units }
  const design = readDesign(file)
  const have = options.have === undefined ? null : haveOf(options.have, catalog.value)
  const dock = derive(have ? owning(design.value, have, catalog.value) : design.value, catalog.value)
  const result = {
    code: isForbidden(dock) ? 1 : 0,
    err: lines([...catalog.notices, ...design.notices]),
  } as const
  if (have) {
    const rows = difference(have, dock.parts)
    if (options.json)
      return {
        ...result,
        out: jsonText({ format: 'leadline/difference', version: 1, rows }),
      }
    const named = rows.map((row) => ({ ...row, name: nameIn(catalog.value, row, reader.language) }))
    return { ...result, out: options.csv ? differenceCsv(rows) : differenceText(named, reader) }
  }
  const list = packingList(dock, catalog.value)
  if (options.json) return { ...result, out: jsonText(list) }
  if (options.csv) return { ...result, out: listCsv(list, dock, design.value.job?.order) }
  const told = dockIn(dock, catalog.value, reader.language)
  return { ...result, out: listText(packingList(told, catalog.value), told, reader, catalog.value.shop) }
}

function haveOf(file: string, catalog: Catalog): Have {
  const input = readJson(file)
  const format = formatOf(input)
  if (format === 'leadline/list') {
    const rows = rowsOfList(input)
    if (!rows.ok) throw new Unusable(issueLines(file, rows.issues))
    return rows.value
  }
  return partsOfDesign(designOf(file, input).value, catalog)
}

/** What is named stands in the place of what the design says to be there. */
const owning = (design: Design, have: Have, catalog: Catalog): Design => ({
  ...design,
  dock: { ...design.dock, existing: existingFrom(have, catalog) },
})

function checkCommand(files: readonly string[]): Outcome {
  if (files.length === 0) throw new Unusable(['check: no file; expected at least one'])
  const out: string[] = []
  const err: string[] = []
  for (const file of files) {
    try {
      const input = readJson(file)
      const result = checkFile(input)
      if (result.ok) {
        out.push(`${file}: ok, ${result.what}`)
        for (const { path, message } of result.notices) out.push(`${file}: ${path}: ${message}`)
      } else
        for (const text of issueLines(file, result.issues))
          err.push(text.startsWith(`${file}: `) ? text : `${file}: ${text}`)
    } catch (error) {
      if (!(error instanceof Unusable)) throw error
      err.push(...error.lines)
    }
  }
  return { code: err.length > 0 ? 2 : 0, out: lines(out), err: lines(err) }
}

function checkFile(input: unknown) {
  const format = formatOf(input)
  if (format === 'leadline/catalog') {
    const parsed = parseCatalog(input)
    return parsed.ok ? { ...parsed, what: `a catalog with ${parsed.value.frames.length} frames` } : parsed
  }
  if (format === 'leadline/list') {
    const rows = rowsOfList(input)
    return rows.ok ? { ...rows, what: `a packing list of ${rows.value.length} rows`, notices: [] } : rows
  }
  if (format === 'leadline/words') {
    const parsed = checkedLanguage(input)
    return parsed.ok ? { ...parsed, what: `a language, ${parsed.value.tag}` } : parsed
  }
  if (format === 'leadline/request') {
    const parsed = parseRequest(input)
    return parsed.ok ? { ...parsed, what: `a request of ${parsed.value.at}` } : parsed
  }
  if (format === 'leadline/record') {
    const parsed = parseRecord(input)
    return parsed.ok
      ? { ...parsed, what: `a season record of ${parsed.value.entries.length} entries` }
      : parsed
  }
  const parsed = parseDesign(input)
  return parsed.ok
    ? { ...parsed, what: `a design with ${parsed.value.site.soundings.length} soundings` }
    : parsed
}
