/** A dock of which there is a record: what holds now, what follows for today, and the screen that is open. */
import { type ReactNode, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react'
import {
  type DayAt,
  type DayState,
  dayAt,
  type LegsAtHand,
  type Measured,
} from '../../rules/at-lake/index.ts'
import { deriveKit, type Project, projectOf, publishKit } from '../../rules/index.ts'
import {
  liveEntries,
  type SeasonRecord,
  type SeasonState,
  seasonFor,
  seasonState,
  seasonsOf,
} from '../../rules/record/index.ts'
import { projectIn } from '../../rules/words/part-names.ts'
import type { RecordKeeper } from '../record-keeping/index.ts'
import { sameDesign } from '../state/same-design.ts'
import { useLeadline } from '../state/store.ts'
import { type Begun, BegunContext, type Page } from './lake.ts'
import { keptPage, keptSeason, pageToKeep, seasonToKeep } from './season-kept.ts'
import { underWayOf } from './setting-up.ts'
import { standAt, stepTo, trailNow, useTrail } from './trail.ts'
import { keepUnderWay, takeGoOn } from './under-way.ts'

const HOME: Page = { at: 'home' }

/** Kept drafts are read back as they were stored, by whichever version of the page. */
const pageFrom = (kept: unknown): Page => {
  const { at, stage, from, of } = (kept ?? {}) as { [K in 'at' | 'stage' | 'from' | 'of']?: unknown }
  const back = typeof from === 'number' ? { from } : {}
  if (at === 'set-up' || at === 'out') return typeof stage === 'number' ? { at, stage, ...back } : HOME
  if (at === 'check' || at === 'legs') return { at, ...back }
  if (at === 'next') return typeof of === 'string' && /^\d{4}$/.test(of) ? { at, of } : { at }
  const pages = ['wear', 'shop', 'share', 'heights', 'call'] as const
  const known = pages.find((one) => one === at)
  return known ? { at: known } : HOME
}

const atHandFrom = (kept: unknown): readonly LegsAtHand[] | null =>
  Array.isArray(kept) && kept.every(({ code, count }) => typeof code === 'string' && Number.isInteger(count))
    ? kept
    : null

export function BegunDock({
  keeper,
  children,
}: {
  readonly keeper: RecordKeeper
  readonly children: ReactNode
}) {
  const record = useSyncExternalStore(keeper.subscribe, () => keeper.record)
  const [atHand, setLegs] = useState(() => atHandFrom(keeper.draft('legs')))
  const { season, setSeason, page, go } = usePlace(keeper, record)
  const state = useMemo(() => seasonState(record, season), [record, season])
  const last = useMemo(() => before(record, season), [record, season])
  const project = useProjectOf(record)
  const dayIn = useMemo<DayAt | null>(() => project && dayAt(project), [project])
  const day = useMemo(
    () => dayIn?.(today(record, state, last, atHand)) ?? null,
    [dayIn, record, state, last, atHand],
  )
  const goesOn = useGoOn(keeper.id, record.name, state)
  const begun: Begun = {
    ...{ keeper, record, season, state, last, project, day, page, atHand, go, setSeason },
    setAtHand(legs) {
      keeper.keepDraft('legs', legs)
      setLegs(legs)
    },
    add: (entry) => void keeper.add(entry, season),
    goesOn,
  }
  return <BegunContext value={begun}>{children}</BegunContext>
}

/** Tells the page that plans that it is being set up here. @returns whether somebody asked there to go on; once */
function useGoOn(id: string, name: string, state: SeasonState): () => boolean {
  const asked = useRef<boolean | null>(null)
  asked.current ??= takeGoOn(id)
  useEffect(() => keepUnderWay(id, underWayOf(state, { id, name })), [id, name, state])
  return () => {
    const goes = asked.current === true
    asked.current = false
    return goes
  }
}

/** The season and the screen in hand: there again when the page is loaded anew, but for a screen of another season. */
function usePlace(
  keeper: RecordKeeper,
  record: SeasonRecord,
): Pick<Begun, 'season' | 'setSeason' | 'page' | 'go'> {
  const [said, setSaid] = useState(() => keptSeason(keeper.draft('season'), new Date()))
  const season = said === '' ? seasonFor(record, new Date().toISOString()) : said
  const [at, setAt] = useState(() => ({ page: pageFrom(keptPage(keeper.draft('page'), season)), of: season }))
  const page = at.of === season ? at.page : HOME
  const now = useRef(season)
  now.current = season
  const shown = (to: Page): void => {
    keeper.keepDraft('page', pageToKeep(to, now.current))
    setAt({ page: to, of: now.current })
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the dock is opened.
  useEffect(() => {
    const trail = trailNow()
    if (trail?.dock === keeper.id && sameDesign(trail.page, page)) return
    standAt({ dock: keeper.id, page: HOME })
    if (page.at !== 'home') stepTo({ dock: keeper.id, page })
  }, [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was half entered in another season is of that one.
  useEffect(() => {
    const kept = keeper.draft('page')
    if (kept === null || keptPage(kept, season) !== null) return
    const atLegs = record.legs.flatMap(({ id }) => [`leg/${id}`, `set/${id}`])
    for (const place of ['check', 'level', ...atLegs]) keeper.keepDraft(place, null)
    shown(HOME)
  }, [season])
  useTrail((to) => {
    if (to?.dock === keeper.id) shown(pageFrom(to.page))
  })
  return {
    ...{ season, page },
    go(to) {
      shown(to)
      stepTo({ dock: keeper.id, page: to })
    },
    setSeason(to) {
      now.current = to
      keeper.keepDraft('season', seasonToKeep(to, new Date()))
      shown(page)
      setSaid(to)
    },
  }
}

/** The dock as it was planned when the record was begun, whatever has been planned since, its parts by their names in the reader's language. */
function useProjectOf({ design }: SeasonRecord): Project | null {
  const shown = useLeadline((s) => s.design)
  const stale = useLeadline((s) => s.stale)
  const catalog = useLeadline((s) => s.catalog)
  const inHand = useLeadline((s) => s.project)
  // With all that is found of it by now.
  const dock = useLeadline((s) => s.dock)
  const language = useLeadline((s) => s.language)
  const project = useMemo(() => {
    if (!design) return null
    if (!stale && sameDesign(design, shown)) return { ...inHand, dock }
    return projectOf(design, catalog, publishKit(deriveKit(design, catalog)))
  }, [design, shown, stale, catalog, inHand, dock])
  return useMemo(() => project && projectIn(project, language), [project, language])
}

/** The season before this one in which legs were set. */
export function before(record: SeasonRecord, season: string): SeasonState | null {
  const seasons = seasonsOf(record).filter((one) => one < season)
  const earlier = seasons.findLast((one) => seasonState(record, one).legs.some(({ set }) => set)) ?? ''
  return earlier === '' ? null : seasonState(record, earlier)
}

/** Two soundings of one place agree within that, m: it was measured again and found the same. */
const SAME = 0.03

/** What is known this morning: what was measured, and before that how the legs stood last. */
function today(
  record: SeasonRecord,
  state: SeasonState,
  last: SeasonState | null,
  legsAtHand: readonly LegsAtHand[] | null,
): DayState {
  const level = state.today?.level ?? 0
  const soundings = liveEntries(record.entries).filter(
    (entry) => entry.kind === 'sounding' && entry.season === state.season,
  )
  const again = (leg: string, depth: number): boolean =>
    soundings.filter(
      (one) => one.kind === 'sounding' && one.leg === leg && Math.abs(one.depth - depth) <= SAME,
    ).length > 1
  const measured = state.legs.flatMap(({ leg, sounding, bed, asPlanned }): Measured[] => {
    if (sounding) {
      const depth = bed === null ? sounding.depth : level - bed
      return [{ leg: leg.id, depth, how: sounding.how, again: again(leg.id, sounding.depth) }]
    }
    if (asPlanned && leg.planned) return [{ leg: leg.id, depth: level - leg.planned.bed, how: 'as-planned' }]
    const stood = last?.legs.find((one) => one.leg.id === leg.id)
    const was = stood?.foot ?? stood?.bed ?? null
    return was === null ? [] : [{ leg: leg.id, depth: level - was, how: 'measured', again: true }]
  })
  const set = state.legs.flatMap(({ leg, set: own }) => {
    const stands = own ?? last?.legs.find((one) => one.leg.id === leg.id)?.set
    return stands ? [{ leg: leg.id, stock: stands.stock, height: stands.height }] : []
  })
  return {
    level,
    from: state.level?.from ?? 'survey',
    ...(state.level?.sd === undefined ? {} : { levelError: state.level.sd }),
    keep: state.today?.keep ?? 'planned',
    ...(state.level?.deck === undefined ? {} : { deck: state.level.deck }),
    measured,
    set,
    ...(legsAtHand ? { legsAtHand } : {}),
  }
}
