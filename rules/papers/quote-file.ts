/**
 * The quote as a file, with the design that it is for: what the next quote is compared with. And what a quote is asked for with, as it
 * comes from outside. Both are checked here; within the engine there is no further check of shape.
 */
import * as v from 'valibot'
import { parseEnclosing } from '../design/enclosed.ts'
import { type Design, LIMITS } from '../design/index.ts'
import { type Issue, issue, type Parsed, parseText, parseWith, plainOf } from '../validation.ts'
import { isDay } from './day.ts'
import { type Estimate, GROUPS, type PriceTerms, type Quote, type QuoteAsked } from './quote.ts'

export interface QuoteFile extends Omit<Quote, 'priced' | 'check'> {
  /** Older files have neither. */
  readonly priced?: PriceTerms
  readonly check?: string
  readonly design: Design
}

export const quoteFile = <Q extends Quote | Estimate>(quote: Q, design: Design): Q & { design: Design } => ({
  ...quote,
  design,
})

const FORMAT = 'leadline/quote'

const text = (max: number) => v.pipe(v.string(), v.maxLength(max))
const Day = v.pipe(v.string(), v.check(isDay, 'a day, YYYY-MM-DD'))
/** Of a line and of them all: whole cents that numbers tell apart. */
const amount = v.pipe(v.number(), v.integer(), v.minValue(-4e15), v.maxValue(4e15))
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1))
const quantity = v.pipe(v.number(), v.minValue(0), v.maxValue(1e6))
/** Of the longest dock that there may be. */
const pieces = v.pipe(v.number(), v.minValue(0), v.maxValue(1e9))
const price = v.pipe(v.number(), v.integer(), v.minValue(-1e8), v.maxValue(1e8))

const whole = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most))
const thousandths = whole(0, 1e9)

const Priced = v.strictObject({
  services: v.pipe(v.array(v.strictObject({ code: text(60), thousandths })), v.maxLength(100)),
  discount: v.nullable(
    v.union([v.strictObject({ millionths: whole(0, 1e6) }), v.strictObject({ amount: whole(0, 1e12) })]),
  ),
  fetched: v.boolean(),
  untaxed: v.boolean(),
  zone: v.optional(text(60)),
  other: v.pipe(
    v.array(v.strictObject({ name: text(200), thousandths, price, taxed: v.boolean() })),
    v.maxLength(100),
  ),
})

const QuoteFileSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: v.literal(1),
  date: Day,
  currency: v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'three capital letters')),
  lines: v.pipe(
    v.array(
      v.looseObject({
        group: v.picklist(GROUPS),
        kind: v.nullable(text(40)),
        code: v.nullable(text(60)),
        name: text(400),
        quantity: pieces,
        spares: pieces,
        sparesPriced: v.boolean(),
        unitPrice: price,
        amount,
        taxed: v.boolean(),
      }),
    ),
    v.maxLength(5000),
  ),
  discount: v.looseObject({ amount, share: v.nullable(share) }),
  tax: v.nullable(v.looseObject({ name: text(120), share, taxable: amount, amount })),
  rounding: v.optional(v.looseObject({ to: v.pipe(amount, v.minValue(1)), amount })),
  total: amount,
  priced: v.optional(Priced),
  check: v.optional(v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, '64 hex digits'))),
  design: v.unknown(),
})

/** A quote's file, with its design as `parseDesign` reads it. Never throws. */
export const parseQuoteFile = (input: unknown): Parsed<QuoteFile> =>
  // What is left unchecked is text that a comparison does not read.
  parseEnclosing(QuoteFileSchema, FORMAT, input) as unknown as Parsed<QuoteFile>

/** The same from JSON text. */
export function parseQuoteText(json: string): Parsed<QuoteFile> {
  const value = parseText(json, LIMITS.textBytes)
  return value.ok ? parseQuoteFile(value.value) : value
}

const AskedSchema = v.looseObject({
  date: Day,
  until: v.optional(Day),
  services: v.optional(
    v.pipe(v.array(v.looseObject({ code: text(60), quantity: v.optional(quantity) })), v.maxLength(100)),
  ),
  discount: v.optional(
    v.nullable(
      v.union([v.strictObject({ share }), v.strictObject({ amount: v.pipe(amount, v.minValue(0)) })]),
    ),
  ),
  fetched: v.optional(v.boolean()),
  untaxed: v.optional(v.boolean()),
  other: v.optional(
    v.pipe(
      v.array(v.looseObject({ name: text(200), quantity, price, taxed: v.optional(v.boolean()) })),
      v.maxLength(100),
    ),
  ),
})

const isObject = (value: unknown): boolean =>
  value !== null && typeof value === 'object' && !Array.isArray(value)

type Asked = v.InferOutput<typeof AskedSchema>
const dayIssues = ({ date, until }: Asked): Issue[] =>
  until !== undefined && until < date ? [issue('until', until, `${date} or later`)] : []

/** So that a quote's sums stay whole cents: beyond 2^53 numbers no longer tell them apart. */
function sumIssues({ services = [], other = [] }: Asked): Issue[] {
  const hours = services.reduce((sum, one) => sum + (one.quantity ?? 0), 0)
  const cents = other.reduce((sum, one) => sum + Math.abs(one.price) * one.quantity, 0)
  return [
    ...(hours > 1e6 ? [issue('services', `quantities of ${hours} in all`, 'at most 1000000')] : []),
    ...(cents > 1e14 ? [issue('other', `${cents} cents in all`, 'at most 100000000000000')] : []),
  ]
}

/** What a quote is asked for with. Never throws. */
export function parseAsked(input: unknown): Parsed<QuoteAsked> {
  const plain = plainOf(input)
  if (plain.faults.length === 0 && !isObject(plain.value))
    return { ok: false, issues: [issue('', 'no object', 'what a quote is asked for with')] }
  return parseWith(AskedSchema, plain, (asked) => [
    ...dayIssues(asked),
    ...sumIssues(asked),
  ]) as Parsed<QuoteAsked>
}
