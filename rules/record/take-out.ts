/** Autumn: the sections in the order in which they come out, who lifts what, and what is out already. */
import { autumn } from '../papers/steps/set-up.ts'
import type { Steps } from '../papers/steps/step.ts'
import type { Project } from '../project.ts'
import type { EntryOf, SeasonRecord } from './schema.ts'
import { type LegState, latestSeason, seasonState } from './state.ts'

/** One section on its way out. */
export interface TakeOutSection {
  readonly section: string
  readonly ramp: boolean
  /** As carried, kg; null of a dock of which nothing is known. */
  readonly lift: number | null
  readonly people: number | null
  /** Of each of them, kg. */
  readonly each: number | null
  /** With how they stood, to be written on each before it is drawn. */
  readonly legs: readonly LegState[]
  readonly out: EntryOf<'out'> | null
}

/** The way out of the water: in which order, how heavy, by how many. */
export interface TakeOut {
  readonly season: string
  /** From the lake end to the shore: the last one set is the first out. Empty for a dock without sections. */
  readonly sections: readonly TakeOutSection[]
  /** Legs of no section that is named, outermost first. */
  readonly legs: readonly LegState[]
  /** All that is carried, kg; null where a section's is not known. */
  readonly mass: number | null
  /** Most people at one section. */
  readonly people: number | null
  readonly left: number
  /** Step by step, with cautions and tools, where the dock is at hand. */
  readonly steps: Steps | null
}

/** In which order sections and legs come out, with masses in kg; step by step where the dock is at hand. @param season the latest in which legs were set where absent */
export function takeOut(record: SeasonRecord, project?: Project, season?: string): TakeOut {
  const state = seasonState(record, season ?? latestSeason(record, ({ kind }) => kind === 'set'))
  const outOf = new Map(state.out.map((entry) => [entry.leg ?? entry.section ?? '', entry]))
  const sections = [...record.sections].reverse().map(({ id, ramp, lift, people }): TakeOutSection => {
    const each = lift === null || people === null ? null : lift / people
    return {
      ...{ section: id, ramp, lift, people, each },
      legs: state.legs.filter(({ leg }) => leg.section === id),
      out: outOf.get(id) ?? outOf.get('') ?? null,
    }
  })
  const named = new Set(record.sections.map(({ id }) => id))
  const legs = state.legs.filter(({ leg }) => leg.section === null || !named.has(leg.section)).reverse()
  const lifts = sections.map(({ lift }) => lift)
  return {
    season: state.season,
    sections,
    legs,
    mass: lifts.reduce<number | null>((sum, lift) => (sum === null || lift === null ? null : sum + lift), 0),
    people: sections.reduce<number | null>(
      (most, { people }) => (people === null ? most : Math.max(most ?? 0, people)),
      null,
    ),
    left: sections.filter(({ out }) => !out).length + legs.filter(({ out }) => !out).length,
    steps: project ? autumn(project) : null,
  }
}
