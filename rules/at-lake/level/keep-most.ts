/**
 * Of legs that stand, as many as can be left as they are while all corners come level: search over which are left, each step asked of a
 * linear program. What is left in one way can be left in part as well, so that a branch ends where it cannot get further than the best found.
 */
import { type Inequality, leastUnder } from './linear-program.ts'

export interface Standing {
  /** What each number counts for at the leg, what is added, and its height now, m. */
  readonly at: readonly number[]
  readonly add: number
  readonly height: number
}

export interface Task {
  readonly legs: readonly Standing[]
  /** Places that are to come level: what each number counts for there, and what is added. */
  readonly corners: readonly { readonly at: readonly number[]; readonly add: number }[]
  /** Height that they are to come to, m; null: any, the same for all. */
  readonly target: number | null
  /** Off that at most, and a leg that is left off its own height at most, m. */
  readonly tolerance: number
  readonly give: number
}

export interface Kept {
  /** Numbers of the legs that are left. */
  readonly legs: readonly number[]
  /** The numbers that heights are sums of. */
  readonly to: readonly number[]
  /** What the corners come to, and the worst of them off that, m. */
  readonly target: number
  readonly worst: number
  /** None is left out of the search. */
  readonly most: boolean
}

/** Programs solved before the best so far is taken. */
const MOST_ASKED = 4000

/** Null where the numbers are not bounded: nothing to level. */
export function keepMost(task: Task): Kept | null {
  // With none left any height would do: that in the middle of them all takes the least moving.
  const none = levelWith({ ...task, target: task.target ?? middleOf(task.legs) }, [])
  if (!none) return null
  const order = inOrder(task)
  let best = { legs: [] as readonly number[], ...none }
  let asked = 0
  const search = (i: number, kept: readonly number[], at: Level): void => {
    if (kept.length > best.legs.length || (kept.length === best.legs.length && at.worst < best.worst - 1e-9))
      best = { legs: kept, ...at }
    if (i === order.length || asked >= MOST_ASKED) return
    if (kept.length + stillPossible(task, order.slice(i), kept) <= best.legs.length) return
    asked++
    const more = [...kept, order[i]!]
    const with_ = levelWith(task, more)
    if (with_ && with_.worst <= task.tolerance + 1e-9) search(i + 1, more, with_)
    search(i + 1, kept, at)
  }
  search(0, [], none)
  return { ...best, most: asked < MOST_ASKED }
}

const middleOf = (legs: readonly Standing[]): number =>
  legs.map(({ height }) => height).sort((a, b) => a - b)[legs.length >> 1] ?? 0

interface Level {
  readonly to: readonly number[]
  readonly target: number
  readonly worst: number
}

/** As level as it gets with these legs left. */
function levelWith({ legs, corners, target, give }: Task, kept: readonly number[]): Level | null {
  const size = corners[0]?.at.length ?? 0
  // Unknowns: the numbers, then the height come to where that is free, then the worst.
  const free = target === null ? 1 : 0
  const none = (n: number): number[] => new Array<number>(n).fill(0)
  const scaled = (list: readonly number[], by: number): number[] => list.map((value) => value * by)
  const all: Inequality[] = [
    ...corners.flatMap(({ at, add }): Inequality[] => [
      { a: [...at, ...(free ? [-1] : []), -1], b: (target ?? 0) - add },
      { a: [...scaled(at, -1), ...(free ? [1] : []), -1], b: add - (target ?? 0) },
    ]),
    ...kept.flatMap((k): Inequality[] => {
      const { at, add, height } = legs[k]!
      return [
        { a: [...at, ...none(free + 1)], b: height - add + give },
        { a: [...scaled(at, -1), ...none(free + 1)], b: give - height + add },
      ]
    }),
  ]
  const least = leastUnder([...none(size + free), 1], all)
  if (!least) return null
  const to = least.at.slice(0, size)
  return { to, target: target ?? least.at[size]!, worst: Math.max(0, least.value) }
}

/** Most legs within one band of heights that have all kept ones in it: no more can be left. */
function stillPossible(
  { legs, target, tolerance, give }: Task,
  open: readonly number[],
  kept: readonly number[],
): number {
  const band = 2 * (tolerance + give) + 1e-9
  const heights = open.map((k) => legs[k]!.height)
  const held = kept.map((k) => legs[k]!.height)
  const [low, high] = [Math.min(...held), Math.max(...held)]
  const countFrom = (from: number): number =>
    held.length > 0 && (low < from - 1e-9 || high > from + band)
      ? 0
      : heights.filter((height) => height >= from - 1e-9 && height <= from + band).length
  if (target !== null) return countFrom(target - band / 2)
  return [...heights, ...held].reduce((most, from) => Math.max(most, countFrom(from)), 0)
}

/** The height that most are near to, m. */
export function crowded(heights: readonly number[], tolerance: number): number {
  const near = (at: number): number => heights.filter((height) => Math.abs(height - at) <= tolerance).length
  return heights.reduce((best, height) => (near(height) > near(best) ? height : best), heights[0] ?? 0)
}

/** Those near the middle of the most crowded band first: they are the likeliest to be left. */
function inOrder({ legs, target, tolerance }: Task): number[] {
  const heights = legs.map(({ height }) => height)
  const middle = target ?? crowded(heights, tolerance)
  return legs
    .map((_, i) => i)
    .sort((a, b) => Math.abs(legs[a]!.height - middle) - Math.abs(legs[b]!.height - middle) || a - b)
}
