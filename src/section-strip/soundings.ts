/** Changes of the soundings, as pure functions of the Design. Screens ask for depth or height, never for signs. */
import type { Design } from '../../rules/index.ts'

type Sounding = Design['site']['soundings'][number]

export const withSoundings = (design: Design, soundings: Sounding[]): Design => ({
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

/** What was taken is so, somebody says. */
export const confirmSounding = (design: Design, index: number): Design =>
  changeSounding(design, index, { depth: design.site.soundings[index]!.depth })

/** The last one stays: without a single depth there is no lake. */
export const removeSounding = (design: Design, index: number): Design =>
  design.site.soundings.length < 2
    ? design
    : withSoundings(
        design,
        design.site.soundings.filter((_, i) => i !== index),
      )

/** Indices in the order of distance, as they are shown and stepped through. */
export const byDistance = (design: Design): number[] =>
  design.site.soundings
    .map((_, i) => i)
    .sort((a, b) => design.site.soundings[a]!.distance - design.site.soundings[b]!.distance || a - b)
