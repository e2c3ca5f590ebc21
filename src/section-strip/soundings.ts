/** Changes of the soundings, as pure functions of the Design. Screens ask for depth or height, never for signs. */
import type { Design } from '../../rules/index.ts'

type Sounding = Design['site']['soundings'][number]

const withSoundings = (design: Design, soundings: Sounding[]): Design => ({
  ...design,
  site: { ...design.site, soundings },
})

export const changeSounding = (design: Design, index: number, change: Partial<Sounding>): Design =>
  withSoundings(
    design,
    design.site.soundings.map((s, i) => {
      if (i !== index) return s
      const { assumed: _, ...known } = s
      // A distance alone says nothing of how deep it is there.
      const next = { ...(change.depth === undefined ? s : known), ...change }
      // A rod pushed to firm bottom goes at least as deep as the bottom itself.
      return next.firm !== undefined && next.firm < next.depth ? { ...next, firm: next.depth } : next
    }),
  )

/** The last one stays: without a single depth there is no lake. */
export const removeSounding = (design: Design, index: number): Design =>
  design.site.soundings.length < 2
    ? design
    : withSoundings(
        design,
        design.site.soundings.filter((_, i) => i !== index),
      )

export const addSounding = (design: Design, sounding: Sounding): Design =>
  withSoundings(design, [...design.site.soundings, sounding])

/** As they are read in the table: by distance, from the bank out. */
export const sorted = (design: Design): Design =>
  withSoundings(
    design,
    byDistance(design).map((i) => design.site.soundings[i]!),
  )

/** Another sounding at the place to which this one is to be moved; undefined where it is free. */
export const inTheWay = (
  { site: { soundings } }: Design,
  index: number,
  distance: number,
): Sounding | undefined =>
  soundings.find(
    (s, i) =>
      i !== index && Math.abs(s.distance - distance) < 1e-6 && s.offset === (soundings[index]?.offset ?? 0),
  )

/** Indices in the order of distance, as they are shown and stepped through. */
export const byDistance = (design: Design): number[] =>
  design.site.soundings
    .map((_, i) => i)
    .sort((a, b) => design.site.soundings[a]!.distance - design.site.soundings[b]!.distance || a - b)

/** Where one more depth would tell most: one spacing beyond the last, 2 m where there is only one. */
export function nextPlace(design: Design): number {
  const order = byDistance(design)
  const last = design.site.soundings[order.at(-1)!]!.distance
  const before = order.length > 1 ? design.site.soundings[order.at(-2)!]!.distance : last - 2
  return last + Math.max(0.5, last - before)
}
