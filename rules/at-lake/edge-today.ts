/** Where today's water meets the ground. */
import type { Bed } from '../site/bed.ts'

/** As far up the bank and out as it is looked for, and a step of the search, m. */
const FAR = 30
const STEP = 0.25

/**
 * Lakeward of the survey day's water's edge along the dock's line, m; up the bank negative. The place nearest to that edge; null where the water meets no ground.
 *
 * @param level today's water over the survey day's, m
 */
export function edgeToday({ bedAt, lineY }: Pick<Bed, 'bedAt' | 'lineY'>, level: number): number | null {
  const under = (x: number): boolean => bedAt(x, lineY) < level
  for (let far = 0; far < FAR; far += STEP)
    for (const [from, to] of [
      [far, far + STEP],
      [-far, -far - STEP],
    ] as const) {
      if (under(from) === under(to)) continue
      let [a, b] = [from, to]
      for (let i = 0; i < 30; i++) {
        const middle = (a + b) / 2
        if (under(middle) === under(a)) a = middle
        else b = middle
      }
      return (a + b) / 2
    }
  return null
}
