/** Why a dock cannot be judged, where it cannot: what is missing that a frame needs. */
import type { Kit } from '../../kit.ts'
import { SLACK } from '../../numbers.ts'
import { unstated } from './bars.ts'

export type WhyNot =
  | 'no-strength'
  | 'no-legs'
  | 'no-leg-length'
  | 'sections-overlap'
  | 'section-unreachable'
  | 'ramp-no-bank'
  | 'leg-too-short'
  | 'too-long'

/** Sections that are solved for at once. Where wind unzips a long dock foot by foot the work grows with the cube: under a second here. */
export const MOST_SECTIONS = 120

/** Null where it can. What stops it is a finding of its own as a rule; this says that the rest waits for it. */
export function whyNotJudged(kit: Kit): WhyNot | null {
  const { legs, layout, joints, ramp, shop, design } = kit
  if (legs.length === 0) return 'no-legs'
  if (layout.placed.length > MOST_SECTIONS) return 'too-long'
  if (unstated(shop.catalog).length > 0) return 'no-strength'
  if (layout.unreachable.length > 0) return 'section-unreachable'
  if (joints.overlapping.length > 0) return 'sections-overlap'
  if (layout.ramp && !ramp?.contact) return 'ramp-no-bank'
  if (legs.some((leg) => !leg.stock)) return 'no-leg-length'
  for (const leg of legs) {
    const underside = design.dock.deckHeight - shop.shape(leg.section.frame).lowest
    if (leg.bed + leg.pad.sole > underside - SLACK) return 'leg-too-short'
  }
  return null
}
