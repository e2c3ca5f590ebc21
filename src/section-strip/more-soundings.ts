/** What only the table does with soundings: comes with it, not before. */
import type { Design, Sounding } from '../../rules/design/index.ts'
import { byDistance, withSoundings } from './soundings.ts'

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
