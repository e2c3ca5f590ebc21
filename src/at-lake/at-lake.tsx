/**
 * The day at the lake, in the place of the page: one screen at a time, for wet hands and no signal. All that is told is written down at once
 * in the dock's season record; what is shown follows from that. Nothing here needs the 3D scene.
 */
import { useEffect, useMemo, useState } from 'react'
import { openRecords, type RecordKeeper, type Records } from '../record-keeping/index.ts'
import { keptUnits } from '../state/kept-units.ts'
import { sameDesign } from '../state/same-design.ts'
import { useLeadline, useLeadlineStore } from '../state/store.ts'
import { useSheet } from '../ui/use-sheet.ts'
import css from './at-lake.css?inline'
import { BegunDock } from './begun.tsx'
import { Kept } from './kept.tsx'
import { type Lake, LakeContext, useSay } from './lake.ts'
import { Pages } from './pages.tsx'
import { leaveTrail, standAt, stepTo, trailNow, useTrail } from './trail.ts'
import { lastShown, rememberShown } from './under-way.ts'
import { useAwake } from './use-awake.ts'
import { Welcome } from './welcome.tsx'

/** Records of all docks that this browser has stood at. */
const KEY = 'leadline'
/** So many records are looked through for the one of the dock in hand. */
const LOOKED = 40

export function AtLake({ stays }: { readonly stays: boolean }) {
  const store = useLeadlineStore()
  const box = useSheet<HTMLDivElement>(css)
  const { t } = useSay()
  const leave = useMemo(() => (stays ? null : () => store.getState().set({ atLake: false })), [stays, store])
  const { records, keeper, show } = useRecords(leave)
  useAwake()
  useEffect(() => {
    const units = keptUnits()
    if (units) store.getState().set({ units })
  }, [store])
  const lake = useMemo<Lake | null>(
    () =>
      records && {
        records,
        show,
        leave:
          leave &&
          (() => {
            leaveTrail()
            leave()
          }),
      },
    [records, show, leave],
  )
  return (
    <div className="lake-day" ref={box}>
      {!lake ? (
        <p className="hint">{t('opening')}</p>
      ) : (
        <LakeContext value={lake}>
          {keeper ? (
            <BegunDock key={keeper.id} keeper={keeper}>
              <Kept />
              <Pages />
            </BegunDock>
          ) : (
            <Welcome />
          )}
        </LakeContext>
      )}
    </div>
  )
}

/**
 * The record of the dock in hand, if there is one.
 *
 * @param leave to the page that it was opened from, where there is one: for the browser's Back
 */
function useRecords(leave: (() => void) | null) {
  const design = useLeadline((s) => s.design)
  const known = useLeadline((s) => s.starting === false)
  const [records, setRecords] = useState<Records | null>(null)
  const [keeper, setKeeper] = useState<RecordKeeper | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: for the dock in hand when the day begins; another one is chosen by hand.
  useEffect(() => {
    let over = false
    let opened: Records | null = null
    const begin = async (): Promise<void> => {
      const all = await openRecords(KEY)
      opened = all
      let own = await linked(all)
      const wanted = own ? null : lastShown()
      for (const { id } of own ? [] : (await all.list()).slice(0, LOOKED)) {
        const one = await all.open(id)
        if (!one) continue
        const of = one.record.design
        if (id === wanted || (known && of && sameDesign(of, design))) own = one
        if (id === wanted) break
      }
      if (over) return
      if (own && trailNow()?.dock == null) standAt({ dock: own.id })
      setKeeper(own)
      setRecords(all)
    }
    if (trailNow() === null) {
      if (leave) stepTo({ dock: null })
      else standAt({ dock: null, stays: true })
    }
    void begin()
    return () => {
      over = true
      void opened?.close()
    }
  }, [])
  const show = useMemo(
    () =>
      (to: RecordKeeper | null): void => {
        rememberShown(to?.id ?? null)
        stepTo({ dock: to?.id ?? null })
        setKeeper(to)
      },
    [],
  )
  useTrail((to) => {
    if (to === null) return leave?.()
    const { dock = null } = to
    if (dock === (keeper?.id ?? null)) return
    rememberShown(dock)
    if (dock === null) setKeeper(null)
    else void records?.open(dock).then((one) => one && setKeeper(one))
  })
  return { records, keeper, show }
}

/** A record that came in the page's own address; then it is out of it, for the address bar is no place to keep one. */
async function linked(records: Records): Promise<RecordKeeper | null> {
  if (!location.hash.startsWith('#leadline-record=')) return null
  const { keepArrived, readRecordLink } = await import('../record-sharing/index.ts')
  const read = readRecordLink(location.hash)
  const taken = read.ok ? await keepArrived(records, read.value) : null
  if (!taken?.ok) return null
  history.replaceState(history.state, '', location.pathname + location.search)
  rememberShown(taken.value.id)
  return taken.value
}
