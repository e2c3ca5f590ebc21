/** Times `deriveKit` (placing, fitting, counting) and `stand` (all load cases) on a straight dock of a steady shore, so that every section has legs and most a brace. */
import {
  assessKit,
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  parseDesign,
  shopOf,
} from '../../rules/index.ts'
import { freeEdges } from '../../rules/plan/free-edges.ts'
import type { PlanItem } from '../../rules/plan/schema.ts'
import { templatePlan } from '../../rules/plan/templates.ts'
import { attempt, lie } from '../../rules/plan/troubles.ts'
import { makeBed } from '../../rules/site/index.ts'
import { stand } from '../../rules/stand.ts'
import { dragged } from '../../src/plan-editor/hand.ts'

/** A bed that falls 1 in 40 to 1.3 m and is level from there: legs of 3 to 7 ft, braces of both lengths. */
export function longDock(sections: number): Design {
  const parsed = parseDesign({
    ...demoDesign,
    site: {
      ...demoDesign.site,
      soundings: [
        { distance: -3, depth: -0.9 },
        { distance: 0, depth: 0 },
        { distance: 52, depth: 1.3 },
        { distance: 20_000, depth: 1.3 },
      ],
    },
    dock: { ...demoDesign.dock, sections },
  })
  if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))
  return parsed.value
}

export interface Timing {
  readonly sections: number
  /** Milliseconds. */
  readonly median: number
  readonly least: number
}

const middle = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1]!

export function time(make: (sections: number) => () => void, sections: number, runs: number): Timing {
  const run = make(sections)
  for (let i = 0; i < Math.ceil(runs / 4); i++) run()
  const times = Array.from({ length: runs }, () => {
    const start = performance.now()
    run()
    return performance.now() - start
  })
  return { sections, median: middle(times), least: Math.min(...times) }
}

/** Processor time of one run, all threads, milliseconds: what other processes take meanwhile does not count. */
function work(run: () => void): number {
  const before = process.cpuUsage()
  run()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1000
}

/** Placing, fitting and counting, ready to run. */
export const kitOf = (sections: number): (() => void) => {
  const design = longDock(sections)
  return () => void deriveKit(design, demoCatalog)
}

/** All cases, braced and not, as a drag asks for them; the kit and its waves are there already. */
export const standOf = (sections: number): (() => void) => {
  const kit = deriveKit(longDock(sections), demoCatalog)
  const { waves } = assessKit(kit)
  return () => void stand(kit, waves, { deep: false })
}

/** A walkway with a finger to each side of every section but the first two: as many free edges as a dock can have. */
export function fingers(sections: number): readonly PlanItem[] {
  const frame = demoCatalog.frames[0]!
  const plan = templatePlan('straight', { frame, reach: Math.ceil((sections + 2) / 3), ramp: true })
  const run = plan.slice(2).map(({ id }) => id)
  for (const on of run)
    for (const edge of ['left', 'right'] as const)
      if (plan.length < sections)
        plan.push({ id: `${edge}-${on}`, on, edge, with: 'start', along: frame.length - frame.width })
  return plan
}

/** One move of a hand on such a dock: what it means, whether it can be; and, when it lets go, where there is room then. */
export const shapingOf = (sections: number): (() => void) => {
  const shop = shopOf(demoCatalog)
  const frame = demoCatalog.frames[0]!
  const before = lie(fingers(sections), frame.code, shop)
  const id = before.plan.at(-1)!.id
  return () => {
    const operation = dragged(before, id, -2.4, 0.1, shop)!
    const tried = attempt(before, operation, frame.code, shop)
    if (tried.ok) freeEdges(tried.after, shop, { frame, by: 'out', moving: null })
  }
}

/** An edit of a dock of 60 sections by itself, over so many soundings off its line; the bed is there already, as on the page. */
export const editOver = (soundings: number): (() => void) => {
  const site = siteOf(soundings)
  const design = { ...longDock(60), site }
  const bed = makeBed(site)
  return () => void deriveKit(design, demoCatalog, bed)
}

/** The same once more with the bed made anew: a sounding was moved. */
export const soundingMoved = (soundings: number): (() => void) => {
  const site = siteOf(soundings)
  const design = { ...longDock(60), site }
  return () => void deriveKit(design, demoCatalog, makeBed(site))
}

/** A grid as a boat sounds it, a bed that falls lakeward. */
function siteOf(soundings: number): Design['site'] {
  const rows = Math.round(Math.sqrt(soundings / 4))
  const columns = Math.ceil(soundings / rows)
  const far = 160
  return {
    ...longDock(60).site,
    soundings: Array.from({ length: soundings }, (_, i) => {
      const [column, row] = [Math.floor(i / rows), i % rows]
      const distance = (far * column) / columns
      const offset = (rows > 1 ? row / (rows - 1) - 0.5 : 0) * 20
      return { distance, offset, depth: 0.4 + 0.004 * distance + 0.03 * Math.sin(column + row) }
    }),
  }
}

/**
 * Work a section at `long` sections over that at `short`, garbage collection and all.
 *
 * The two take turns, so that what slows the machine for a while slows both, and the median of the turns is told. As many sections
 * in a turn of either: one short dock is mostly done before garbage is collected, a long one is not, and how long collecting takes
 * depends on what else is in memory.
 */
export function growth(
  make: (sections: number) => () => void,
  [short, long]: readonly [number, number],
  { turns, warm }: { readonly turns: number; readonly warm: number },
): number {
  const [few, many] = [make(short), make(long)]
  for (let i = 0; i < warm; i++) {
    for (let k = 0; k < (2 * long) / short; k++) few()
    many()
  }
  return middle(
    Array.from({ length: turns }, () => {
      const before = work(() => {
        for (let k = 0; k < long / short; k++) few()
      })
      return work(many) / before
    }),
  )
}

/** Work of one thing over that of another, the median of turns that both take. */
export function ratio(
  one: () => void,
  other: () => void,
  { turns, warm }: { readonly turns: number; readonly warm: number },
): number {
  for (let i = 0; i < warm; i++) {
    one()
    other()
  }
  return middle(Array.from({ length: turns }, () => work(one) / work(other)))
}
