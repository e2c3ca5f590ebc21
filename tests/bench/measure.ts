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

export function timeKit(sections: number, runs: number): Timing {
  const design = longDock(sections)
  for (let i = 0; i < Math.ceil(runs / 4); i++) deriveKit(design, demoCatalog)
  const times = Array.from({ length: runs }, () => {
    const start = performance.now()
    deriveKit(design, demoCatalog)
    return performance.now() - start
  }).sort((a, b) => a - b)
  return { sections, median: times[times.length >> 1]!, least: times[0]! }
}

/** Time a section at the longer over that at the shorter; the least of each, which a busy machine disturbs least. */
export const growth = (short: Timing, long: Timing): number =>
  long.least / long.sections / (short.least / short.sections)
