/** `leadline sheet`: a file of a dock, its format by the ending of its name. */
import { extname } from 'node:path'
import { MODEL_BASES, MODEL_LAKES } from '../../geometry/export/model.ts'
import { LABEL_GRIDS } from '../../geometry/paper/label-grid.ts'
import { logoOf } from '../../geometry/paper/logo.ts'
import { PAPER_SIZE_NAMES } from '../../geometry/paper/marks.ts'
import type { PaperOptions } from '../../geometry/paper/options.ts'
import { type Catalog, type Design, type Dock, derive } from '../../rules/index.ts'
import { isDay } from '../../rules/papers/day.ts'
import { audienceShown, type PricesShown, pricesFor } from '../../rules/papers/prices-shown.ts'
import { quote as made, type QuoteAsked } from '../../rules/papers/quote.ts'
import { parseAsked, parseQuoteFile, type QuoteFile } from '../../rules/papers/quote-file.ts'
import { broughtTwice } from '../../rules/papers/quote-included.ts'
import { isForbidden } from '../../rules/stops.ts'
import { visibleLines } from '../documents/files/visible-text.ts'
import {
  type Asked,
  AUDIENCES,
  type Audience,
  FORMATS,
  type Format,
  whatOf,
  writeFile,
} from '../documents/files/write-file.ts'
import { type Arguments, parseArguments } from './args.ts'
import { descriptorOf } from './descriptors.ts'
import { issueLines, readCatalog, readDesign, readJson, readLanguage, Unusable } from './files.ts'
import { paperFonts } from './fonts.ts'
import { lines } from './lines.ts'
import { checkOutput, write } from './output.ts'
import { unitsOf } from './run.ts'

export interface Written {
  /** 0; 1 where a `stop` finding stands (the file is written all the same). */
  readonly code: 0 | 1
  readonly bytes: Uint8Array
  readonly format: Format
  /** `-` for standard output. */
  readonly file: string
  readonly err: string
}

/** What the shop alone says. */
const QUOTE_FLAGS = ['services', 'discount', 'fetched', 'untaxed', 'each', 'since'] as const

/** What is asked for of `leadline sheet`, as `make` does. */
export const sheet = async (args: readonly string[], today: string): Promise<Written> =>
  make(parseArguments(['sheet', ...args]), today)

/** @param today `YYYY-MM-DD`, where no date is given. Throws `Unusable` where the arguments or a file cannot be used. */
export async function make({ files, values, inputs }: Arguments, today: string): Promise<Written> {
  if (files.length !== 1) throw new Unusable([`sheet: ${files.length} files; expected one design file`])
  const file = values.out
  if (file === undefined) throw new Unusable(['--out: missing; expected the file to write'])
  const wanted = values.format ?? extname(file).slice(1).toLowerCase()
  const format = FORMATS.find((one) => one === wanted)
  if (!format)
    throw new Unusable([
      `--out: "${file}"; expected a name that ends in ${FORMATS.map((one) => `.${one}`).join(', ')}, or --format`,
    ])
  // Who works in a terminal is the shop, where nothing else is said.
  const audience = AUDIENCES.find((one) => one === (values.audience ?? 'shop'))
  if (!audience) throw new Unusable([`--audience: "${values.audience}"; expected ${AUDIENCES.join(', ')}`])
  if (audience !== 'shop')
    for (const flag of QUOTE_FLAGS)
      if (values[flag] !== undefined)
        throw new Unusable([
          `--${flag}: "${values[flag]}"; expected none with --audience ${audience}: only the shop quotes`,
        ])
  const units = unitsOf(values.units)
  const size = PAPER_SIZE_NAMES.find(
    (one) => one === (values.size ?? (units === 'imperial' ? 'letter' : 'a4')),
  )
  if (!size) throw new Unusable([`--size: "${values.size}"; expected ${PAPER_SIZE_NAMES.join(', ')}`])
  const { labels, base, lake } = choicesOf(values)
  const date = values.date ?? today
  if (!isDay(date)) throw new Unusable([`--date: "${date}"; expected a day as 2026-05-01`])
  checkOutput(file, inputs)
  const catalog = readCatalog(values.catalog)
  const what = whatFor(format, audience, values.what, pricesFor(catalog.value, audience))
  const asked = askedFor(values, catalog.value)
  const checked = parseAsked({ ...asked, date })
  if (!checked.ok) throw new Unusable(checked.issues.map(({ path, message }) => `--${path}: ${message}`))
  const quote = {
    ...asked,
    ...(values.each && { each: true }),
    ...(values.since !== undefined && { since: lastQuote(values.since) }),
  }
  const design = readDesign(files[0]!)
  const dock = derive(design.value, catalog.value)
  const options: PaperOptions = {
    units,
    language: readLanguage(values),
    size,
    date,
    by: values.by ?? '',
    ...(values.link !== undefined && { link: values.link }),
    ...(labels && { labels }),
  }
  const bytes = await writeFile(
    format,
    {
      what,
      audience,
      quote,
      ...(values.bom && { bom: true }),
      model: { base, lake },
      dock,
      design: design.value,
      catalog: catalog.value,
      options,
    },
    paperFonts,
  )
  return {
    code: isForbidden(dock) ? 1 : 0,
    bytes,
    format,
    file,
    err: lines([
      ...catalog.notices,
      ...design.notices,
      ...(format === 'pdf' || format === 'svg' ? await unset(design.value, options) : []),
      ...shopNotices(catalog.value, what, quote, dock, design.value, date),
    ]),
  }
}

/** What the papers cannot write of the names on them: said beside them too. */
async function unset({ name, job = {} }: Design, options: PaperOptions): Promise<string[]> {
  const { unsetIn } = await import('../../geometry/paper/unset.ts')
  const said = unsetIn([name, job.customer ?? '', job.order ?? '', options.by], options)
  return said === '' ? [] : [said]
}

/** Sheets of labels, and what a model is of. */
function choicesOf(values: Arguments['values']) {
  const labels = LABEL_GRIDS.find((one) => one === values.labels)
  if (values.labels !== undefined && !labels)
    throw new Unusable([`--labels: "${values.labels}"; expected ${LABEL_GRIDS.join(', ')}`])
  const base = MODEL_BASES.find((one) => one === (values.base ?? 'water'))
  if (!base) throw new Unusable([`--base: "${values.base}"; expected ${MODEL_BASES.join(', ')}`])
  const lake = MODEL_LAKES.find((one) => one === (values.lake ?? 'none'))
  if (!lake) throw new Unusable([`--lake: "${values.lake}"; expected ${MODEL_LAKES.join(', ')}`])
  return { labels, base, lake }
}

/** What a shop is to know of its own paper: a logo that is not shown, goods that are brought twice. */
function shopNotices(
  catalog: Catalog,
  what: Asked['what'],
  asked: Omit<QuoteAsked, 'date'>,
  dock: Dock,
  design: Design,
  date: string,
): string[] {
  if (what !== 'quote' && what !== 'packet') return []
  const logo = logoOf(catalog)
  const twice = broughtTwice(made(dock, design, catalog, { ...asked, date }), catalog)
  return [
    ...(typeof logo === 'string' ? [`shop.logo: ${logo}`] : []),
    ...twice.map(
      (name) => `--services: "${name}" and freight are both charged; --fetched leaves freight out`,
    ),
  ]
}

/** A paper is the drawing where none is named, figures are the packing list's. */
function whatFor(
  format: Format,
  audience: Audience,
  wanted: string | undefined,
  prices: PricesShown,
): Asked['what'] {
  const all = whatOf(format, audienceShown(audience, prices))
  if (wanted === undefined) return all.includes('drawing') ? 'drawing' : 'packing'
  const known = all.find((one) => one === wanted)
  if (known) return known
  throw new Unusable([
    `--what: "${wanted}"; expected ${all.length > 0 ? all.join(', ') : 'none'} of a .${format} file${prices === 'none' && audience === 'customer' ? ' (this shop shows customers no prices)' : ''}`,
  ])
}

/** A quote saved as JSON. */
function lastQuote(file: string): QuoteFile {
  const parsed = parseQuoteFile(readJson(file))
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return parsed.value
}

/** More could not be read back of a quote's file: how many of a service, what is taken off in whole units of the currency. */
const MOST = { quantity: 1e6, amount: 1e9 }

interface QuoteFlags {
  readonly services?: string | undefined
  readonly discount?: string | undefined
  readonly fetched?: boolean | undefined
  readonly untaxed?: boolean | undefined
}

/** What a quote is asked for with: `delivery,hours=6`, `5%` or `120.00`. */
function askedFor(
  { services, discount, fetched, untaxed }: QuoteFlags,
  catalog: Catalog,
): Omit<QuoteAsked, 'date'> {
  const known = (catalog.services ?? []).map(({ code }) => code)
  return {
    ...(services !== undefined && {
      services: services.split(',').map((one) => {
        const [, code = '', quantity] = /^([^=]*)(?:=(\d+(?:\.\d+)?))?$/.exec(one.trim()) ?? []
        if (!known.includes(code) || Number(quantity ?? 1) > MOST.quantity)
          throw new Unusable([
            `--services: "${one}"; expected CODE or CODE=QUANTITY, of ${known.join(', ') || 'none: the catalog has no services'}`,
          ])
        return { code, ...(quantity !== undefined && { quantity: Number(quantity) }) }
      }),
    }),
    ...(discount !== undefined && { discount: discountOf(discount) }),
    ...(fetched && { fetched }),
    ...(untaxed && { untaxed }),
  }
}

function discountOf(text: string): NonNullable<QuoteAsked['discount']> {
  const [, number, share] = /^(\d+(?:\.\d+)?)(%?)$/.exec(text) ?? []
  const value = Number(number)
  if (number === undefined || value > (share ? 100 : MOST.amount))
    throw new Unusable([`--discount: "${text}"; expected a share as 5%, or an amount as 120.00`])
  return share ? { share: value / 100 } : { amount: Math.round(value * 100) }
}

const BINARY: ReadonlySet<Format> = new Set(['pdf', 'glb', 'usdz'])

/**
 * Writes what was made. Throws `Unusable` where the name can be no file's, `Unwritable` where writing failed.
 * @param terminal standard output is one
 */
export function put({ bytes, file, format }: Written, terminal = false): void {
  if (descriptorOf(file, 1) !== 1 || !terminal) write(file, bytes)
  else if (BINARY.has(format))
    throw new Unusable([`standard output: a terminal; expected a file or a pipe for .${format}`])
  else write(file, new TextEncoder().encode(visibleLines(new TextDecoder().decode(bytes))))
}
