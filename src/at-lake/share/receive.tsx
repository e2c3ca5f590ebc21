/** The other phone's record, read off its screen by this one's camera, or out of a file: put together with what is here, nothing lost. */
import { useEffect, useRef, useState } from 'react'
import {
  type Arrived,
  codeReader,
  codesInPicture,
  readRecordFile,
  watchCamera,
} from '../../record-sharing/index.ts'
import { FilePick } from '../../ui/file-picker.tsx'
import { count } from '../../words/index.ts'
import { Head } from '../frame.tsx'
import { useSay } from '../lake.ts'

interface ReceiveProps {
  /** @returns what was wrong with it; null: it is here. */
  readonly take: (arrived: Arrived) => Promise<string | null>
}

export function Receive({ take }: ReceiveProps) {
  const { t } = useSay()
  const [watching, setWatching] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  const arrive = async (read: Awaited<ReturnType<typeof readRecordFile>>): Promise<void> => {
    setWatching(false)
    setFault(read.ok ? await take(read.value) : t('welcome.fault'))
  }
  // Squares of pictures that came one after the other are put together.
  const [read] = useState(() => codeReader())
  const [got, setGot] = useState<{ readonly have: number; readonly need: number } | null>(null)
  const pictures = async (files: readonly File[]): Promise<void> => {
    setFault(null)
    let none = true
    for (const file of files)
      for (const code of await codesInPicture(file)) {
        const found = read(code)
        if (found.state === 'done') return arrive(found.arrived)
        if (found.state !== 'more') continue
        none = false
        setGot(found)
      }
    if (none) setFault(t('share.no-square'))
  }
  return (
    <>
      <Head of={t('share.receive')} />
      {watching ? (
        <Watch arrived={arrive} none={() => setWatching(false)} />
      ) : (
        <div className="list">
          <button type="button" className="main" onClick={() => setWatching(true)}>
            {t('share.camera')}
          </button>
          <PicturesPick label={t('share.picture')} take={pictures} />
          {got && (
            <p className="good" role="status">
              {t('share.got', { n: count(got.have), all: count(got.need) })} {t('share.more-pictures')}
            </p>
          )}
          <FilePick
            label={t('share.open')}
            accept=".json,.zip,application/json,application/zip"
            take={async (file) => arrive(await readRecordFile(file))}
          />
        </div>
      )}
      {fault !== null && (
        <p className="stop" role="alert">
          {fault}
        </p>
      )}
    </>
  )
}

interface PicturesProps {
  readonly label: string
  readonly take: (files: readonly File[]) => Promise<void>
}

/** Several at once. */
function PicturesPick({ label, take }: PicturesProps) {
  const field = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" onClick={() => field.current?.click()}>
        {label}
      </button>
      <input
        ref={field}
        className="unseen"
        type="file"
        multiple
        tabIndex={-1}
        aria-label={label}
        accept="image/*"
        onChange={(event) => {
          const input = event.currentTarget
          const files = [...(input.files ?? [])]
          if (files.length > 0) take(files).finally(() => (input.value = ''))
        }}
      />
    </>
  )
}

interface WatchProps {
  readonly arrived: (read: Awaited<ReturnType<typeof readRecordFile>>) => Promise<void>
  readonly none: () => void
}

function Watch({ arrived, none }: WatchProps) {
  const { t } = useSay()
  const video = useRef<HTMLVideoElement>(null)
  const [got, setGot] = useState<{ readonly have: number; readonly need: number } | null>(null)
  const [why, setWhy] = useState<'denied' | 'none' | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: one camera as long as this is shown.
  useEffect(() => {
    const element = video.current
    if (!element) return
    const read = codeReader()
    let over = false
    let stop = (): void => {}
    const told = (code: string): void => {
      const found = read(code)
      if (over) return
      if (found.state === 'more') setGot(found)
      if (found.state === 'done') {
        over = true
        stop()
        void arrived(found.arrived)
      }
    }
    void watchCamera(element, told).then((camera) => {
      if (!camera.ok) setWhy(camera.why)
      else if (over) camera.stop()
      else stop = camera.stop
    })
    return () => {
      over = true
      stop()
    }
  }, [])
  return (
    <>
      {why === null ? (
        <>
          {/* biome-ignore lint/a11y/useMediaCaption: the camera's own picture has no sound. */}
          <video ref={video} aria-label={t('share.seen')} />
          <p role="status">
            {got ? t('share.got', { n: count(got.have), all: count(got.need) }) : t('share.hold')}
          </p>
        </>
      ) : (
        <p className="care" role="alert">
          {t(`share.camera-${why}`)}
        </p>
      )}
      <button type="button" onClick={none}>
        {t('share.stop')}
      </button>
    </>
  )
}
