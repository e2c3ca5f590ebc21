/** `leadline sheet`: a file of a dock, its format by the ending of its name. */
import { writeFileSync } from 'node:fs'
import { extname } from 'node:path'
import { parseArgs } from 'node:util'
import { PAPER_SIZES, type PaperSize } from '../../geometry/paper/marks.ts'
import { type Catalog, derive } from '../../rules/index.ts'
import type { QuoteAsked } from '../../rules/papers/quote.ts'
import { parseAsked, parseQuoteFile, type QuoteFile } from '../../rules/papers/quote-file.ts'
import {
  type Asked,
  AUDIENCES,
  type Audience,
  FORMATS,
  type Format,
  whatOf,
  writeFile,
} from '../papers/write.ts'
import { issueLines, readCatalog, readDesign, readJson, Unusable } from './files.ts'
import { paperFonts } from './fonts.ts'

export interface Written {
  /** 0; 1 where a `stop` finding stands (the file is written all the same). */
  readonly code: 0 | 1
  readonly bytes: Uint8Array
  /** `-` for standard output. */
  readonly file: string
  readonly err: string
}

/** What the shop alone says. */
const QUOTE_FLAGS = ['services', 'discount', 'fetched', 'untaxed', 'since'] as const

const SIZES = Object.keys(PAPER_SIZES) as PaperSize[]

/** @param today `YYYY-MM-DD`, where no date is given. Throws `Unusable` where the arguments or a file cannot be used. */
export async function sheet(args: readonly string[], today: string): Promise<Written> {
  const { values, positionals } = parse(args)
  if (positionals.length !== 1)
    throw new Unusable([`sheet: ${positionals.length} files; expected one design file`])
  const file = values.out
  if (file === undefined) throw new Unusable(['--out: missing; expected the file to write'])
  const format = (values.format ?? extname(file).slice(1).toLowerCase()) as Format
  if (!FORMATS.includes(format))
    throw new Unusable([
      `--out: "${file}"; expected a name that ends in ${FORMATS.map((one) => `.${one}`).join(', ')}, or --format`,
    ])
  // Who works in a terminal is the shop, where nothing else is said.
  const audience = (values.audience ?? 'shop') as Audience
  if (!AUDIENCES.includes(audience))
    throw new Unusable([`--audience: "${audience}"; expected ${AUDIENCES.join(', ')}`])
  if (audience !== 'shop')
    for (const flag of QUOTE_FLAGS)
      if (values[flag] !== undefined)
        throw new Unusable([
          `--${flag}: "${values[flag]}"; expected none with --audience ${audience}: only the shop quotes`,
        ])
  const what = whatFor(format, audience, values.what)
  const units = values.units ?? 'imperial'
  if (units !== 'imperial' && units !== 'metric')
    throw new Unusable([`--units: "${units}"; expected imperial or metric`])
  const size = (values.size ?? (units === 'imperial' ? 'letter' : 'a4')) as PaperSize
  if (!SIZES.includes(size)) throw new Unusable([`--size: "${size}"; expected ${SIZES.join(', ')}`])
  const date = values.date ?? today
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(Date.parse(date)))
    throw new Unusable([`--date: "${date}"; expected a day as 2026-05-01`])
  const catalog = readCatalog(values.catalog)
  const asked = askedFor(values, catalog.value)
  const checked = parseAsked({ ...asked, date })
  if (!checked.ok) throw new Unusable(checked.issues.map(({ path, message }) => `--${path}: ${message}`))
  const quote = {
    ...asked,
    ...(values.since !== undefined && { since: lastQuote(values.since) }),
  }
  const design = readDesign(positionals[0]!)
  const dock = derive(design.value, catalog.value)
  const bytes = await writeFile(
    format,
    {
      what,
      audience,
      quote,
      dock,
      design: design.value,
      catalog: catalog.value,
      options: {
        units,
        lang: 'en',
        size,
        date,
        by: values.by ?? '',
        ...(values.link !== undefined && { link: values.link }),
      },
    },
    paperFonts,
  )
  return {
    code: dock.findings.some(({ severity }) => severity === 'stop') ? 1 : 0,
    bytes,
    file,
    err: [...catalog.notices, ...design.notices].map((notice) => `${notice}\n`).join(''),
  }
}

/** A paper is the drawing where none is named, figures are the packing list's. */
function whatFor(format: Format, audience: Audience, wanted: string | undefined): Asked['what'] {
  const all = whatOf(format, audience)
  if (wanted === undefined) return all.includes('drawing') ? 'drawing' : 'packing'
  const known = all.find((one) => one === wanted)
  if (known) return known
  throw new Unusable([
    `--what: "${wanted}"; expected ${all.length > 0 ? all.join(', ') : 'none'} of a .${format} file`,
  ])
}

/** A quote saved as JSON. */
function lastQuote(file: string): QuoteFile {
  const parsed = parseQuoteFile(readJson(file))
  if (!parsed.ok) throw new Unusable(issueLines(file, parsed.issues))
  return parsed.value
}

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
        if (!known.includes(code))
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
  if (number === undefined || (share && value > 100))
    throw new Unusable([`--discount: "${text}"; expected a share as 5%, or an amount as 120.00`])
  return share ? { share: value / 100 } : { amount: Math.round(value * 100) }
}

/** Writes what was made. Throws `Unusable` where the file cannot be written. */
export function put({ bytes, file }: Written): void {
  if (file === '-') {
    process.stdout.write(bytes)
    return
  }
  try {
    writeFileSync(file, bytes)
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    throw new Unusable([`${file}: cannot be written (${code ?? error}); expected a place that can`])
  }
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: 'string', short: 'o' },
        format: { type: 'string' },
        catalog: { type: 'string' },
        what: { type: 'string' },
        size: { type: 'string' },
        units: { type: 'string' },
        date: { type: 'string' },
        by: { type: 'string' },
        link: { type: 'string' },
        audience: { type: 'string' },
        since: { type: 'string' },
        services: { type: 'string' },
        discount: { type: 'string' },
        fetched: { type: 'boolean' },
        untaxed: { type: 'boolean' },
      },
    })
  } catch (error) {
    throw new Unusable([`${(error as Error).message}; expected what leadline --help lists`])
  }
}
