/** The record given to the other phone, put together with what that has, kept as a file, or as paper for the boathouse. */
import { useState } from 'react'
import { type Arrived, type Frames, recordCodes, recordFile, recordLink } from '../../record-sharing/index.ts'
import { count } from '../../words/index.ts'
import { Frame, Head } from '../frame.tsx'
import { useBegun, useSay } from '../lake.ts'
import { usePart } from '../trail.ts'
import { useSaveRecord } from '../use-save-record.ts'
import { Receive } from './receive.tsx'
import { Squares } from './square.tsx'
import { usePaper } from './use-paper.ts'

type Shown = 'squares' | 'receive'
const SHOWN = ['squares', 'receive'] as const

export function Share() {
  const { go } = useBegun()
  const { t } = useSay()
  const [part, setPart] = usePart<Shown>(SHOWN)
  const [told, setTold] = useState('')
  return (
    <Frame
      title={t('share.title')}
      back={part === null ? undefined : () => setPart(null)}
      home={() => go({ at: 'home' })}
    >
      {part === 'squares' ? (
        <Show />
      ) : part === 'receive' ? (
        <Get
          done={(words) => {
            setTold(words)
            setPart(null)
          }}
        />
      ) : (
        <Ways show={setPart} told={told} tell={setTold} />
      )}
    </Frame>
  )
}

function Show() {
  const { record } = useBegun()
  const { t } = useSay()
  const [frames] = useState<Frames | null>(() => recordCodes(record))
  return (
    <>
      <Head of={t('share.show')} />
      {frames ? <Squares frames={frames} /> : <p className="care">{t('share.too-long')}</p>}
    </>
  )
}

/** Merged into the record that is open: the same whichever phone does it first. */
function Get({ done }: { readonly done: (words: string) => void }) {
  const { keeper } = useBegun()
  const { t } = useSay()
  const take = async ({ record, photos }: Arrived): Promise<string | null> => {
    const merged = keeper.merge(record)
    if (!merged.ok) return t('share.too-large')
    for (const photo of photos) await keeper.takePhoto(photo)
    const { added, lacking } = merged.value
    const words = t('share.merged', { added: count(added) })
    done(lacking > 0 ? `${words} ${t('share.lacking', { lacking: count(lacking) })}` : words)
    return null
  }
  return <Receive take={take} />
}

interface WaysProps {
  readonly show: (what: Shown) => void
  readonly told: string
  readonly tell: (words: string) => void
}

function Ways({ show, told, tell }: WaysProps) {
  const { record, keeper, season, state, last, go } = useBegun()
  const { t } = useSay()
  const file = (): Promise<File> => recordFile(record, (hash) => keeper.photo(hash))
  const save = useSaveRecord()
  const copy = async (): Promise<void> => {
    const fragment = recordLink(record)
    if (fragment === null) return tell(t('share.too-long'))
    try {
      await navigator.clipboard.writeText(location.origin + location.pathname + location.search + fragment)
      tell(t('share.copied'))
    } catch {
      tell(t('share.not-copied'))
    }
  }
  const send = async (): Promise<void> => {
    const made = await file()
    await navigator.share({ files: [made], title: made.name }).catch(() => {})
  }
  const paper = usePaper(tell)
  const isSet = state.legs.some(({ set }) => set)
  const canSend = typeof navigator.canShare === 'function'
  return (
    <>
      <Head of={t('share.title')} />
      {told !== '' && (
        <p className="good" role="status">
          {told}
        </p>
      )}
      <h3>{t('share.other-phone')}</h3>
      <div className="list">
        {canSend && (
          <button type="button" className="main" onClick={() => void send()}>
            {t('share.send')}
          </button>
        )}
        <button type="button" className={canSend ? '' : 'main'} onClick={() => void copy()}>
          {t('share.link')}
        </button>
        <button type="button" onClick={() => show('squares')}>
          {t('share.show')}
          <small>{t('share.show-more')}</small>
        </button>
        <button type="button" onClick={() => show('receive')}>
          {t('share.receive')}
          <small>{t('share.receive-more')}</small>
        </button>
      </div>
      <h3>{t('share.keep')}</h3>
      <div className="list">
        <button type="button" onClick={save}>
          {t('share.save')}
          <small>{t('share.save-more')}</small>
        </button>
        <button type="button" onClick={() => void paper('as-built')}>
          {t('share.print')}
          <small>{t('share.print-more')}</small>
        </button>
        <button type="button" onClick={() => void paper('take-out')}>
          {t('share.out-paper')}
        </button>
        {(isSet || last) && (
          <button
            type="button"
            onClick={() => go({ at: 'next', of: isSet ? String(Number(season) + 1) : season })}
          >
            {t('share.next-paper')}
            <small>{t('share.next-more')}</small>
          </button>
        )}
      </div>
    </>
  )
}
