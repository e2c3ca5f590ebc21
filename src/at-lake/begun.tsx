/** A dock of which there is a record: what holds now, what follows for today, and the screen that is open. */
import { type ReactNode, useMemo, useState, useSyncExternalStore } from 'react'
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
import type { RecordKeeper } from '../record-keeping/index.ts'
import { sameDesign } from '../state/same-design.ts'
import { useLeadline } from '../state/store.ts'
import { type Begun, BegunContext, type Page } from './lake.ts'

const HOME: Page = { at: 'home' }

/** Kept drafts are read back as they were stored, by whichever version of the page. */
const pageFrom = (kept: unknown): Page => {
  const { at, stage, from } = (kept ?? {}) as { at?: unknown; stage?: unknown; from?: unknown }
  if (at === 'set-up' || at === 'out') return typeof stage === 'number' ? { at, stage } : HOME
  if (at === 'check' || at === 'legs') return { at, ...(typeof from === 'number' ? { from } : {}) }
  const pages = ['wear', 'shop', 'share', 'heights', 'call', 'next'] as const
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
  const [page, setPage] = useState(() => pageFrom(keeper.draft('page')))
  const [said, setSaid] = useState(() => String(keeper.draft('season') ?? ''))
  const [atHand, setLegs] = useState(() => atHandFrom(keeper.draft('legs')))
  const season = /^\d{4}$/.test(said) ? said : seasonFor(record, new Date().toISOString())
  const state = useMemo(() => seasonState(record, season), [record, season])
  const last = useMemo(() => before(record, season), [record, season])
  const project = useProjectOf(record)
  const dayIn = useMemo<DayAt | null>(() => project && dayAt(project), [project])
  const day = useMemo(
    () => dayIn?.(today(record, state, last, atHand)) ?? null,
    [dayIn, record, state, last, atHand],
  )
  const begun: Begun = {
    ...{ keeper, record, season, state, last, project, day, page, atHand },
    setAtHand(legs) {
      keeper.keepDraft('legs', legs)
      setLegs(legs)
    },
    add: (entry) => void keeper.add(entry, season),
    go(to) {
      keeper.keepDraft('page', to)
      setPage(to)
    },
    setSeason(to) {
      keeper.keepDraft('season', to)
      setSaid(to)
    },
  }
  return <BegunContext value={begun}>{children}</BegunContext>
}

/** The dock as it was planned when the record was begun, whatever has been planned since. */
function useProjectOf({ design }: SeasonRecord): Project | null {
  const shown = useLeadline((s) => s.design)
  const stale = useLeadline((s) => s.stale)
  const catalog = useLeadline((s) => s.catalog)
  const inHand = useLeadline((s) => s.project)
  // With all that is found of it by now.
  const dock = useLeadline((s) => s.dock)
  return useMemo(() => {
    if (!design) return null
    if (!stale && sameDesign(design, shown)) return { ...inHand, dock }
    return projectOf(design, catalog, publishKit(deriveKit(design, catalog)))
  }, [design, shown, stale, catalog, inHand, dock])
}

/** The season before this one in which legs were set. */
function before(record: SeasonRecord, season: string): SeasonState | null {
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
    measured,
    set,
    ...(legsAtHand ? { legsAtHand } : {}),
  }
}
