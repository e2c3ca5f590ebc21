/**
 * What the loads do to this dock: the worst of every part, and in which case.
 *
 * Two answers: a quick one for every change (all cases on the dock as it is, and its sway with and without braces), and a deep one
 * when the dock rests (buckling factors, and the same with sleeves half and twice as firm).
 */
import type { BraceUse, FootUse, HookUse, LegUse, RailUse, Structure, Waves } from '../../dock.ts'
import type { Kit } from '../../kit.ts'
import { round6 } from '../../numbers.ts'
import { lowestFactor } from '../buckling.ts'
import { factorState, layOutStates } from '../second-order.ts'
import { type Analysis, analyze, evenAxial } from './analysis.ts'
import { DECK_LIVE } from './basic-loads.ts'
import { braceJudge } from './brace-use.ts'
import { feetJudge } from './foot-use.ts'
import { AS_BUILT, type DockFrame, dockFrame } from './frame.ts'
import { hooksJudge } from './hook-use.ts'
import { caseId } from './load-cases.ts'
import { legJudges } from './part-judges.ts'
import { playOf } from './play.ts'
import { railsJudge } from './rail-use.ts'
import { sleeveStiffness } from './sleeve.ts'
import type { Solved } from './soften.ts'
import { swayOf } from './sway.ts'
import { unevenFoot } from './uneven.ts'

/** Sleeves half as firm as stated, and twice: a figure that no standard gives must not decide alone. */
const SLEEVES = [0.5, 2] as const
/** A buckling factor is closed in on to this part of itself. */
const CLOSE = 1e-3

export interface Depth {
  readonly deep: boolean
  /** Whether the part of a push that the dock just stands is looked for (`under-push.ts`); where absent as deep. */
  readonly fine?: boolean
  /** False: deep, but for what it is compared with (other sleeves, no braces), which takes half of the time and decides nothing. */
  readonly compared?: boolean
}

/** Throws UnstableFrameError where the dock can move without resistance; `notJudged` says first whether it can be judged at all. */
export function structureOf(
  kit: Kit,
  waves: Waves | null,
  { deep, fine = deep, compared = deep }: Depth = { deep: true },
): Structure {
  const frame = dockFrame(kit)
  const judges = judgesOf(frame)
  let cases = 0
  const visit = (solved: Solved): void => {
    cases++
    judges.visit(solved)
  }
  const analysis = analyze(frame, waves, visit, { fine })
  const bare = kit.pairs.some((pair) => pair.fit)
    ? unbraced(kit)
    : { sway: analysis.sway, buckling: () => bucklingOf(analysis) }
  const buckling = deep ? bucklingOf(analysis) : null
  const { along, across } = analysis.sway
  const play = playOf(frame, analysis)
  return {
    ...(analysis.buckled ? NO_FIGURES : figuresOf(judges, analysis)),
    playAlong: round6(play.along),
    playAcross: round6(play.across),
    uneven: deep && analysis.full ? unevenFoot(frame, analysis.full()) : null,
    sway: round6(Math.max(along, across)),
    swayAlong: round6(along),
    swayAcross: round6(across),
    swayUnbraced: round6(Math.max(bare.sway.along, bare.sway.across)),
    swayUnbracedAcross: round6(bare.sway.across),
    buckling,
    bucklingUnbraced: compared ? bare.buckling() : null,
    sleeve: {
      stiffness: round6(sleeveStiffness(kit.shop)),
      stated: kit.shop.catalog.sleeve.stiffness !== undefined,
    },
    sleeves: compared ? SLEEVES.map((part) => withSleeves(kit, waves, part)) : [],
    deep,
    slides: judges.slides(),
    stands: judges.falls().length === 0 && !analysis.buckled,
    falls: analysis.buckled ? [caseId('live'), ...judges.falls()] : judges.falls(),
    cases,
    live: round6(kit.design.dock.load ?? DECK_LIVE),
  }
}

const NO_FIGURES = {
  legs: [],
  braces: [],
  feet: [],
  hooks: [],
  rails: [],
  railUse: null,
  railDeflection: null,
} as const

function figuresOf(judges: Judges, analysis: Analysis) {
  const rails = judges.rails(analysis)
  return {
    legs: judges.legs(),
    braces: judges.braces(),
    feet: judges.feet(),
    hooks: judges.hooks(),
    rails,
    railUse: rails.reduce((most, rail) => Math.max(most, rail.use), 0),
    railDeflection: rails.reduce((most, rail) => Math.max(most, rail.deflection), 0),
  }
}

function unbraced(kit: Kit) {
  const frame = dockFrame(kit, { ...AS_BUILT, braces: false })
  const states = layOutStates(frame)
  const plain = factorState(states, null)
  return {
    sway: swayOf(states, frame, plain),
    buckling: () => bucklingOf(analyze(frame, null, () => {}, { gravityOnly: true })),
  }
}

/** Null where no factor is found. */
function bucklingOf({ states, gravityAxial }: Analysis): number | null {
  const factor = lowestFactor(states.layout, states.freeRotations, evenAxial(gravityAxial), CLOSE)
  return Number.isFinite(factor) ? round6(factor) : null
}

function withSleeves(kit: Kit, waves: Waves | null, part: number): Structure['sleeves'][number] {
  const frame = dockFrame(kit, { ...AS_BUILT, sleeve: part })
  const judges = judgesOf(frame)
  const analysis = analyze(frame, waves, judges.visit)
  const legUse = analysis.buckled ? null : judges.legs().reduce((most, leg) => Math.max(most, leg.use), 0)
  return {
    part,
    buckling: bucklingOf(analysis),
    legUse,
    swayAlong: round6(analysis.sway.along),
    swayAcross: round6(analysis.sway.across),
  }
}

interface Judges {
  visit(solved: Solved): void
  legs(): LegUse[]
  braces(): BraceUse[]
  feet(): FootUse[]
  hooks(): HookUse[]
  rails(analysis: Analysis): RailUse[]
  slides(): Structure['slides']
  falls(): readonly string[]
}

function judgesOf(frame: DockFrame): Judges {
  const legs = legJudges(frame)
  const rails = railsJudge(frame)
  const braces = braceJudge(frame)
  const feet = feetJudge(frame)
  const hooks = hooksJudge(frame)
  const falls: string[] = []
  return {
    visit(solved) {
      const { carried: forces, combination } = solved
      const { name } = combination
      // A shove lasts a moment, and whoever gives it stands on the deck: it bends legs, and carries no dock over.
      if (!solved.stands && !solved.spared && combination.outside && !falls.includes(name)) falls.push(name)
      for (const leg of legs) leg.visit(forces, name)
      if (combination.gravity === 'full') rails.visit(forces, name)
      braces.visit(forces, name)
      feet.visit(solved)
      hooks.visit(solved)
    },
    legs: () =>
      frame.legs.map(({ leg }, i): LegUse => {
        const { use, axial, moment, governs, case: name } = legs[i]!.worst()
        return {
          leg: leg.id,
          axial: round6(axial),
          moment: round6(moment),
          use: round6(use),
          governs,
          case: name,
        }
      }),
    braces: braces.uses,
    feet: feet.uses,
    slides: feet.total,
    hooks: hooks.uses,
    rails: rails.uses,
    falls: () => falls,
  }
}
