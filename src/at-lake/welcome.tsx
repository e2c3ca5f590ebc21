/** No record is open: begin one for the dock that was planned, go on with one that is kept here, open one from a file or another phone, or begin with a dock of which there is no plan. */
import { useEffect, useState } from 'react'
import { beginRecord, type SeasonRecord } from '../../rules/record/index.ts'
import { newId } from '../platform/new-id.ts'
import type { Listed } from '../record-keeping/index.ts'
import type { Arrived } from '../record-sharing/index.ts'
import { useLeadline } from '../state/store.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { count, text } from '../words/index.ts'
import { Frame, Head } from './frame.tsx'
import { UnitsChoice } from './home.tsx'
import { useLake, useSay } from './lake.ts'
import { OldDock } from './old-dock.tsx'

const receive = chunk(() => import('./share/receive.tsx').then((m) => m.Receive))
const sharing = () => import('../record-sharing/index.ts')

export function Welcome() {
  const lake = useLake()
  const { t } = useSay()
  const [open, setOpen] = useState<'old' | 'codes' | null>(null)
  const [fault, setFault] = useState('')
  const shown = (taken: Awaited<ReturnType<typeof lake.records.take>>): string | null => {
    if (taken.ok) lake.show(taken.value)
    const why = taken.ok ? null : (taken.issues[0]?.message ?? '')
    setFault(why ?? '')
    return why
  }
  const take = async (record: SeasonRecord): Promise<void> => void shown(await lake.records.take(record))
  const arrive = async (arrived: Arrived): Promise<string | null> =>
    shown(await (await sharing()).keepArrived(lake.records, arrived))
  const openFile = async (file: File): Promise<void> => {
    const read = await (await sharing()).readRecordFile(file)
    if (read.ok) await arrive(read.value)
    else setFault(read.issues[0]?.message ?? '')
  }
  if (open === 'old') return <OldDock back={() => setOpen(null)} begun={take} />
  if (open === 'codes')
    return (
      <Frame title={t('share.receive')} back={() => setOpen(null)}>
        <Lazy chunk={receive} props={{ take: arrive }} />
      </Frame>
    )
  return (
    <Frame title={t('title')}>
      <Head of={t('welcome.title')} />
      <PlannedDock take={take} />
      <KeptDocks />
      <div className="list">
        <button type="button" onClick={() => setOpen('old')}>
          {t('welcome.old')}
          <small>{t('welcome.old-more')}</small>
        </button>
        <FilePick
          label={t('welcome.file')}
          accept=".json,.zip,application/json,application/zip"
          take={openFile}
        />
        <button type="button" onClick={() => setOpen('codes')}>
          {t('share.receive')}
        </button>
        {fault !== '' && (
          <p className="stop" role="alert">
            {t('welcome.fault', { fault: text(fault) })}
          </p>
        )}
        <UnitsChoice />
        {lake.leave && (
          <button type="button" className="quiet" onClick={lake.leave}>
            {t('home.plan')}
          </button>
        )}
      </div>
    </Frame>
  )
}

/** The dock that the page has, if anybody planned one. */
function PlannedDock({ take }: { readonly take: (record: SeasonRecord) => Promise<void> }) {
  const lake = useLake()
  const { t } = useSay()
  const project = useLeadline((s) => s.project)
  const planned = useLeadline((s) => s.starting === false && s.project.dock.sections.length > 0)
  const stale = useLeadline((s) => s.stale)
  const name = project.design.name || t('home.unnamed')
  const begin = (): Promise<void> =>
    take(beginRecord(project, { id: newId(), device: lake.records.device, at: new Date().toISOString() }))
  return (
    <>
      {planned && (
        <div className="list">
          <p>
            {t('welcome.dock', {
              name: text(name),
              sections: count(project.dock.sections.length),
              legs: count(project.dock.legs.length),
            })}
          </p>
          <button type="button" className="main" disabled={stale} onClick={() => void begin()}>
            {t('welcome.begin', { name: text(name) })}
            <small>{t('welcome.begin-more')}</small>
          </button>
        </div>
      )}
    </>
  )
}

/** Those that this browser has a record of. */
function KeptDocks() {
  const lake = useLake()
  const { t } = useSay()
  const kept = useKept()
  return (
    <>
      {kept.length > 0 && (
        <div className="list">
          <h3>{t('welcome.kept')}</h3>
          {kept.map(({ id, name: called, at }) => (
            <button
              type="button"
              key={id}
              onClick={() => void lake.records.open(id).then((keeper) => keeper && lake.show(keeper))}
            >
              {called || t('home.unnamed')}
              <small>{t('welcome.kept-at', { at: text(at.slice(0, 10)) })}</small>
            </button>
          ))}
        </div>
      )}
    </>
  )
}

/** Records of this browser, the newest first. */
function useKept(): readonly Listed[] {
  const { records } = useLake()
  const [kept, setKept] = useState<readonly Listed[]>([])
  useEffect(() => {
    let over = false
    void records.list().then((list) => !over && setKept(list))
    return () => {
      over = true
    }
  }, [records])
  return kept
}
