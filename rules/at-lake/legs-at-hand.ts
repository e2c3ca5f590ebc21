/** What each leg's place asks of the legs at hand, and how these are laid out. */
import type { Shop } from '../catalog-index.ts'
import { atLeast } from '../numbers.ts'
import type { AssignPiece, AssignPlace, DayState } from './types.ts'

/** A leg's place as it is found. */
export interface Asked {
  readonly leg: string
  /** Of the plan. */
  readonly code: string | null
  readonly setHeight: number
  /** Of its foot pad. */
  readonly sole: number
  /** What must stay over the deck. */
  readonly stays: number
  /** Its pair has a brace in the plan, or is to have none. */
  readonly mayBeBraced: boolean
}

/**
 * What lies ready: as planned, as far as there are so many of a code; what is set, is there. A leg that was planned where another was set is
 * free for any other place: all that the plan has are at hand, wherever they were to go.
 */
export function placesOf(
  asked: readonly Asked[],
  { set, legsAtHand }: Pick<DayState, 'set' | 'legsAtHand'>,
  shop: Shop,
): { readonly places: AssignPlace[]; readonly pieces: AssignPiece[] } {
  const isSet = new Map(set.map((one) => [one.leg, one.stock]))
  const wanted = asked.map(({ leg, code }) => isSet.get(leg) ?? code)
  const counts = new Map<string, number>()
  const add = (code: string, count: number): void => void counts.set(code, (counts.get(code) ?? 0) + count)
  if (legsAtHand) for (const { code, count } of legsAtHand) add(code, count)
  else for (const { code } of asked) if (code !== null) add(code, 1)
  // Brought from elsewhere, or forgotten on the list: those that are set are there.
  const standing = new Map<string, number>()
  asked.forEach(({ leg }, i) => {
    const code = wanted[i]!
    if (code !== null && isSet.has(leg)) standing.set(code, (standing.get(code) ?? 0) + 1)
  })
  for (const [code, count] of standing) counts.set(code, Math.max(count, counts.get(code) ?? 0))
  const left = new Map(counts)
  const ready: (string | null)[] = asked.map(() => null)
  const take = (i: number): void => {
    const code = wanted[i]!
    const n = code === null ? 0 : (left.get(code) ?? 0)
    if (code === null || n === 0) return
    left.set(code, n - 1)
    ready[i] = code
  }
  // Those set first: what is left is for the others.
  asked.forEach(({ leg }, i) => {
    if (isSet.has(leg)) take(i)
  })
  asked.forEach(({ leg }, i) => {
    if (!isSet.has(leg)) take(i)
  })
  return {
    places: asked.map(({ leg, setHeight, sole, stays, mayBeBraced }, i) => ({
      leg,
      least: setHeight + stays - sole,
      reaches: setHeight - sole,
      most: mostOf(setHeight - sole, mayBeBraced, shop),
      ready: ready[i]!,
      set: isSet.has(leg),
    })),
    pieces: shop.legs.flatMap(({ code, length }) => {
      const count = counts.get(code) ?? 0
      return count > 0 ? [{ code, length, count }] : []
    }),
  }
}

/** Not too tall over the deck; and where no brace is at hand, none that is to be braced. */
function mostOf(reaches: number, mayBeBraced: boolean, { rules, legs }: Shop): number {
  const tall = reaches + rules.aboveDeckMax
  if (mayBeBraced) return tall
  const unbraced = legs.filter(({ length }) => !atLeast(length, rules.braceFrom)).at(-1)
  return Math.min(tall, unbraced?.length ?? 0)
}
