/** Legs, braces and posts of a price list: like the one of the nearest length that is there. */
import type { Catalog } from '../../../rules/index.ts'
import type { PriceRow } from './read-row.ts'
import type { Made } from './take.ts'

/** m; lengths that differ by less are one. */
const ALIKE = 1e-4

function nearest<T>(list: readonly T[], of: (one: T) => number, to: number): T | undefined {
  return list.reduce<T | undefined>(
    (best, one) => (best && Math.abs(of(best) - to) <= Math.abs(of(one) - to) ? best : one),
    undefined,
  )
}

export const stated = ({ mass }: PriceRow): { mass?: number } => (mass === null ? {} : { mass })

/** `2 in x 8 ft`, `3 in dia x 96 in`: the pipe's own measure beside it is not its length. */
const longestOf = ({ measures }: PriceRow): number | undefined =>
  measures.length === 0 ? undefined : Math.max(...measures)

/** @param leaving legs that the list takes the place of: their lengths are free */
export function makeLeg(catalog: Catalog, row: PriceRow, leaving: Catalog['legs']): Made {
  const length = longestOf(row)
  if (length === undefined) return { left: 'no-length' }
  const like = nearest(catalog.legs, (leg) => leg.length, length)
  if (!like) return { left: 'no-length' }
  const going = new Set(leaving.map(({ code }) => code))
  const twin = catalog.legs.find((leg) => Math.abs(leg.length - length) < ALIKE)
  if (twin && !going.has(twin.code)) return { left: 'length-taken' }
  const { mass: _, ...rest } = like
  const leg = { ...rest, code: row.code, name: row.name, price: row.price ?? 0, ...stated(row), length }
  const legs = catalog.legs.filter((one) => one !== twin)
  return { catalog: { ...catalog, legs: [...legs, leg] }, guesses: [] }
}

/** Which legs and frames a brace is for no price list says. */
export function makeBrace(catalog: Catalog, row: PriceRow): Made {
  const holes = longestOf(row)
  if (holes === undefined) return { left: 'no-length' }
  const like = nearest(catalog.braces, (brace) => brace.holes, holes)
  if (!like) return { left: 'no-length' }
  const { mass: _, ...rest } = like
  const brace = { ...rest, code: row.code, name: row.name, price: row.price ?? 0, ...stated(row), holes }
  const list = ['braces']
  return {
    catalog: { ...catalog, braces: [...catalog.braces, brace] },
    guesses: [
      { list, code: row.code, rest: ['holes'] },
      { list, code: row.code, rest: ['legs', 'from'] },
      { list, code: row.code, rest: ['legs', 'to'] },
      { list, code: row.code, rest: ['spacing', 'from'] },
      { list, code: row.code, rest: ['spacing', 'to'] },
    ],
  }
}

/** Into the first extra that stands on posts. */
export function makePost(catalog: Catalog, row: PriceRow): Made {
  const length = longestOf(row)
  if (length === undefined) return { left: 'no-length' }
  const at = catalog.extras.findIndex(({ place }) => place === 'post')
  const extra = catalog.extras[at]
  if (extra?.place !== 'post') return { left: 'no-post' }
  const like = nearest(extra.posts, (post) => post.length, length)
  if (!like) return { left: 'no-post' }
  const { mass: _, ...rest } = like
  const post = { ...rest, code: row.code, name: row.name, price: row.price ?? 0, ...stated(row), length }
  const posts = [...extra.posts.filter((one) => Math.abs(one.length - length) >= ALIKE), post].sort(
    (a, b) => a.length - b.length,
  )
  return { catalog: { ...catalog, extras: catalog.extras.with(at, { ...extra, posts }) }, guesses: [] }
}
