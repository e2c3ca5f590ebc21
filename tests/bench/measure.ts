/** Times `deriveKit` (placing, fitting, counting) and `stand` (all load cases) on a straight dock of a steady shore, so that every section has legs and most a brace. */
import { assessKit, type Design, demoCatalog, demoDesign, deriveKit, parseDesign } from '../../rules/index.ts'
import { stand } from '../../rules/stand.ts'

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
