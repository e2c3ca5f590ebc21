/**
 * Whole docks for one shore, to choose from: what each of three wishes could be built as. Pure; which of them can be built is found out
 * beside the page (`choose.ts`).
 */
import { straightFrames } from '../../../rules/catalog/straight.ts'
import type { Bed, Catalog, Design, Dock } from '../../../rules/index.ts'
import { sectionsForReach } from '../../../rules/layout/sections-for-reach.ts'
import { sameDesign } from '../../state/same-design.ts'

/** Least cost that does; a wider or higher deck; more room at the end, to sit on or to berth at. */
export const KINDS = ['least', 'comfortable', 'room'] as const
export type Kind = (typeof KINDS)[number]
export type Candidates = Readonly<Record<Kind, readonly Design[]>>

interface Shore {
  readonly bed: Bed
  /** How far out the dock in hand goes, m from the water's edge: all of them go there. */
  readonly reach: number
  readonly waves: Dock['waves']
  /** A deck height rounded up to one that is read. */
  readonly snapUp: (meters: number) => number
}

type Head = NonNullable<Design['dock']['head']>

/** Of the dock in hand what is no shape stays: ramp, extras, boat, load. Null for a plan of its own. */
export function candidatesFor(design: Design, catalog: Catalog, shore: Shore): Candidates | null {
  if (design.dock.plan) return null
  const { waves, reach, bed, snapUp } = shore
  const over = Math.max(0, design.site.levels.high) + catalog.rules.deckOverHigh.value
  const today = snapUp(Math.max(over, waves?.recommendedDeckHeight ?? 0))
  const allSeason = snapUp(Math.max(today, waves?.recommendedAllSeason ?? 0))
  const now = design.dock.deckHeight
  const plain = bare(design)

  const built = (frame: string, deckHeight: number, head: Head, finish?: string): Design[] => {
    const sized: Design = {
      ...plain,
      dock: { ...plain.dock, frame, deckHeight, head, ...(finish === undefined ? {} : { finish }) },
    }
    const run = sectionsForReach(sized, catalog, reach, bed)
    return run ? [{ ...sized, dock: { ...sized.dock, sections: run.sections } }] : []
  }
  const straight = straightFrames(catalog)
  const frames = straight.map(({ code }) => code)
  const narrowest = Math.min(...straight.map(({ width }) => width))
  const wide = straight.filter(({ width }) => width > narrowest + 1e-6).map(({ code }) => code)
  const { finish, head = STRAIGHT } = design.dock
  // Whoever has chosen a shape sees no dock of another.
  const own: Head = head.sections > 0 ? head : STRAIGHT
  return {
    least: distinct(frames.flatMap((frame) => [today, now].flatMap((deck) => built(frame, deck, own)))),
    comfortable: distinct(
      (wide.length > 0 ? wide : frames).flatMap((frame) =>
        built(frame, Math.max(now, allSeason), own, finish),
      ),
    ),
    room: distinct(frames.flatMap((frame) => built(frame, Math.max(now, today), roomier(own), finish))),
  }
}

const STRAIGHT: Head = { shape: 'straight', sections: 0 }

/** One step larger at the end; a straight dock has no end to be larger, and gets a T. */
const roomier = (head: Head): Head =>
  head.shape === 'straight'
    ? { shape: 'tee', sections: 2 }
    : { ...head, sections: head.sections + (head.shape === 'tee' ? 2 : 1) }
/** The same boat at the lake end. */
function atEnd(boat: NonNullable<Design['dock']['boats']>[number]): NonNullable<Design['dock']['boat']> {
  const { id: _, section: __, edge, along: ___, ...figures } = boat
  return { ...figures, side: edge === 'right' ? 'right' : 'left' }
}

/** What speaks of sections and legs by name says nothing of another dock. */
function bare(design: Design): Design {
  const { placed: _, overrides: __, bracing, finish: ___, boats = [], ...dock } = design.dock
  const { none: ____, ...braces } = bracing ?? {}
  // Of boats at edges of their own the first goes with the dock, to its lake end.
  const [boat] = boats
  return {
    ...design,
    dock: {
      ...dock,
      ...(boat && !dock.boat && { boat: atEnd(boat) }),
      ...(Object.keys(braces).length > 0 && { bracing: braces }),
    },
  }
}

const distinct = (designs: readonly Design[]): Design[] =>
  designs.filter((one, i) => !designs.slice(0, i).some((other) => sameDesign(one, other)))
