/** `leadline record`: season records put together, and what follows from them, for people, as paper and as data. */
import { extname } from 'node:path'
import { PAPER_SIZE_NAMES } from '../../geometry/paper/marks.ts'
import type { PaperOptions } from '../../geometry/paper/options.ts'
import { type Catalog, derive, type Project, projectOf, type Reader } from '../../rules/index.ts'
import { isDay } from '../../rules/papers/day.ts'
import {
  type KeepNext,
  learn,
  mergeRecords,
  nextYear,
  parseRecord,
  reorder,
  type SeasonRecord,
  sameDock,
  seasonState,
  takeOut,
} from '../../rules/record/index.ts'
import { nextYearTold } from '../../rules/words/record-next-text.ts'
import { learnedLines, reorderTold, takeOutTold } from '../../rules/words/record-shop-text.ts'
import { asBuiltTold, type ToldRecord } from '../../rules/words/record-text.ts'
import { jsonText, visible } from '../documents/files/visible-text.ts'
import { bareUnit, parseLength } from '../units/parse.ts'
import type { Arguments } from './args.ts'
import { issueLines, readCatalog, readJson, readLanguage, Unusable } from './files.ts'
import { paperFonts } from './fonts.ts'
import { lines } from './lines.ts'
import { table } from './list.ts'
import { checkOutput } from './output.ts'
import { type Outcome, unitsOf } from './run.ts'
import type { Written } from './sheet.ts'

const WHATS = ['as-built', 'next-year', 'take-out', 'reorder', 'learned'] as const
type What = (typeof WHATS)[number]
const KEEPS: readonly KeepNext[] = ['planned', 'over-water', 'as-last']

/** What is made of a record. */
interface Made {
  /** Null for what is no paper. */
  readonly told: ToldRecord | null
  readonly data: unknown
}

interface Asked {
  readonly what: What
  readonly season: string | undefined
  readonly level: number | null
  readonly keep: KeepNext | undefined
  readonly catalog: Catalog
  readonly reader: Reader
}

/** @param today `YYYY-MM-DD`, where no date is given. Throws `Unusable`. */
export async function recordCommand(
  { files, values, inputs }: Arguments,
  today: string,
): Promise<Outcome | Written> {
  if (files.length === 0) throw new Unusable(['record: no file; expected at least one record file'])
  const asked = askedOf(values)
  const { what, catalog, reader } = asked
  if (values.out !== undefined) checkOutput(values.out, inputs)
  const read = files.map(readRecord)
  const err = lines([...read.flatMap(({ notices }) => notices)])
  const records = read.map(({ value }) => value)
  if (what === 'learned') {
    const learned = learn(records, catalog)
    const text = values.json ? jsonText(learned) : lines(learnedLines(learned, reader))
    return outcome(values.out, { text, json: jsonText(learned) }, err)
  }
  const record = together(files, records)
  const project = projectFor(record, catalog)
  const made = madeOf(record, project, asked)
  const format = values.out === undefined ? '' : extname(values.out).slice(1).toLowerCase()
  if (format === 'pdf' || format === 'svg')
    return {
      ...{ code: 0, format, file: values.out!, err },
      bytes: await paper(made, format, { record, project, catalog }, optionsOf(values, reader, today)),
    }
  const data = values.what === undefined ? record : made.data
  const text = values.json ? jsonText(data) : `${toldText(made.told!)}`
  return outcome(values.out, { text, json: jsonText(data) }, err)
}

function outcome(
  file: string | undefined,
  { text, json }: { readonly text: string; readonly json: string },
  err: string,
): Outcome | Written {
  if (file === undefined) return { code: 0, out: text, err }
  if (extname(file).toLowerCase() !== '.json')
    throw new Unusable([`--out: "${file}"; expected a name that ends in .json, .pdf or .svg`])
  return { code: 0, bytes: new TextEncoder().encode(json), format: 'json', file, err }
}

function askedOf(values: Arguments['values']): Asked {
  const what = WHATS.find((one) => one === (values.what ?? 'as-built'))
  if (!what) throw new Unusable([`--what: "${values.what}"; expected ${WHATS.join(', ')}`])
  const { season } = values
  if (season !== undefined && !/^\d{4}$/.test(season))
    throw new Unusable([`--season: "${season}"; expected a year as 2026`])
  const keep = KEEPS.find((one) => one === values.keep)
  if (values.keep !== undefined && !keep)
    throw new Unusable([`--keep: "${values.keep}"; expected ${KEEPS.join(', ')}`])
  for (const flag of ['level', 'keep'] as const)
    if (values[flag] !== undefined && what !== 'next-year')
      throw new Unusable([`--${flag}: "${values[flag]}"; expected none but with --what next-year`])
  const units = unitsOf(values.units)
  const reader: Reader = { units, language: readLanguage(values) }
  if (what === 'next-year' && values.level === undefined)
    throw new Unusable(["--level: missing; expected this year's water over that of the survey day, as -7in"])
  return {
    ...{ what, season, keep, reader, catalog: readCatalog(values.catalog).value },
    level: values.level === undefined ? null : levelOf(values.level, units),
  }
}

function levelOf(text: string, units: Reader['units']): number {
  const parsed = parseLength(text, bareUnit(units))
  if (parsed.ok && Math.abs(parsed.meters) <= 30) return parsed.meters
  throw new Unusable([`--level: "${text}"; expected a length as -7in or -0.18m (--level=-7in)`])
}

function readRecord(file: string): { readonly value: SeasonRecord; readonly notices: readonly string[] } {
  const parsed = parseRecord(readJson(file))
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return { value: parsed.value, notices: parsed.notices.map(({ path, message }) => `${path}: ${message}`) }
}

/** All in one, in whatever order they are named. */
function together(files: readonly string[], records: readonly SeasonRecord[]): SeasonRecord {
  return records.reduce((all, next, i) => {
    if (!sameDock(all, next))
      throw new Unusable([
        `${files[i]}: of another dock than ${files[0]}; expected records that were begun together`,
      ])
    const merged = mergeRecords(all, next)
    if (!merged.ok) throw new Unusable(issueLines(files[i]!, merged.issues))
    return merged.value
  })
}

/** The dock that a record is of, where the catalog that it was begun with is at hand. */
function projectFor({ design, catalog: of }: SeasonRecord, catalog: Catalog): Project | null {
  if (!design || of?.id !== catalog.id) return null
  return projectOf(design, catalog, derive(design, catalog))
}

function madeOf(record: SeasonRecord, project: Project | null, asked: Asked): Made {
  const { what, season, level, keep, catalog, reader } = asked
  switch (what) {
    case 'next-year': {
      const next = nextYear(record, {
        level: level ?? 0,
        ...(keep && { keep }),
        ...(season !== undefined && { season }),
        ...(project && { project }),
      })
      return { told: nextYearTold(record, next, reader), data: next }
    }
    case 'take-out': {
      const out = takeOut(record, project ?? undefined, season)
      return { told: takeOutTold(record, out, reader), data: out }
    }
    case 'reorder': {
      const list = reorder(record, catalog, season)
      return { told: reorderTold(record, list, reader), data: list }
    }
    default:
      return { told: asBuiltTold(record, reader, season), data: seasonState(record, season) }
  }
}

function optionsOf(values: Arguments['values'], reader: Reader, today: string): PaperOptions {
  const size = PAPER_SIZE_NAMES.find(
    (one) => one === (values.size ?? (reader.units === 'imperial' ? 'letter' : 'a4')),
  )
  if (!size) throw new Unusable([`--size: "${values.size}"; expected ${PAPER_SIZE_NAMES.join(', ')}`])
  const date = values.date ?? today
  if (!isDay(date)) throw new Unusable([`--date: "${date}"; expected a day as 2026-05-01`])
  return { ...reader, size, date, by: values.by ?? '' }
}

async function paper(
  { told }: Made,
  format: 'pdf' | 'svg',
  of: { readonly record: SeasonRecord; readonly project: Project | null; readonly catalog: Catalog },
  options: PaperOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const { recordPaper } = await import('../../geometry/sheets/record.ts')
  const { record, catalog } = of
  // A shop that has nothing to do with it does not stand on it.
  const known = record.catalog?.id === catalog.id
  const made = recordPaper(told!, options, known ? catalog : { name: record.name, edition: '' })
  if (format === 'svg') {
    const { svgOfSheets } = await import('../../geometry/export/svg.ts')
    const svg = svgOfSheets(made.sheets, { title: made.title, lang: options.language.tag })
    return new TextEncoder().encode(svg)
  }
  const { pdfOf } = await import('../../geometry/export/pdf.ts')
  return pdfOf([made], paperFonts(), { date: options.date, name: made.title })
}

/** For a person at a terminal. */
function toldText({ title, of, lead, cautions, tables, lists }: ToldRecord): string {
  const out = [
    `${title}: ${of}`,
    ...lead,
    ...cautions.map((text) => `! ${text}`),
    ...tables.flatMap(({ columns, rows }) => {
      const shown = columns.flatMap(({ write }, c) => (write ? [] : [c]))
      const right = new Set(shown.flatMap((c, i) => (columns[c]!.end ? [i] : [])))
      return [
        '',
        ...table(
          shown.map((c) => columns[c]!.title),
          rows.map((row) => shown.map((c) => row[c]!)),
          right,
        ),
      ]
    }),
    ...lists.flatMap(({ title, items }) => ['', title, ...items.map((item) => `  ${item}`)]),
  ]
  return out.map((line) => `${visible(line)}\n`).join('')
}
