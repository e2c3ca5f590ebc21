/** Foot pads of a price list: the first takes the place of the standard one, one for muck that of the pad for muck; others stand beside them. */
import type { Catalog } from '../../../rules/index.ts'
import { stated } from './make-long.ts'
import type { PriceRow } from './read-row.ts'
import type { Made } from './take.ts'

/** m; the widest plate that a catalog may have. */
const WIDEST = 1

/** @param given codes that rows of the same list have given already */
export function makePad(catalog: Catalog, row: PriceRow, given: ReadonlySet<string>): Made {
  const mud = /\b(?:mud|muck|soft)/i.test(row.name)
  const free = catalog.pads.findIndex((pad) => pad.mud === mud && !given.has(pad.code))
  const like = catalog.pads[free] ?? catalog.pads.find((pad) => pad.mud === mud) ?? catalog.pads[0]
  if (!like) return { left: 'no-length' }
  const { mass: _, ...rest } = like
  const [a, b = a] = row.measures
  const plate =
    a === undefined || b === undefined || Math.max(a, b) > WIDEST
      ? like.plate
      : { ...like.plate, length: Math.min(a, b), width: Math.max(a, b) }
  const pad = { ...rest, code: row.code, name: row.name, price: row.price ?? 0, ...stated(row), plate, mud }
  const pads = free < 0 ? [...catalog.pads, pad] : catalog.pads.with(free, pad)
  const guesses =
    row.measures.length === 2
      ? []
      : (['length', 'width'] as const).map((key) => ({
          list: ['pads'],
          code: row.code,
          rest: ['plate', key],
        }))
  return { catalog: { ...catalog, pads }, guesses }
}
