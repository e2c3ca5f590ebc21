/**
 * Which leg goes where, of all that are at hand: as few places as can be without a leg, then as few as can be on their reserve, then as few
 * set legs taken out again, then as few of those laid ready carried elsewhere, then the least length too much in sum. Exact.
 *
 * Legs of one code are alike, so this is a transport from places to codes. Places come one by one, each along the cheapest chain of
 * exchanges (successive shortest paths: Ahuja, Magnanti and Orlin, Network Flows, 1993, section 9.7): what stands after each is the best
 * for the places so far. The chains run over the codes alone, of which a shop has few.
 */
import { SLACK } from '../numbers.ts'
import type { AssignPiece, AssignPlace, AssignResult, Enough, LegMove } from './types.ts'

/** Two numbers, the first counts first: whole, so that sums are exact. */
interface Cost {
  readonly high: number
  readonly low: number
}

const FREE: Cost = { high: 0, low: 0 }
const plus = (a: Cost, b: Cost): Cost => ({ high: a.high + b.high, low: a.low + b.low })
const minus = (a: Cost, b: Cost): Cost => ({ high: a.high - b.high, low: a.low - b.low })
const less = (a: Cost, b: Cost): boolean => a.high < b.high || (a.high === b.high && a.low < b.low)

/** The last of the lengths stands for none. */
type Costs = (place: number, length: number) => Cost | null

export function assignLegs(places: readonly AssignPlace[], pieces: readonly AssignPiece[]): AssignResult {
  const costs = costsOf(places, pieces)
  const given = transport(
    places.length,
    pieces.map(({ count }) => count),
    costs,
  )
  const codeAt = (i: number): string | null => pieces[given[i]!]?.code ?? null
  const over = places.reduce((sum, { least }, i) => {
    const piece = pieces[given[i]!]
    return piece ? sum + Math.max(0, piece.length - least) : sum
  }, 0)
  return {
    given: places.map((place, i) => ({
      leg: place.leg,
      code: codeAt(i),
      enough: enoughOf(place, pieces[given[i]!]?.length ?? null),
    })),
    moves: movesOf(places, codeAt),
    unserved: places.flatMap(({ leg }, i) => (codeAt(i) === null ? [leg] : [])),
    left: pieces.flatMap(({ code, count }, k) => {
      const left = count - given.filter((length) => length === k).length
      return left > 0 ? [{ code, count: left }] : []
    }),
    over,
  }
}

export const enoughOf = (
  { least, reaches }: Pick<AssignPlace, 'least' | 'reaches'>,
  length: number | null,
): Enough => (length === null || length < reaches - SLACK ? 'no' : length < least - SLACK ? 'reserve' : 'yes')

function costsOf(places: readonly AssignPlace[], pieces: readonly AssignPiece[]): Costs {
  const n = places.length + 1
  const millimeters = (length: number): number => Math.round(length * 1000)
  const longest = pieces.reduce((most, { length }) => Math.max(most, millimeters(length)), 0)
  const change = longest * n + 1
  return (i, k) => {
    const place = places[i]!
    const piece = pieces[k]
    const otherwise = place.ready !== null && place.ready !== piece?.code
    const touched = { high: otherwise && place.set ? 1 : 0, low: otherwise && !place.set ? change : 0 }
    if (!piece) return { high: n * n + touched.high, low: touched.low }
    const enough = enoughOf(place, piece.length)
    if (enough === 'no' || (piece.length > place.most + SLACK && place.ready !== piece.code)) return null
    return {
      high: touched.high + (enough === 'reserve' ? n : 0),
      low: touched.low + millimeters(piece.length),
    }
  }
}

/** By place, the number of its length; that of lengths: none. */
function transport(n: number, counts: readonly number[], costOf: Costs): number[] {
  const none = counts.length
  const left = [...counts, Number.POSITIVE_INFINITY]
  const costs = Array.from({ length: n }, (_, place) => left.map((_, length) => costOf(place, length)))
  const given: number[] = []
  const exchanges = left.map((): (Exchange | null)[] => left.map(() => null))
  for (let place = 0; place < n; place++) {
    const { best, before } = chains(costs[place]!, exchanges)
    let end = none
    for (let k = 0; k < none; k++) {
      const [at, least] = [best[k], best[end]]
      if (left[k]! > 0 && at && (!least || less(at, least))) end = k
    }
    left[end]!--
    // Back along the chain: whoever stood on a length hands it on.
    const touched = [end]
    let length = end
    for (let from = before[length]; from; from = before[length]) {
      given[from.place] = length
      length = from.length
      touched.push(length)
    }
    given[place] = length
    for (const one of touched) exchanges[one] = exchangesFrom(one, given, costs)
  }
  return given
}

interface Chains {
  /** By length: the cheapest way to have one of it for this place, and which length and place handed it on. */
  readonly best: readonly (Cost | null)[]
  readonly before: readonly ({ readonly length: number; readonly place: number } | undefined)[]
}

/** Bellman and Ford's, for what is exchanged may be won back. */
function chains(own: readonly (Cost | null)[], exchanges: readonly (readonly (Exchange | null)[])[]): Chains {
  const best = [...own]
  const before: { readonly length: number; readonly place: number }[] = []
  for (let more = true, round = 0; more && round < best.length; round++) {
    more = false
    for (let a = 0; a < best.length; a++) {
      const at = best[a]
      if (!at) continue
      for (let b = 0; b < best.length; b++) {
        const move = exchanges[a]![b]
        if (!move) continue
        const there = plus(at, move.cost)
        const known = best[b]
        if (known && !less(there, known)) continue
        best[b] = there
        before[b] = { length: a, place: move.place }
        more = true
      }
    }
  }
  return { best, before }
}

/** A place that stands on one length, moved to another. */
interface Exchange {
  readonly place: number
  readonly cost: Cost
}

/** By length, the cheapest exchange to it of all places that stand on `a`. */
function exchangesFrom(
  a: number,
  given: readonly number[],
  costs: readonly (readonly (Cost | null)[])[],
): (Exchange | null)[] {
  const best = costs[0]!.map((): Exchange | null => null)
  given.forEach((length, place) => {
    if (length !== a) return
    const own = costs[place]![a] ?? FREE
    costs[place]!.forEach((there, b) => {
      if (b === a || !there) return
      const known = best[b]
      const cost = minus(there, own)
      if (!known || less(cost, known.cost)) best[b] = { place, cost }
    })
  })
  return best
}

/** What is carried: first between places, then from the shore. */
function movesOf(places: readonly AssignPlace[], codeAt: (i: number) => string | null): LegMove[] {
  const freed = new Map<string, string[]>()
  places.forEach(({ leg, ready }, i) => {
    if (ready === null || ready === codeAt(i)) return
    freed.set(ready, [...(freed.get(ready) ?? []), leg])
  })
  return places.flatMap(({ leg, ready }, i): LegMove[] => {
    const code = codeAt(i)
    if (code === null || code === ready) return []
    return [{ code, from: freed.get(code)?.shift() ?? null, to: leg }]
  })
}
