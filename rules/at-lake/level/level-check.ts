/**
 * Whether the deck lies level, and which legs are to be moved by how much, as few as can be.
 *
 * Frames are taken as stiff (`stiff-sections.ts`). How they lie is the weighted least squares of all readings. Where readings agree with
 * that within their errors it is what counts; where they do not, a frame has given a little, and each leg's own reading counts. A leg that
 * is left keeps its foot on the ground; all others are set so that every corner comes within the tolerance.
 */
import { deriveKit, type Kit } from '../../kit.ts'
import type { PlacedLeg } from '../../parts/legs.ts'
import type { Project } from '../../project.ts'
import type { LevelCheck, LevelMove, LevelReadings } from '../types.ts'
import { crowded, keepMost } from './keep-most.ts'
import { type Lie, lieOf } from './lie.ts'
import { type Stiff, stiffSections } from './stiff-sections.ts'

/** Level is what is within this, m: what a crew can set. */
const TOLERANCE = 0.003
/** What a frame gives, where readings agree with no stiff one, m. Judgment. */
const GIVES = 0.001
/** Readings this far off any stiff frame are wrong, m. Judgment. */
const TWISTED = 0.012
/** A height that is known no better than this is not known, m. */
const UNSURE = 0.02
/** A foot this far over the ground as it was measured hangs, m: three times what such a measurement is off. */
const HANGS = 0.03
/** So many sections are looked at at once: the search grows fast. Of a longer dock the outer ones follow those before. */
const AT_ONCE = 6

type Site = Pick<Project, 'dock' | 'design' | 'catalog' | 'bed'>

export function levelCheck(given: LevelReadings, { dock, design, catalog, bed }: Site): LevelCheck {
  const kit = deriveKit(design, catalog, bed)
  const inWater = new Set(given.inWater ?? dock.sections.map(({ id }) => id))
  const stiff = stiffSections(kit, inWater)
  const legs = kit.legs.filter(({ section }) => stiff.sections.includes(section))
  const lie = lieOf(given, legs, stiff)
  const bare = { ...NOTHING, error: lie.error, hanging: hangingOf(given, lie) }
  const unsure = legs.filter((leg) => lie.errorAt(leg) > UNSURE + 3 * lie.noise).map(({ id }) => id)
  if (unsure.length > 0 || legs.length === 0) return { ...bare, verdict: 'more-readings', unsure }
  const worst = lie.worst
  if (worst.over > TWISTED) return { ...bare, verdict: 'measure-again', doubted: worst.legs }
  return moved({ kit, stiff, legs, lie, given, bare, gave: worst.over > 0 })
}

const NOTHING = {
  moves: [],
  over: 0,
  off: 0,
  after: 0,
  doubted: [],
  unsure: [],
  fewest: false,
} as const

interface Found {
  readonly kit: Kit
  readonly stiff: Stiff
  readonly legs: readonly PlacedLeg[]
  readonly lie: Lie
  readonly given: LevelReadings
  readonly bare: Omit<LevelCheck, 'verdict'>
  /** Frames have given: readings agree with no stiff ones. */
  readonly gave: boolean
}

function moved(found: Found): LevelCheck {
  const { kit, stiff, legs, lie, given, bare, gave } = found
  const tolerance = given.tolerance ?? TOLERANCE
  const heights = new Map(
    legs.map((leg) => [leg.id, (gave ? lie.read.get(leg.id) : null) ?? lie.heightAt(leg)]),
  )
  const corners = stiff.sections.flatMap((section) =>
    stiff.corners(section).map(([x, y]) => lie.sumAt(stiff.at(section, x, y))),
  )
  const now = [...corners, ...(gave ? heights.values() : [])]
  const [low, high] = [Math.min(...now), Math.max(...now)]
  const over = given.over ?? (low + high) / 2
  const off = Math.max(high - over, over - low)
  if (off <= tolerance + 1e-9 && bare.hanging.length === 0)
    return { ...bare, verdict: 'level', over, off, after: off, fewest: true }
  const hanging = new Set(bare.hanging)
  const carrying = legs.filter(({ id }) => !hanging.has(id))
  const target =
    given.over ??
    (stiff.sections.length > AT_ONCE
      ? crowded(
          carrying.map(({ id }) => heights.get(id)!),
          tolerance,
        )
      : null)
  const plan = inParts(stiff, carrying, heights, target, tolerance, gave ? GIVES + lie.noise : 0)
  if (!plan) return { ...bare, verdict: 'more-readings' }
  const pitch = kit.shop.catalog.sleeve.screw
  const moves = legs.flatMap((leg): LevelMove[] => {
    if (plan.kept.has(leg.id)) return []
    if (hanging.has(leg.id)) return [{ leg: leg.id, by: null, turns: null }]
    const by = plan.heightAt(leg) - heights.get(leg.id)!
    return [{ leg: leg.id, by, turns: pitch === undefined ? null : by / pitch }]
  })
  return {
    ...bare,
    verdict: moves.length > 0 ? 'moves' : 'level',
    moves,
    over: plan.target,
    off,
    after: plan.worst,
    fewest: plan.most,
  }
}

interface Parts {
  readonly kept: ReadonlySet<string>
  readonly heightAt: (leg: PlacedLeg) => number
  readonly target: number
  readonly worst: number
  readonly most: boolean
}

/** A few sections at a time, from the shore outward; those before lie as they were found to. */
function inParts(
  stiff: Stiff,
  legs: readonly PlacedLeg[],
  heights: ReadonlyMap<string, number>,
  asked: number | null,
  tolerance: number,
  give: number,
): Parts | null {
  const numbers: number[] = []
  const kept = new Set<string>()
  let [target, worst, most] = [asked, 0, stiff.sections.length <= AT_ONCE]
  for (let from = 0; from < stiff.sections.length; from += AT_ONCE) {
    const part = stiff.sections.slice(from, from + AT_ONCE)
    const size = from + part.length + 2
    const done = numbers.length
    const split = (at: readonly number[]) => ({
      at: at.slice(done, size),
      add: numbers.reduce((sum, value, i) => sum + value * at[i]!, 0),
    })
    const own = legs.filter(({ section }) => part.includes(section))
    const best = keepMost({
      legs: own.map((leg) => ({
        ...split(stiff.at(leg.section, leg.x, leg.y)),
        height: heights.get(leg.id)!,
      })),
      corners: part.flatMap((section) =>
        stiff.corners(section).map(([x, y]) => split(stiff.at(section, x, y))),
      ),
      ...{ target, tolerance, give },
    })
    if (!best) return null
    for (const i of best.legs) kept.add(own[i]!.id)
    numbers.push(...best.to)
    target = best.target
    worst = Math.max(worst, best.worst)
    most &&= best.most
  }
  const heightAt = (leg: PlacedLeg): number => {
    const at = stiff.at(leg.section, leg.x, leg.y)
    return numbers.reduce((sum, value, i) => sum + value * at[i]!, 0)
  }
  return { kept, heightAt, target: target ?? 0, worst, most }
}

/** Said, or found: it is set to stand on ground that lies deeper than its foot is now. */
function hangingOf({ hanging = [], set = [] }: LevelReadings, { heightOf }: Lie): string[] {
  const found = set.flatMap(({ leg, height, depth }) => {
    const over = heightOf(leg)
    return over !== null && over - (height - depth) > HANGS ? [leg] : []
  })
  return [...new Set([...hanging, ...found])]
}
