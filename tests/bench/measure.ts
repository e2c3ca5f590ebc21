/** Times `deriveKit` (placing, fitting, counting) on a straight dock of a steady shore, so that every section has legs and most a brace. */
import { type Design, demoCatalog, demoDesign, deriveKit, parseDesign } from '../../rules/index.ts'

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

export function timeKit(sections: number, runs: number): Timing {
  const design = longDock(sections)
  for (let i = 0; i < Math.ceil(runs / 4); i++) deriveKit(design, demoCatalog)
  const times = Array.from({ length: runs }, () => {
    const start = performance.now()
    deriveKit(design, demoCatalog)
    return performance.now() - start
  })
  return { sections, median: middle(times), least: Math.min(...times) }
}

/** Processor time of one run, all threads, milliseconds: what other processes take meanwhile does not count. */
function work(design: Design): number {
  const before = process.cpuUsage()
  deriveKit(design, demoCatalog)
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1000
}

/**
 * Work a section at `long` sections over that at `short`, garbage collection and all.
 *
 * The two take turns, so that what slows the machine for a while slows both, and the median of the turns is told. A short dock is
 * mostly done before garbage is collected, a long one is not: what a section leaves in memory counts in full.
 */
export function growth(short: number, long: number, turns: number): number {
  const [few, many] = [longDock(short), longDock(long)]
  for (let i = 0; i < 20; i++) {
    for (let k = 0; k < (2 * long) / short; k++) deriveKit(few, demoCatalog)
    deriveKit(many, demoCatalog)
  }
  return middle(
    Array.from({ length: turns }, () => {
      const before = work(few) / short
      return work(many) / long / before
    }),
  )
}
