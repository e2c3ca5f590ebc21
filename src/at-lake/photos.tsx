/** Pictures beside an entry: taken with the phone, shrunk, kept apart. */
import { useEffect, useState } from 'react'
import type { Photo } from '../../rules/record/index.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { useBegun, useSay } from './lake.ts'

interface PhotoPickProps {
  readonly photos: readonly Photo[]
  set(photos: readonly Photo[]): void
}

export function PhotoPick({ photos, set }: PhotoPickProps) {
  const { keeper } = useBegun()
  const { t } = useSay()
  const [state, setState] = useState<'idle' | 'taking' | 'failed'>('idle')
  const take = async (file: File): Promise<void> => {
    setState('taking')
    const mark = await keeper.addPhoto(file).catch(() => null)
    setState(mark ? 'idle' : 'failed')
    if (mark) set([...photos, mark])
  }
  return (
    <div className="text-field">
      <FilePick label={t('photo.take')} accept="image/*" take={take} />
      {state === 'taking' && <p role="status">{t('photo.taking')}</p>}
      {state === 'failed' && <p className="stop">{t('photo.failed')}</p>}
      <Photos photos={photos} />
    </div>
  )
}

export function Photos({ photos }: { readonly photos: readonly Photo[] }) {
  if (photos.length === 0) return null
  return (
    <span className="photos">
      {photos.map(({ hash }) => (
        <One key={hash} hash={hash} />
      ))}
    </span>
  )
}

function One({ hash }: { readonly hash: string }) {
  const { keeper } = useBegun()
  const { t } = useSay()
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => {
    let made: string | null = null
    let over = false
    void keeper.photo(hash).then((blob) => {
      if (!blob || over) return
      made = URL.createObjectURL(blob)
      setUrl(made)
    })
    return () => {
      over = true
      if (made !== null) URL.revokeObjectURL(made)
    }
  }, [keeper, hash])
  return url === null ? null : <img src={url} alt={t('photo.alt')} />
}
