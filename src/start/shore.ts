/**
 * A shore from a few answers, as pure functions of the Design, and the dock that goes with it.
 *
 * What is assumed: the water's edge is where distances count from, and the water is no depth there; between two answers the bottom falls
 * evenly; as long as one of two depths is known, the shore falls evenly through it; the bank rises evenly to where its height was told.
 */
import type { Sounding } from '../../rules/design/index.ts'
import { type Catalog, type Design, deriveKit, EXACT } from '../../rules/index.ts'
import { sameDesign } from '../state/same-design.ts'

/** By what it is to the dock, or, of another one, by its index. */
export type Place = 'near' | 'far' | 'bank' | number

/** Which sounding answers a question: the nearest in the lake, the farthest, the farthest back. -1 where there is none. */
function indexOf({ site: { soundings } }: Design, place: Place): number {
  if (typeof place === 'number') return place
  const best = (list: readonly number[], better: (a: number, b: number) => boolean): number =>
    list.reduce((k, i) => (k < 0 || better(soundings[i]!.distance, soundings[k]!.distance) ? i : k), -1)
  const all = soundings.map((_, i) => i)
  const out = all.filter((i) => soundings[i]!.distance > 0)
  const near = best(out, (a, b) => a < b)
  if (place === 'near') return near
  if (place === 'far')
    return best(
      out.filter((i) => i !== near),
      (a, b) => a > b,
    )
  return best(
    all.filter((i) => soundings[i]!.distance < 0),
    (a, b) => a < b,
  )
}

/** Where a question is asked that no sounding answers, m. */
const ELSE = 10 * EXACT.foot

/** The sounding that answers a question; where there is none, one of which the depth is not known. */
export function answerOf(design: Design, place: Place): Sounding {
  const found = design.site.soundings[indexOf(design, place)]
  if (found) return found
  const near = place === 'far' ? answerOf(design, 'near').distance : 0
  const distance = place === 'far' ? 3 * near : place === 'bank' ? -ELSE : ELSE
  return { distance, offset: 0, depth: 0, assumed: true }
}

/** Places of which nobody has said how deep, or how high, it is; from the bank out. */
export function placesAssumed(design: Design): Place[] {
  const { soundings } = design.site
  const named = (['near', 'far', 'bank'] as const).map((place) => [indexOf(design, place), place] as const)
  return soundings
    .map((sounding, i) => ({ ...sounding, i }))
    .filter(({ assumed }) => assumed)
    .sort((a, b) => a.distance - b.distance)
    .map(({ i }) => named.find(([at]) => at === i)?.[1] ?? i)
}

/** `distance` off the water's edge and `depth` (of the bank: height), both positive, m; what is left out stays. */
export function answer(
  design: Design,
  place: Place,
  { distance, depth }: { readonly distance?: number; readonly depth?: number },
): Design {
  const i = indexOf(design, place)
  const now = answerOf(design, place)
  const sign = now.distance < 0 ? -1 : 1
  const { assumed, ...rest } = now
  const next: Sounding = {
    ...rest,
    distance: distance === undefined ? now.distance : sign * distance,
    depth: depth === undefined ? now.depth : sign * depth + 0,
    // A distance alone says nothing of how deep it is there.
    ...(assumed && depth === undefined ? { assumed } : {}),
  }
  if (next.firm !== undefined && next.firm < next.depth) next.firm = next.depth
  const before = design.site.soundings
  const soundings = i < 0 ? [...before, next] : before.with(i, next)
  return { ...design, site: { ...design.site, soundings: place === 'bank' ? soundings : evenly(soundings) } }
}

/** What is assumed of the bottom lies on the line through the edge and the first depth that is known. */
function evenly(soundings: readonly Sounding[]): Sounding[] {
  const known = soundings.find((s) => s.distance > 0 && !s.assumed)
  const slope = known ? known.depth / known.distance : null
  return soundings.map((s) =>
    s.assumed && s.distance > 0 && slope !== null ? { ...s, depth: slope * s.distance } : s,
  )
}

/** Most sections that a dock grows to by itself. */
const MOST = 40

/**
 * The dock as long as the shore is known: its last legs stand no farther out. With a ramp where the bank is high enough to carry one over
 * high water. Whoever has laid out a dock of their own (`before` is not what was laid out here) keeps it.
 */
export function grown(design: Design, catalog: Catalog, before: Design): Design {
  return sameDesign(laidOut(before, catalog), before) ? laidOut(design, catalog) : design
}

export function laidOut(design: Design, catalog: Catalog): Design {
  const { dock, site } = design
  const frame = catalog.frames.find(({ code }) => code === dock.frame)
  if (dock.plan || !frame) return design
  const sized = (ramp: boolean, sections: number): Design => ({
    ...design,
    dock: { ...dock, ramp, sections },
  })
  const ramp = deriveKit(sized(true, 2), catalog).start.found
  const least = ramp ? 2 : 1
  const far = Math.max(0, ...site.soundings.filter((s) => !s.assumed).map((s) => s.distance))
  // One more than can be, then back until its legs stand where it was sounded.
  let n = Math.min(MOST, Math.max(least, Math.ceil(far / frame.length) + 2))
  while (n > least && deriveKit(sized(ramp, n), catalog).legs.some((leg) => leg.x > far)) n--
  return sized(ramp, n)
}
