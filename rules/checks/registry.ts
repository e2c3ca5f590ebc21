/** Every check, in the order that findings of one severity are told. Adding one: a file of its own, and its line here. */

import { augerOnRock } from './auger-on-rock.ts'
import { bankNotSounded } from './bank-not-sounded.ts'
import { boatAground } from './boat-aground.ts'
import { boatNoFairway } from './boat-no-fairway.ts'
import { boatOnSection } from './boat-on-section.ts'
import { boatsOverlap } from './boats-overlap.ts'
import { braceAlongDoesNotFit } from './brace-along-does-not-fit.ts'
import { braceAlongNone } from './brace-along-none.ts'
import { braceDoesNotFit } from './brace-does-not-fit.ts'
import { braceLeftOut } from './brace-left-out.ts'
import { braceNearBed } from './brace-near-bed.ts'
import { braceNearFrame } from './brace-near-frame.ts'
import { braceNearPad } from './brace-near-pad.ts'
import { catalogDiffers } from './catalog-differs.ts'
import type { Check } from './check.ts'
import { crestNearFrame, crestReachesFrame } from './crest-reaches-frame.ts'
import { deckAwash } from './deck-awash.ts'
import { deckGuard } from './deck-guard.ts'
import { deckNearLevel } from './deck-near-level.ts'
import { deckUnderLevel } from './deck-under-level.ts'
import { extraNoPlace } from './extra-no-place.ts'
import { extraNoRoom } from './extra-no-room.ts'
import { frameInBed } from './frame-in-bed.ts'
import { frameNearBed } from './frame-near-bed.ts'
import { hingeShort } from './hinge-short.ts'
import { jointShort } from './joint-short.ts'
import { legBelowFrame } from './leg-below-frame.ts'
import { legNoneLongEnough } from './leg-none-long-enough.ts'
import { legOverrideShort } from './leg-override-short.ts'
import { legTallAboveDeck } from './leg-tall-above-deck.ts'
import { legUnpaired } from './leg-unpaired.ts'
import { liftHeavy } from './lift-heavy.ts'
import { limitArea } from './limit-area.ts'
import { limitDepth } from './limit-depth.ts'
import { limitReach, limitShare } from './limit-reach.ts'
import { limitSide } from './limit-side.ts'
import { limitWidth } from './limit-width.ts'
import { muckWithoutMudPad } from './muck-without-mud-pad.ts'
import { notConsidered } from './not-considered.ts'
import { padOnSlope } from './pad-on-slope.ts'
import { padsOverlap } from './pads-overlap.ts'
import { postTooShort } from './post-too-short.ts'
import { rampBearingShort } from './ramp-bearing-short.ts'
import { rampCornerHangs } from './ramp-corner-hangs.ts'
import { rampEndLow } from './ramp-end-low.ts'
import { rampInLegs } from './ramp-in-legs.ts'
import { rampNoBank } from './ramp-no-bank.ts'
import { rampOnCrest } from './ramp-on-crest.ts'
import { rampSlopeAda } from './ramp-slope-ada.ts'
import { rampTooSteep } from './ramp-too-steep.ts'
import { sectionUnreachable } from './section-unreachable.ts'
import { sectionsOverlap } from './sections-overlap.ts'
import { siteAssumed } from './site-assumed.ts'
import { slipNarrow } from './slip-narrow.ts'
import { soundingsAside } from './soundings-aside.ts'
import { soundingsCliff } from './soundings-cliff.ts'
import { soundingsDiffer } from './soundings-differ.ts'
import { soundingsFarApart } from './soundings-far-apart.ts'
import { soundingsFew } from './soundings-few.ts'
import { soundingsOverDeck } from './soundings-over-deck.ts'
import { soundingsPassed } from './soundings-passed.ts'
import { startNotFound } from './start-not-found.ts'
import { stepHigh } from './step-high.ts'
import { stepToBoat } from './step-to-boat.ts'
import { unknownCode } from './unknown-code.ts'
import { unknownId } from './unknown-id.ts'

/** All checks that come with the frame of an edit, in the order in which findings are listed. Those of the structure have a list of their own. */
export const CHECKS: readonly Check[] = [
  unknownCode,
  unknownId,
  catalogDiffers,
  sectionUnreachable,
  sectionsOverlap,
  jointShort,
  startNotFound,
  rampNoBank,
  rampTooSteep,
  rampInLegs,
  rampBearingShort,
  hingeShort,
  rampSlopeAda,
  rampEndLow,
  rampCornerHangs,
  rampOnCrest,
  stepHigh,
  deckUnderLevel,
  deckNearLevel,
  crestReachesFrame,
  crestNearFrame,
  deckAwash,
  stepToBoat,
  deckGuard,
  boatAground,
  boatOnSection,
  boatsOverlap,
  slipNarrow,
  boatNoFairway,
  limitReach,
  limitShare,
  limitWidth,
  limitArea,
  limitDepth,
  limitSide,
  frameInBed,
  frameNearBed,
  legNoneLongEnough,
  legOverrideShort,
  legBelowFrame,
  legTallAboveDeck,
  legUnpaired,
  liftHeavy,
  padsOverlap,
  padOnSlope,
  muckWithoutMudPad,
  braceDoesNotFit,
  braceNearBed,
  braceNearPad,
  braceNearFrame,
  braceLeftOut,
  braceAlongNone,
  braceAlongDoesNotFit,
  augerOnRock,
  postTooShort,
  extraNoRoom,
  extraNoPlace,
  soundingsDiffer,
  soundingsCliff,
  soundingsOverDeck,
  soundingsFew,
  soundingsFarApart,
  soundingsPassed,
  soundingsAside,
  bankNotSounded,
  siteAssumed,
  notConsidered,
]
