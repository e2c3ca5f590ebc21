/** In which order packages are loaded: what is needed first goes on last, so that it comes off first. */
import type { Dock } from '../dock.ts'
import type { Package, Packages } from './cartons.ts'
import { groupBy, sectionsInOrder } from './order.ts'

export interface LoadStep {
  /** The first section, in the order of work, that something in them is for; null for what no section needs (spares). */
  readonly section: string | null
  /** Numbers, in the order in which they go on. */
  readonly packages: readonly number[]
}

/** Every package once; the first step goes on first. */
export function loading(dock: Dock, { packages }: Packages): LoadStep[] {
  const order = sectionsInOrder(dock).map(({ id }) => id)
  const needed = firstNeeded(dock, order)
  const steps = groupBy(packages, (one) => String(needed(one)))
  return [...steps]
    .map(([need, all]) => ({ need: Number(need), packages: all.map(({ number }) => number).reverse() }))
    .sort((a, b) => b.need - a.need)
    .map(({ need, packages: numbers }) => ({ section: order[need] ?? null, packages: numbers }))
}

/** Place in the order of work of the first section that a package is needed for; past the last one where none needs it. */
function firstNeeded(dock: Dock, order: readonly string[]): (one: Package) => number {
  const rank = new Map(order.map((id, i) => [id, i]))
  const none = order.length
  const rankOf = (section: string): number => rank.get(section) ?? none
  const ofId = new Map(rank)
  for (const { id, section } of dock.legs) ofId.set(id, rankOf(section))
  for (const { id, legs } of dock.pairs) ofId.set(id, Math.min(...legs.map((leg) => ofId.get(leg) ?? none)))
  const ofKind = new Map<string, number>()
  for (const { kind, code, section } of dock.placements) {
    const key = `${kind}\n${code}`
    ofKind.set(key, Math.min(ofKind.get(key) ?? none, rankOf(section)))
  }
  return ({ items, bags }) =>
    [
      ...items.flatMap(({ kind, code, quantity, of }) =>
        of.length > 0
          ? of.map((id) => ofId.get(id) ?? none)
          : quantity > 0
            ? [ofKind.get(`${kind}\n${code}`) ?? none]
            : [],
      ),
      ...bags.flatMap(({ section, items: inside }) =>
        section === null
          ? inside.flatMap(({ kind, code, quantity }) =>
              quantity > 0 ? [ofKind.get(`${kind}\n${code}`) ?? none] : [],
            )
          : [rankOf(section)],
      ),
    ].reduce((least, at) => Math.min(least, at), none)
}

/** Numbers as people read them: `3 to 5` is `3–5`. Given in any order, told in theirs. */
export function runsOf(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b)
  const runs: number[][] = []
  for (const n of sorted) {
    const last = runs.at(-1)
    if (last && last[1] === n - 1) last[1] = n
    else runs.push([n, n])
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ')
}
