/**
 * A way to a dock with nothing left to fix, where no single remedy is enough: what a dock builder would do in turn. First what mends a thing by
 * itself (the deck over the crests, larger pads, a brace put back), the lowest deck first; then, for what wind and waves do to it, as many
 * anchor posts as hold it.
 */
import { remedy, replace } from '../checks/check.ts'
import { morePosts, withPosts } from '../checks/structure/judged.ts'
import type { Design } from '../design/index.ts'
import type { Dock, Finding, Remedy } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { isToFix } from '../to-fix.ts'
import { isWorse } from './compare.ts'
import type { Trials } from './trials.ts'

export interface Way {
  readonly remedy: Remedy
  /** What it makes, all found. */
  readonly dock: Dock
}

/** A dock on the way. */
interface At {
  readonly design: Design
  readonly kit: Kit
  readonly dock: Dock
  readonly steps: readonly Remedy[]
}

/** What is done before posts are asked for: what takes nothing from the dock that its owner wants. */
const FIRST: ReadonlySet<string> = new Set([
  'raise-deck',
  'mud-pads',
  'bumpers',
  'put-brace',
  'brace-along',
  'start-by-rule',
  'length-by-rule',
  'use-code',
])
/** Steps that ask for one thing, so that the later one stands for both. */
const ONE_THING: ReadonlySet<string> = new Set([
  'raise-deck',
  'mud-pads',
  'more-posts',
  'start-by-rule',
  'brace-along',
])
/** Steps of them at the most: one can show what another is for. */
const STEPS = 4
/** Posts at the most: one at each corner of a section on legs. */
const POSTS_A_SECTION = 4
/** Counts of posts that are tried at one height. */
const COUNTS = 5

/** Null where none is found: then nothing of what the shop sells is known to be enough. */
export function wayOut(trials: Trials): Way | null {
  const { before, kit } = trials
  const start: At = { design: kit.design, kit, dock: before, steps: [] }
  const whole = nearestFrom(trials, start)
  if (whole && toFix(whole.dock).length === 0) return whole
  const run = straightened(trials, start)
  const straight = run && nearestFrom(trials, run)
  // Less of a dock is worth it only where nothing is left to fix.
  return straight && toFix(straight.dock).length === 0 ? straight : whole
}

/** The one that comes nearest to nothing left to fix, with the lowest deck that does. */
function nearestFrom(trials: Trials, start: At): Way | null {
  const heights = heightsFor(trials.before.findings, trials.kit.design)
  let best: At | null = null
  for (const height of heights.length > 0 ? heights : [null]) {
    const at = mended(trials, start, height)
    const end = posted(trials, at, height) ?? at
    if (end.steps.length === 0) continue
    if (!best || leftIn(end) < leftIn(best)) best = end
    const dock = leftIn(end) > 0 ? null : trials.whole(end.design)
    if (dock && toFix(dock).length === 0) return { remedy: together(end.steps), dock }
  }
  const dock = best && trials.whole(best.design)
  return dock && { remedy: together(best!.steps), dock }
}

/** The run alone: sections to the side or alongside are what loads a dock most. Null where it has none. */
function straightened(trials: Trials, start: At): At | null {
  const { plan, head } = start.design.dock
  if (plan || !head || head.sections === 0) return null
  const straight = replace('/dock/head', { shape: 'straight', sections: 0 })
  return taken(trials, start, remedy('leave-out-head', [straight]))
}

const toFix = ({ findings }: Dock): Finding[] => findings.filter(isToFix)
const leftIn = ({ dock }: At): number => toFix(dock).length

/** Heights of the deck that what is to be fixed asks for, from the lowest, m. */
export function heightsFor(findings: readonly Finding[], { dock }: Design): number[] {
  const asked = findings
    .filter(isToFix)
    .flatMap(({ remedy }) => (remedy?.key === 'raise-deck' ? [Number(remedy.values.height!.value)] : []))
  return [...new Set(asked)].filter((height) => height > dock.deckHeight).sort((a, b) => a - b)
}

/** With all that mends a thing by itself, one after the other: two braces are put back each as the design is then. */
function mended(trials: Trials, from: At, height: number | null): At {
  let at = from
  const refused = new Set<string>()
  for (let n = 0; n < STEPS; n++) {
    const step = stepIn(at, height, refused)
    if (!step) break
    const next = taken(trials, at, step)
    // Of a deck that is raised the posts still come; of all else what it brings stays.
    if (next && (step.key === 'raise-deck' || !isWorse(OTHERS, at.dock, next.dock))) at = next
    else refused.add(step.key)
  }
  return at
}

function stepIn({ dock, design }: At, height: number | null, refused: ReadonlySet<string>): Remedy | null {
  for (const { remedy: step } of toFix(dock)) {
    if (!step || !FIRST.has(step.key) || refused.has(step.key)) continue
    if (step.key !== 'raise-deck') return step
    if (height !== null && height > design.dock.deckHeight) return atHeight(step, height)
  }
  return null
}

export const atHeight = (raise: Remedy, height: number): Remedy => ({
  ...raise,
  values: { ...raise.values, height: { ...raise.values.height!, value: height } },
  patch: raise.patch.map((step) => ({ ...step, value: height })),
})

/** Null where that makes no dock, or it is too much to try. */
function taken(trials: Trials, at: At, step: Remedy): At | null {
  const design = trials.patched(at.design, step.patch)
  const tried = design && trials.placed(design)
  const dock = tried && trials.quick(design)
  return dock && { design, kit: tried.kit, dock, steps: [...at.steps, step] }
}

const asksForPosts = ({ dock }: At): boolean => toFix(dock).some(({ remedy }) => remedy?.key === 'more-posts')

/** With as few posts as hold what is asked of them. The same where none are asked for, null where none are enough. */
function posted(trials: Trials, at: At, height: number | null): At | null {
  if (!asksForPosts(at)) return at
  const ask = morePosts(at.kit)
  if (!ask) return null
  const has = Number(ask.values.posts!.value) - 2
  const most = POSTS_A_SECTION * new Set(at.kit.legs.map(({ section }) => section)).size
  const known = new Map<number, At | null>()
  const tryWith = (count: number): At | null => {
    if (!known.has(count)) {
      // A dock that is held fast has more to bear: a boat's bump, which bumpers take up.
      const next = taken(trials, at, withPosts(at.kit, count)!)
      known.set(count, next && mended(trials, next, height))
    }
    return known.get(count)!
  }
  const holds = (next: At | null): next is At =>
    next !== null && !asksForPosts(next) && !isWorse(OTHERS, at.dock, next.dock)
  let [count, few] = [has + 4, has]
  for (let n = 0; n < COUNTS && count <= most; n++) {
    const next = tryWith(count)
    if (holds(next)) return fewest(few, count, next)
    if (!next) return null
    few = count
    count += moreNeeded(at, next, count - has)
  }
  return null

  /** Between too few and enough; what there is no time to try is left as it is. */
  function fewest(few: number, enough: number, found: At): At {
    const middle = Math.floor((few + enough) / 2)
    if (middle <= few) return found
    const next = tryWith(middle)
    if (!next) return found
    return holds(next) ? fewest(few, middle, next) : fewest(middle, enough, found)
  }
}

/** Whatever else is to be fixed. */
const OTHERS = { code: 'goes-over', severity: 'warn' } as const

/**
 * What resists a push grows evenly with the posts: so many more make it as much as the push. Where that is reached and something else is not,
 * two pairs more.
 */
function moreNeeded(bare: At, posted: At, posts: number): number {
  const [then, now] = [bare, posted].map(({ dock }) => 1 / Math.max(dock.structure?.slides.push ?? 0, 1e-3))
  const each = (now! - then!) / posts
  const more = now! < 1 && each > 0 ? Math.ceil((1 - now!) / each / 2) * 2 : 4
  return Math.min(Math.max(more, 2), 40)
}

function together(steps: readonly Remedy[]): Remedy {
  const kept = steps.filter(
    ({ key }, i) => !ONE_THING.has(key) || !steps.slice(i + 1).some((later) => later.key === key),
  )
  const [only] = kept
  if (kept.length === 1) return only!
  return { key: 'together', values: {}, patch: kept.flatMap(({ patch }) => patch), steps: kept }
}
