/**
 * Whether a dock is too large to be placed within one frame of a drag: estimated from its size, and from how long the last placings took. A
 * dock that is too large is placed in a worker.
 */
import type { Design } from '../../rules/index.ts'

/** The most that placing may take in a pointer event, ms: under the 50 that a person notices, with room for drawing. */
const MOST = 25
/** If the last two placings both took longer than this, this machine is too slow, whatever the estimate, ms. */
const SLOW = 40
/** But a dock estimated at less than this was held up by something else: no machine is that much slower, ms. */
const SURELY_QUICK = 3
/** Measured on an idle machine, plus a third, ms: a section with its legs; a sounding; what a section costs more over a surveyed area; an extra. */
const SECTION = 0.04
const SOUNDING = 0.005
const OVER_AREA = 0.12
const EXTRA = 0.02
/** With more soundings than this, not all on one line, the bed is searched over its whole area (`rules/site/area.ts`). */
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
