/** What customers add, and services, of a price list. */
import type { Catalog } from '../../../rules/index.ts'
import { freeCode } from '../form/blank.ts'
import type { PriceRow } from './read-row.ts'
import type { Guess, Made } from './take.ts'

type Extra = Catalog['extras'][number]
type EdgeExtra = Extract<Extra, { place: 'edge' }>

/** Of what nothing is known, and nothing like it is sold: a box of one foot, kg and m. */
const UNKNOWN = { mass: 2, size: [0.3048, 0.3048, 0.3048] } as const
/** Free edge that one takes, over its length along the edge: room for a hand on both sides. */
const ROOM = 1.5
/** Goes round a ladder or a bench: words that say what a thing is. */
const WORDS = /[a-z]{4,}/g

/** @param known what was sold before the list: what it is like is sought there */
export function makeExtra(catalog: Catalog, row: PriceRow, known: Catalog['extras']): Made {
  const like = alike(known, row.name)
  const [part] = like?.parts ?? []
  const sized = sizeOf(row.measures)
  const size = sized ?? partly(row.measures, part?.size ?? UNKNOWN.size)
  const kind = /\b(?:bumper|fender)\b/i.test(row.name) ? 'bumper' : 'accessory'
  const code = freeCode(
    row.code,
    catalog.extras.map((one) => one.code),
  )
  const extra: EdgeExtra = {
    code,
    name: row.name,
    place: 'edge',
    space: Number(Math.min(10, Math.max(0.1, ROOM * size[1])).toPrecision(4)),
    parts: [
      {
        kind,
        code: row.code,
        name: row.name,
        price: row.price ?? 0,
        mass: row.mass ?? part?.mass ?? UNKNOWN.mass,
        size: [...size],
        count: 1,
        ...(!sized && !part && { shape: 'box' as const }),
        ...(part?.bag !== undefined && { bag: part.bag }),
      },
    ],
  }
  const list = ['extras']
  const guesses: Guess[] = [
    ...(row.mass === null ? [{ list, code, rest: ['parts', 0, 'mass'] }] : []),
    ...(sized ? [] : [0, 1, 2].map((k) => ({ list, code, rest: ['parts', 0, 'size', k] }))),
  ]
  return { catalog: { ...catalog, extras: [...catalog.extras, extra] }, guesses }
}

/** Of three measures the longer of the first two lies along the edge, the last stands up. */
function sizeOf(measures: readonly number[]): readonly [number, number, number] | null {
  const [a, b, c] = measures
  if (a === undefined || b === undefined || c === undefined || Math.max(a, b, c) > 5) return null
  return [Math.min(a, b), Math.max(a, b), c]
}

/** Of two measures the first lies along the edge and the second stands up, of one it lies along; what they leave open is as in the other. */
function partly(
  [along, up]: readonly number[],
  [out, length, height]: readonly [number, number, number],
): readonly [number, number, number] {
  if (along === undefined || Math.max(along, up ?? 0) > 5) return [out, length, height]
  return [Math.min(out, along), along, up ?? Math.min(height, along)]
}

/** The one on an edge whose name has most words in common with this one; none where they have none. */
function alike(extras: readonly Extra[], name: string): EdgeExtra | null {
  const words = new Set(name.toLowerCase().match(WORDS))
  const common = (other: string): number =>
    (other.toLowerCase().match(WORDS) ?? []).filter((word) => words.has(word) && word !== 'dock').length
  return extras.reduce<EdgeExtra | null>(
    (best, one) => (one.place === 'edge' && common(one.name) > (best ? common(best.name) : 0) ? one : best),
    null,
  )
}

export function makeService(catalog: Catalog, row: PriceRow): Made {
  const per = /\bhour|\/ ?hr?\b/i.test(row.name) ? 'hour' : /\bsection\b/i.test(row.name) ? 'section' : 'job'
  const services = catalog.services ?? []
  const service = { code: row.code, name: row.name, price: row.price ?? 0, per } as const
  return {
    catalog: { ...catalog, services: [...services, service] },
    guesses: per === 'job' ? [{ list: ['services'], code: row.code, rest: ['per'] }] : [],
  }
}
