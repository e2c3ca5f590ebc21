/** What changed since the last quote: parts, prices, and why. The older dock is that of the older design, derived again. */
import type { Dock, Figure, Leg, ReasonTerm } from '../dock.ts'
import { numbered } from '../leg-places.ts'
import type { PaperWord } from '../words/papers.ts'
import { productOf } from './money.ts'
import { type DifferenceRow, difference } from './packing-list.ts'
import type { Priced, QuoteLine } from './quote.ts'
import { type Saying, saying, text } from './saying.ts'

/** Of a quote, of today or an earlier one, or of an estimate. */
export type Compared = Pick<Priced, 'date' | 'currency' | 'lines' | 'discount' | 'tax' | 'rounding' | 'total'>

export interface Quoted {
  readonly dock: Dock
  readonly quote: Compared
}

export interface ChangedLine {
  readonly group: QuoteLine['group']
  readonly kind: QuoteLine['kind']
  readonly code: string | null
  readonly name: string
  readonly quantity: { readonly before: number; readonly after: number }
  readonly unitPrice: { readonly before: number | null; readonly after: number | null }
  /** After less before, minor units. */
  readonly amount: number
  /** Of that, what is for other quantities (at the old price, or the new one of a new line), and the rest, for other prices. */
  readonly forQuantity: number
  readonly forPrice: number
}

/** A figure that a leg's length follows from, and that is another now. `key` as in the leg's reasons. */
export interface ChangedTerm {
  readonly key: string
  readonly unit: string
  readonly before: number | string
  readonly after: number | string
  readonly say: Saying
}

export interface ChangedLeg {
  readonly leg: string
  /** Codes; null where there was or is no such leg, or none long enough. */
  readonly before: string | null
  readonly after: string | null
  readonly is: 'new' | 'gone' | 'other'
  readonly why: readonly ChangedTerm[]
  readonly say: Saying
}

export interface QuoteChanges {
  readonly since: string
  readonly parts: readonly DifferenceRow[]
  readonly lines: readonly ChangedLine[]
  readonly legs: readonly ChangedLeg[]
  /** After less before, minor units; together they are `total`. */
  readonly sums: {
    readonly parts: number
    readonly prices: number
    readonly services: number
    readonly other: number
    readonly freight: number
    readonly discount: number
    readonly tax: number
    readonly rounding: number
  }
  readonly total: { readonly before: number; readonly after: number }
  /** Other currencies cannot be told apart by amounts: null sums would mislead, so nothing else is told then. */
  readonly comparable: boolean
}

export function quoteChanges(before: Quoted, after: Quoted): QuoteChanges {
  const comparable = before.quote.currency === after.quote.currency
  const lines = comparable ? changedLines(before.quote.lines, after.quote.lines) : []
  const goods = lines.filter(({ kind }) => kind !== null)
  const sum = (of: readonly ChangedLine[], what: 'amount' | 'forQuantity' | 'forPrice'): number =>
    of.reduce((total, line) => total + line[what], 0)
  const inGroup = (group: QuoteLine['group']): number =>
    sum(
      lines.filter((line) => line.group === group),
      'amount',
    )
  const change = (of: (quote: Compared) => number): number =>
    comparable ? of(after.quote) - of(before.quote) : 0
  return {
    since: before.quote.date,
    parts: difference(before.dock.parts, after.dock.parts).filter(({ have, need }) => have !== need),
    lines,
    legs: changedLegs(before.dock, after.dock),
    sums: {
      parts: sum(goods, 'forQuantity'),
      prices: sum(goods, 'forPrice'),
      services: inGroup('services'),
      other: inGroup('other'),
      freight: inGroup('freight'),
      discount: change(({ discount }) => discount.amount),
      tax: change(({ tax }) => tax?.amount ?? 0),
      rounding: change(({ rounding }) => rounding?.amount ?? 0),
    },
    total: { before: before.quote.total, after: after.quote.total },
    comparable,
  }
}

function changedLines(before: readonly QuoteLine[], after: readonly QuoteLine[]): ChangedLine[] {
  const keys = new Map<string, { old: QuoteLine[]; now: QuoteLine[] }>()
  const at = (line: QuoteLine): { old: QuoteLine[]; now: QuoteLine[] } => {
    const key = [line.group, line.kind, line.code, line.code === null ? line.name : ''].join('\n')
    const known = keys.get(key) ?? { old: [], now: [] }
    keys.set(key, known)
    return known
  }
  for (const line of before) at(line).old.push(line)
  for (const line of after) at(line).now.push(line)
  return [...keys.values()].flatMap(({ old, now }) => {
    const [was, is] = [merged(old), merged(now)]
    const one = (now[0] ?? old[0])!
    const amount = is.amount - was.amount
    // Freight has no quantity of its own: its one line costs more or less.
    const price = was.price ?? is.price ?? 0
    const forQuantity = productOf(price, is.charged - was.charged)
    if (amount === 0 && was.quantity === is.quantity && was.price === is.price) return []
    return [
      {
        group: one.group,
        kind: one.kind,
        code: one.code,
        name: one.name,
        quantity: { before: was.quantity, after: is.quantity },
        unitPrice: { before: was.price, after: is.price },
        amount,
        forQuantity,
        forPrice: amount - forQuantity,
      },
    ]
  })
}

/** Lines of one key together: a shop may have written the same by hand twice. */
function merged(lines: readonly QuoteLine[]): {
  quantity: number
  charged: number
  price: number | null
  amount: number
} {
  const quantity = lines.reduce((sum, line) => sum + line.quantity, 0)
  const charged = lines.reduce((sum, line) => sum + line.quantity + (line.sparesPriced ? line.spares : 0), 0)
  const amount = lines.reduce((sum, line) => sum + line.amount, 0)
  return { quantity, charged, price: lines[0]?.unitPrice ?? null, amount }
}

function changedLegs(before: Dock, after: Dock): ChangedLeg[] {
  const old = new Map(before.legs.map((leg) => [leg.id, leg]))
  const now = new Map(after.legs.map((leg) => [leg.id, leg]))
  const ids = [...new Set([...now.keys(), ...old.keys()])]
  const [numberedThen, numberedNow] = [numbered(before), numbered(after)]
  return ids.flatMap((id): ChangedLeg[] => {
    const [was, is] = [old.get(id), now.get(id)]
    if (was?.code === is?.code && was && is) return []
    return [
      {
        leg: id,
        before: was?.code ?? null,
        after: is?.code ?? null,
        is: !was ? 'new' : !is ? 'gone' : 'other',
        why: was && is ? changedTerms(was, before, is, after) : [],
        say: legSaid((is ? numberedNow : numberedThen)(id), legLength(before, was), legLength(after, is)),
      },
    ]
  })
}

/** What a leg's reasons take from outside; what follows from other reasons would say it twice. */
const OUTSIDE = ['design', 'catalog', 'site']
const fromOutside = ({ from }: ReasonTerm): boolean =>
  OUTSIDE.some((one) => from === one || from.startsWith(`${one}:`))

function changedTerms(was: Leg, before: Dock, is: Leg, after: Dock): ChangedTerm[] {
  const terms = (dock: Dock, leg: Leg): Map<string, ReasonTerm> =>
    new Map(
      (dock.reasons.legs[leg.id] ?? [])
        // The length is what is to be explained.
        .filter(({ rule }) => rule !== 'above-deck')
        .flatMap((reason) => reason.terms.filter(fromOutside))
        .map((term) => [term.key, term]),
    )
  const [old, now] = [terms(before, was), terms(after, is)]
  const changed = [...now.values()].flatMap((term): ChangedTerm[] => {
    const then = old.get(term.key)
    if (!then || then.value === term.value) return []
    const { key, unit } = term
    return [
      { key, unit, before: then.value, after: term.value, say: termSaid(key, unit, then.value, term.value) },
    ]
  })
  const says = (dock: Dock, leg: Leg, how: string): boolean =>
    (dock.reasons.legs[leg.id] ?? []).some(({ rule }) => rule === how)
  const tell = (key: string, how: string, yes: PaperWord, no: PaperWord): void => {
    const [then, now] = [says(before, was, how), says(after, is, how)]
    if (then !== now)
      changed.push({
        key,
        unit: 'text',
        before: then ? 'yes' : 'no',
        after: now ? 'yes' : 'no',
        say: saying(now ? yes : no),
      })
  }
  tell('byHand', 'length-by-hand', 'why-by-hand', 'why-by-rule')
  tell('owned', 'length-owned', 'why-owned', 'why-not-owned')
  return changed
}

const WHY: Readonly<Record<string, PaperWord>> = {
  deck: 'why-deck',
  bed: 'why-bed',
  minimum: 'why-minimum',
  soundingError: 'why-sounding-error',
  scour: 'why-scour',
  added: 'why-added',
  sole: 'why-sole',
}

function termSaid(key: string, unit: string, before: number | string, after: number | string): Saying {
  // The bed's elevation is told as the depth of the water over it.
  const figure = (value: number | string): Figure => ({
    value: key === 'bed' && typeof value === 'number' ? -value : value,
    unit,
  })
  return saying(WHY[key] ?? 'why-other', { what: text(key), before: figure(before), after: figure(after) })
}

/** A leg's stock length by its name; null where there is no such leg, a dash where none is long enough. */
const legLength = ({ parts }: Dock, leg: Leg | undefined): string | null =>
  leg ? (parts.find(({ kind, code }) => kind === 'leg' && code === leg.code)?.name ?? '–') : null

function legSaid(name: string, was: string | null, is: string | null): Saying {
  const values = { leg: text(name), before: text(was ?? '–'), after: text(is ?? '–') }
  return saying(was === null ? 'change-leg-new' : is === null ? 'change-leg-gone' : 'change-leg', values)
}
