/**
 * The set-up of this dock, step by step in the trade's order of work (common practice): on shore bolts, legs, clamps, pads, brackets,
 * hinge bar, one hinge pin; in the water the standing section, then ramp, level, brace ends, panels; from the deck each further section, the end of a
 * lengthwise brace when it is locked;
 * last clips, then caps.
 */
import type { Catalog } from '../../catalog/index.ts'
import type { Project } from '../../project.ts'
import { stopsOf } from '../../stops.ts'
import type { PaperWord } from '../../words/papers.ts'
import { saying, text } from '../saying.ts'
import { allot } from './allot.ts'
import { type Draft, drafts, type Season } from './drafts.ts'
import { peopleOf, toolsOf } from './hands.ts'
import { workPlanOf } from './plan.ts'
import type { Step, Steps, Tool } from './step.ts'

export const steps = (project: Project): Steps => sheet(project, 'set-up')

/** The same in reverse: the last piece put is the first taken. */
export const autumn = (project: Project): Steps => sheet(project, 'autumn')

function sheet({ dock, design, catalog, shop }: Project, season: Season): Steps {
  const plan = workPlanOf(dock)
  const all = drafts({ dock, design, catalog, plan, allotted: allot(dock, shop, plan), season })
  const ready = all.filter(({ phase }) => phase === 'ready')
  const work = all.filter(({ phase }) => phase !== 'ready')
  const inOrder =
    season === 'set-up'
      ? [...ready, ...work]
      : [...ready, ...work.reverse().map((draft) => ({ ...draft, lines: [...draft.lines].reverse() }))]
  const standing = standingAfter(inOrder, season)
  const made = inOrder.map((draft, i) => finish(draft, i + 1, standing[i]!, catalog))
  const stops = stopsOf(dock).length
  return {
    season,
    title: saying(season === 'set-up' ? 'set-up' : 'autumn', { dock: text(dock.name) }),
    steps: made,
    tools: once(made.flatMap(({ tools }) => tools)),
    people: made.reduce((most, step) => Math.max(most, peopleOf(step.crew)), 0),
    cautions: cautionsOf(season, stops),
    stops,
  }
}

function cautionsOf(season: Season, stops: number): PaperWord[] {
  const always: PaperWord[] = [
    'caution-screening',
    'caution-cold',
    'caution-power',
    'caution-storm',
    'caution-diving',
  ]
  if (season === 'autumn') return ['caution-ice', ...always]
  return stops > 0 ? ['caution-stop', ...always] : always
}

function finish(draft: Draft, number: number, standing: readonly string[], catalog: Catalog): Step {
  const { stands: _stands, ...step } = draft
  return { ...step, number, tools: toolsOf(step.lines, step.phase, catalog), standing }
}

/** Sections in the water after each step; steps that change nothing share one list. In autumn they go the way they came. */
function standingAfter(all: readonly Draft[], season: Season): (readonly string[])[] {
  const after: (readonly string[])[] = []
  let there: readonly string[] = season === 'set-up' ? [] : all.flatMap(({ stands }) => stands).reverse()
  for (const { stands } of all) {
    if (stands.length > 0)
      there = season === 'set-up' ? [...there, ...stands] : there.slice(0, there.length - stands.length)
    after.push(there)
  }
  return after
}

function once(tools: readonly Tool[]): Tool[] {
  const seen = new Map(tools.map((tool) => [`${tool.key}\n${tool.size}`, tool]))
  return [...seen.values()]
}
