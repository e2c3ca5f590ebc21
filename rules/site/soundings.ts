/** Soundings as the bed is made from them: in one order, whatever order they came in; those at one place as one. */
import type { Sounding } from '../design/index.ts'
import type { Places } from './kriging.ts'

export interface Sounded extends Places {
  /** Elevations of the bottom and of what a foot pad stands on, m. */
  readonly bottom: Float64Array
  readonly firm: Float64Array
  /** Mean offset of all, m. */
  readonly meanY: number
}

/** Ascending in x, then y. */
export function sounded(soundings: readonly Sounding[]): Sounded {
  const list = inOrder(soundings)
  const most = list.length
  const [x, y, bottom, firm] = [0, 1, 2, 3].map(() => new Float64Array(most)) as Columns
  let [n, times, sum] = [0, 1, 0]
  for (const s of list) {
    sum += s.offset
    const again = n > 0 && x[n - 1] === s.distance && y[n - 1] === s.offset
    if (again) times++
    else {
      times = 1
      n++
    }
    const k = n - 1
    x[k] = s.distance
    y[k] = s.offset
    // The mean of those at the place.
    bottom[k] = bottom[k]! + (0 - s.depth - bottom[k]!) / times
    firm[k] = firm[k]! + (0 - (s.firm ?? s.depth) - firm[k]!) / times
  }
  return {
    x: x.subarray(0, n),
    y: y.subarray(0, n),
    bottom: bottom.subarray(0, n),
    firm: firm.subarray(0, n),
    meanY: most === 0 ? 0 : sum / most,
  }
}

type Columns = [Float64Array, Float64Array, Float64Array, Float64Array]

/** Distances this near to each other are put in order with the soundings' other figures, m; a power of 2 over all numbers of soundings. */
const APART = 1e-6
const NUMBERS = 2 ** 15

/**
 * By number of the list. Distance and number go into one double (20 km at a micrometer and fifteen bits are 51), for numbers sort ten
 * times as fast as objects are compared: it counts at 20,000 soundings.
 */
function inOrder(soundings: readonly Sounding[]): readonly Sounding[] {
  const firm = (s: Sounding): number => s.firm ?? s.depth
  const before = (a: Sounding, b: Sounding): number =>
    a.distance - b.distance || a.offset - b.offset || a.depth - b.depth || firm(a) - firm(b)
  if (soundings.length >= NUMBERS) return [...soundings].sort(before)
  const keys = Float64Array.from(soundings, (s, i) => Math.round(s.distance / APART) * NUMBERS + i).sort()
  const out: Sounding[] = []
  for (let i = 0; i < keys.length; ) {
    const place = Math.floor(keys[i]! / NUMBERS)
    const run: Sounding[] = []
    for (; i < keys.length && Math.floor(keys[i]! / NUMBERS) === place; i++)
      run.push(soundings[keys[i]! - place * NUMBERS]!)
    if (run.length > 1) run.sort(before)
    for (const s of run) out.push(s)
  }
  return out
}

/** With the water's edge as a place of depth 0 at the mean offset. */
export function withEdge({ x, y, bottom, firm, meanY }: Sounded): Sounded {
  const before = (first: number, rest: Float64Array): Float64Array => {
    const all = new Float64Array(rest.length + 1)
    all[0] = first
    all.set(rest, 1)
    return all
  }
  return {
    x: before(0, x),
    y: before(meanY, y),
    bottom: before(0, bottom),
    firm: before(0, firm),
    meanY,
  }
}

/** Is a place on or within the soundings' convex hull? (Andrew's monotone chain; places ascending in x, then y.) */
export function hullOf({ x, y }: Places): (px: number, py: number) => boolean {
  const side = (a: number, b: number, px: number, py: number): number =>
    (x[b]! - x[a]!) * (py - y[a]!) - (y[b]! - y[a]!) * (px - x[a]!)
  const chain = (order: readonly number[]): number[] => {
    const out: number[] = []
    for (const i of order) {
      while (out.length > 1 && side(out.at(-2)!, out.at(-1)!, x[i]!, y[i]!) <= 0) out.pop()
      out.push(i)
    }
    return out
  }
  const order = Array.from(x, (_, i) => i)
  const low = chain(order)
  const high = chain(order.reverse())
  const on = (a: number, b: number, px: number, py: number): boolean => side(a, b, px, py) >= -1e-9
  const edges = [low, high].flatMap((list) => list.slice(1).map((b, i) => [list[i]!, b] as const))
  if (edges.length <= FEW_EDGES) return (px, py) => edges.every(([a, b]) => on(a, b, px, py))
  /** Of a chain only the edges about the place are asked: it turns one way, so that it lies on the inner side of the rest. */
  const inside = (list: readonly number[], px: number, py: number): boolean => {
    const up = x[list[0]!]! < x[list.at(-1)!]!
    let [from, to] = [0, list.length - 1]
    while (to - from > 1) {
      const middle = (from + to) >> 1
      if (x[list[middle]!]! <= px === up) from = middle
      else to = middle
    }
    for (let i = Math.max(0, from - 2); i < Math.min(list.length - 1, from + 3); i++)
      if (!on(list[i]!, list[i + 1]!, px, py)) return false
    return true
  }
  const [least, most] = [x[low[0]!]!, x[low.at(-1)!]!]
  return (px, py) => px >= least - 1e-9 && px <= most + 1e-9 && inside(low, px, py) && inside(high, px, py)
}

/** So many edges of a hull are all asked. */
const FEW_EDGES = 64
