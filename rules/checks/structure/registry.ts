/** Every check of the structure, in the order that findings of one severity are told. They come with the structure, after the rest. */
import { braceOverloaded } from './brace-overloaded.ts'
import { braceSlips } from './brace-slips.ts'
import { buckles } from './buckles.ts'
import { bucklingNear } from './buckling-near.ts'
import { clipsLift, clipsUnstated } from './clips.ts'
import { dockSlides } from './dock-slides.ts'
import { doesNotStand } from './does-not-stand.ts'
import { footLow } from './foot-low.ts'
import { footSinks } from './foot-sinks.ts'
import { goesOver } from './goes-over.ts'
import { hooksLift } from './hooks-lift.ts'
import type { StructureCheck } from './judged.ts'
import { legOverloaded } from './leg-overloaded.ts'
import { postHoldsLittle } from './post-holds-little.ts'
import { railOverloaded } from './rail-overloaded.ts'
import { railSags } from './rail-sags.ts'
import { sectionFloats } from './section-floats.ts'
import { sleeveSlips } from './sleeve-slips.ts'
import { sleevesDecide } from './sleeves-decide.ts'
import { swayFelt } from './sway-felt.ts'
import { swaysAcross } from './sways-across.ts'
import { swaysAlong } from './sways-along.ts'
import { tips } from './tips.ts'

export const STRUCTURE_CHECKS: readonly StructureCheck[] = [
  doesNotStand,
  buckles,
  legOverloaded,
  braceOverloaded,
  railOverloaded,
  sleevesDecide,
  goesOver,
  tips,
  dockSlides,
  swaysAcross,
  swaysAlong,
  sectionFloats,
  clipsLift,
  hooksLift,
  sleeveSlips,
  braceSlips,
  footSinks,
  footLow,
  railSags,
  bucklingNear,
  postHoldsLittle,
  swayFelt,
  clipsUnstated,
]
