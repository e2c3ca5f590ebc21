/** What a design says of a place already, as it is written into the survey's form: figures in the unit of their field, choices by key. */
import type { Design } from '../design/index.ts'
import { EXACT, type Units } from '../words/figures.ts'
import type { PaperWord } from '../words/papers.ts'

export interface SurveyKnown {
  /** By field. */
  readonly written: ReadonlyMap<PaperWord, string>
  readonly ticked: ReadonlySet<PaperWord>
}

export const NOTHING_KNOWN: SurveyKnown = { written: new Map(), ticked: new Set() }

const BOTTOMS: Readonly<Record<string, PaperWord>> = {
  rock: 'survey-rock',
  gravel: 'survey-gravel',
  sand: 'survey-sand',
  clay: 'survey-clay',
  muck: 'survey-muck',
}

/**
 * Only of a design that is somebody's (it names a customer or an order): any other may be an example, and its figures another lake's. What
 * nobody has said yet (`site.assumed`) is left open, and so is all that is measured from the water: it stands otherwise on another day.
 */
export function surveyKnown({ job, site, dock }: Design, units: Units): SurveyKnown {
  if (!job?.customer && !job?.order) return NOTHING_KNOWN
  const metric = units === 'metric'
  const short = (meters: number): string => plain(metric ? meters * 100 : meters / EXACT.inch, metric ? 0 : 2)
  const long = (meters: number): string => plain(metric ? meters : meters / EXACT.foot, metric ? 2 : 1)
  const assumed = new Set<string>(site.assumed ?? [])
  const wind = assumed.has('wind') ? undefined : site.wind
  const boat = dock.boat ?? dock.boats?.[0]
  const written: (readonly [PaperWord, string | undefined])[] = [
    ['survey-customer', job.customer],
    ['survey-mark', site.benchmark?.name],
    ['survey-bearing', site.bearing === undefined ? undefined : plain(site.bearing, 0)],
    ['survey-wind', wind && plain(metric ? wind.speed : wind.speed / (EXACT.mile / 3600), 0)],
    ['survey-fetch', wind && plain(metric ? wind.fetch / 1000 : wind.fetch / EXACT.mile, 2)],
    ['survey-wake', site.wake === undefined ? undefined : short(site.wake)],
    ['survey-boat', boat && long(boat.length)],
    ['survey-boat-draught', boat && short(boat.draught)],
    ['survey-boat-height', boat && short(boat.height)],
  ]
  const bottom = assumed.has('bottom') || typeof site.bottom !== 'string' ? undefined : BOTTOMS[site.bottom]
  return {
    written: new Map(written.flatMap(([key, text]) => (text ? [[key, text] as const] : []))),
    ticked: new Set([
      ...(bottom ? [bottom] : []),
      ...(site.shore ? ([site.shore.kind === 'wall' ? 'survey-wall' : 'survey-bank'] as const) : []),
    ]),
  }
}

/** With a point, no more digits than `most` after it. */
const plain = (value: number, most: number): string => String(Number(value.toFixed(most)))
