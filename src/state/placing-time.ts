/**
 * Whether a dock is too large to be placed within the frame of a pointer's move: told from its size before it is placed, and from how long
 * it took before. What is too large is placed beside the page.
 */
import type { Design } from '../../rules/index.ts'

/** What placing may take in the task of a pointer, ms: under the 50 that a hand feels, with room for what is drawn after it. */
const MOST = 25
/** Where it took longer than this twice it is too long for this machine, whatever it is told to take, ms. */
const SLOW = 40
/** But what is told to take less than this was held up by something else: no machine is so much slower, ms. */
const SURELY_QUICK = 3
/** Measured here on a quiet machine, with a third added: a section with its legs, a sounding, a section over many soundings off one line, an extra, ms. */
const SECTION = 0.04
const SOUNDING = 0.005
const OVER_AREA = 0.12
const EXTRA = 0.02
/** More soundings than this off one line make a bed that is looked at everywhere (`rules/site/area.ts`). */
const MANY = 150

/** Sections of a dock as asked for, whether they can be placed or not. */
const sectionsOf = ({ dock }: Design): number =>
  dock.plan?.length ?? (dock.sections ?? 1) + (dock.head?.sections ?? 0)

/** About how long placing takes, ms. */
export function placingTime(design: Design): number {
  const { site, dock } = design
  const sections = sectionsOf(design)
  const soundings = site.soundings.length
  const aside = soundings > MANY && site.soundings.some(({ offset }) => offset !== site.soundings[0]!.offset)
  const extras = Object.values(dock.extras).reduce((sum, n) => sum + n, dock.placed?.length ?? 0)
  return (
    sections * (SECTION + (aside ? OVER_AREA : 0)) + soundings * SOUNDING * (aside ? 2 : 1) + extras * EXTRA
  )
}

/** `took`: the last two placings, ms; one alone may have been held up by something else. */
export function tooLarge(design: Design, took: readonly number[]): boolean {
  const time = placingTime(design)
  return time > MOST || (time > SURELY_QUICK && took.length > 1 && Math.min(...took) > SLOW)
}
