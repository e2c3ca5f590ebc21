/**
 * What is drawn how. A part that there are many of is drawn as instances of one shape; the few of many kinds (a hinge bar, two
 * pins, two legs of one length) are baked, by material, into one mesh each. So the number of draw calls does not grow with
 * the dock, nor with the shop's catalog.
 */

export interface Candidate {
  readonly key: string
  /** How many. */
  readonly count: number
  /** Vertices of one. */
  readonly vertices: number
  /** Draw calls as instances: one for each look. */
  readonly looks: number
}

/** Draw calls spent on instances at most. With up to 5 baked meshes, the shadow and the scenery that stays under 40. */
export const MOST_INSTANCED = 14
/** Baking this many vertices or fewer on every change costs next to nothing. */
const FEW_VERTICES = 1500

/** Keys to draw as instances: those whose baking would cost most. */
export function planInstanced(candidates: readonly Candidate[]): Set<string> {
  const sorted = candidates
    .filter(({ count, vertices }) => count > 1 && count * vertices > FEW_VERTICES)
    .sort((a, b) => b.count * b.vertices - a.count * a.vertices || (a.key < b.key ? -1 : 1))
  const chosen = new Set<string>()
  let calls = 0
  for (const { key, looks } of sorted) {
    if (calls + looks > MOST_INSTANCED) continue
    calls += looks
    chosen.add(key)
  }
  return chosen
}
