/** No record is open: begin one for the dock that was planned, go on with one that is kept here, open one from a file or another phone, or begin with a dock of which there is no plan. */
import { useEffect, useState } from 'react'
import { beginRecord, type SeasonRecord } from '../../rules/record/index.ts'
import { newId } from '../platform/new-id.ts'
import type { Listed } from '../record-keeping/index.ts'
import type { Arrived } from '../record-sharing/index.ts'
import { useHost } from '../state/host.ts'
import { useLeadline } from '../state/store.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { count, text } from '../words/index.ts'
import { LineField } from './fields.tsx'
import { Frame, Head } from './frame.tsx'
import { UnitsChoice } from './home.tsx'
import { useLake, useSay } from './lake.ts'
import { OldDock } from './old-dock.tsx'
import { usePart } from './trail.ts'

const receive = chunk(() => import('./share/receive.tsx').then((m) => m.Receive))
const sharing = () => import('../record-sharing/index.ts')

/** Of an address that holds a whole dock. */
const LONGEST = 60_000
const PARTS = ['old', 'codes'] as const

export function Welcome() {
  const lake = useLake()
  const { t } = useSay()
  const [open, setOpen] = usePart(PARTS)
  const [fault, setFault] = useState('')
  const { openFile, openLink } = useOpening(setFault)
  const shown = (taken: Awaited<ReturnType<typeof lake.records.take>>): string | null => {
    if (taken.ok) lake.show(taken.value)
    const why = taken.ok ? null : t('share.too-large')
    setFault(why ?? '')
    return why
  }
  const take = async (record: SeasonRecord, how?: 'apart'): Promise<void> =>
    void shown(await lake.records.take(record, how))
  const arrive = async (arrived: Arrived): Promise<string | null> =>
    shown(await (await sharing()).keepArrived(lake.records, arrived))
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
      <Docks take={take} />
      <div className="list">
        {!lake.leave && <Example />}
        <button type="button" onClick={() => setOpen('old')}>
          {t('welcome.old')}
          <small>{t('welcome.old-more')}</small>
        </button>
        <FilePick
          label={t('welcome.file')}
          accept=".json,.zip,application/json,application/zip"
          take={(file) => openFile(file, arrive)}
        />
        {!lake.leave && <LinkField open={(address) => openLink(address, arrive)} />}
        <button type="button" onClick={() => setOpen('codes')}>
          {t('share.receive')}
        </button>
        {fault !== '' && (
          <p className="stop" role="alert">
            {fault}
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

type Take = (record: SeasonRecord, how?: 'apart') => Promise<void>

/** What came by file or link: a record, or a plan, which is then the dock in hand. */
function useOpening(told: (fault: string) => void) {
  const host = useHost()
  const { t } = useSay()
  type Arrive = (arrived: Arrived) => Promise<string | null>
  return {
    async openFile(file: File, arrive: Arrive): Promise<void> {
      const read = await (await sharing()).readRecordFile(file)
      told('')
      if (read.ok) await arrive(read.value)
      else if (/"leadline\/design"/.test(await file.slice(0, 2000).text())) await host.openFile(file)
      else told(t('welcome.fault'))
    },
    async openLink(address: string, arrive: Arrive): Promise<void> {
      const { isRecordLink, readRecordLink } = await sharing()
      const fragment = address.slice(Math.max(0, address.indexOf('#'))).trim()
      const read = isRecordLink(fragment) ? readRecordLink(fragment) : null
      told('')
      if (read?.ok) await arrive(read.value)
      else if (read || !(await host.openLink(address))) told(t('welcome.no-link'))
    },
  }
}

/** Where nothing is planned yet: to see what this is. */
function Example() {
  const host = useHost()
  const { t } = useSay()
  const none = useLeadline((s) => s.starting !== false || s.project.dock.sections.length === 0)
  return none ? (
    <button type="button" onClick={() => host.showExample()}>
      {t('welcome.example')}
      <small>{t('welcome.example-more')}</small>
    </button>
  ) : null
}

function LinkField({ open }: { readonly open: (address: string) => Promise<void> }) {
  const { t } = useSay()
  const [address, setAddress] = useState('')
  return (
    <details className="coming">
      <summary>{t('welcome.link')}</summary>
      <LineField label={t('welcome.paste')} value={address} longest={LONGEST} set={setAddress} />
      <button type="button" disabled={address.trim() === ''} onClick={() => void open(address)}>
        {t('welcome.open')}
      </button>
    </details>
  )
}

/** Those that this browser has a record of, and the one that the page has, if anybody planned one. */
function Docks({ take }: { readonly take: Take }) {
  const kept = useKept()
  const project = useLeadline((s) => s.project)
  const planned = useLeadline((s) => s.starting === false && s.project.dock.sections.length > 0)
  if (kept === null) return null
  const { name } = project.design
  const own = planned
    ? kept.find((one) => one.dock === project.dock.fingerprint.all || one.name === name)
    : undefined
  return (
    <>
      {planned && !own && <PlannedDock take={take} />}
      <KeptDocks
        kept={own ? [own, ...kept.filter((one) => one !== own)] : kept}
        main={own ?? (planned ? null : kept[0])}
      />
      {own && <Anew take={take} name={own.name} />}
    </>
  )
}

/** The record of the dock that the page has, new. */
function useBegin(take: Take): (how?: 'apart') => void {
  const { records } = useLake()
  const project = useLeadline((s) => s.project)
  return (how) =>
    void take(
      beginRecord(project, { id: newId(), device: records.device, at: new Date().toISOString() }),
      how,
    )
}

function PlannedDock({ take }: { readonly take: Take }) {
  const { t } = useSay()
  const { design, dock } = useLeadline((s) => s.project)
  const stale = useLeadline((s) => s.stale)
  const begin = useBegin(take)
  const name = text(design.name || t('home.unnamed'))
  return (
    <div className="list">
      <p>
        {t('welcome.dock', { name, sections: count(dock.sections.length), legs: count(dock.legs.length) })}
      </p>
      <button type="button" className="main" disabled={stale} onClick={() => begin()}>
        {t('welcome.begin', { name })}
        <small>{t('welcome.begin-more')}</small>
      </button>
    </div>
  )
}

/** A second record of a dock that has one: asked for first. */
function Anew({ take, name: called }: { readonly take: Take; readonly name: string }) {
  const { t } = useSay()
  const stale = useLeadline((s) => s.stale)
  const [asked, setAsked] = useState(false)
  const begin = useBegin(take)
  const name = text(called || t('home.unnamed'))
  if (!asked)
    return (
      <button type="button" className="quiet" onClick={() => setAsked(true)}>
        {t('welcome.anew', { name })}
      </button>
    )
  return (
    <div className="care">
      <p>{t('welcome.anew-sure', { name })}</p>
      <button type="button" disabled={stale} onClick={() => begin('apart')}>
        {t('welcome.anew-yes')}
      </button>
      <button type="button" onClick={() => setAsked(false)}>
        {t('welcome.anew-no')}
      </button>
    </div>
  )
}

interface KeptProps {
  readonly kept: readonly Listed[]
  /** The one that is gone on with. */
  readonly main: Listed | null | undefined
}

function KeptDocks({ kept, main }: KeptProps) {
  const lake = useLake()
  const { t } = useSay()
  return (
    <>
      {kept.length > 0 && (
        <div className="list">
          <h3>{t('welcome.kept')}</h3>
          {kept.map((one) => (
            <button
              type="button"
              key={one.id}
              className={one === main ? 'main' : ''}
              onClick={() => void lake.records.open(one.id).then((keeper) => keeper && lake.show(keeper))}
            >
              {one === main
                ? t('welcome.go-on', { name: text(one.name || t('home.unnamed')) })
                : one.name || t('home.unnamed')}
              <small>{t('welcome.kept-at', { at: text(one.at.slice(0, 10)) })}</small>
            </button>
          ))}
        </div>
      )}
    </>
  )
}

/** Records of this browser, the newest first; null: not known yet. */
function useKept(): readonly Listed[] | null {
  const { records } = useLake()
  const [kept, setKept] = useState<readonly Listed[] | null>(null)
  useEffect(() => {
    let over = false
    void records.list().then((list) => !over && setKept(list))
    return () => {
      over = true
    }
  }, [records])
  return kept
}
