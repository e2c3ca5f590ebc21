/** Parts of the screen that nobody needs at first sight come in chunks of their own, asked for when they are first shown. */
import { type ComponentType, useEffect, useState } from 'react'
import { whyMissing } from '../platform/why-missing.ts'
import { useHost } from '../state/host.ts'
import { useWords } from './use-words.ts'

export interface Chunk<P> {
  readonly load: () => Promise<ComponentType<P>>
  got: ComponentType<P> | null
}

export const chunk = <P extends object>(load: () => Promise<ComponentType<P>>): Chunk<P> => ({
  load,
  got: null,
})

/** `quiet`: nothing stands there while it is loaded, for a part that mostly comes by itself. */
export function Lazy<P extends object>({
  chunk: from,
  props,
  quiet = false,
}: {
  readonly chunk: Chunk<P>
  readonly props: P
  /** Nothing stands in for it while it has not come. */
  readonly quiet?: boolean
}) {
  const [Part, setPart] = useState<ComponentType<P> | null>(() => from.got)
  const [missing, setMissing] = useState<'gone' | 'offline' | null>(null)
  const [tries, setTries] = useState(0)
  const { t } = useWords()
  // biome-ignore lint/correctness/useExhaustiveDependencies: another try asks again.
  useEffect(() => {
    if (from.got) return
    let over = false
    from.load().then(
      (part) => {
        from.got = part
        if (!over) setPart(() => part)
      },
      async () => {
        const why = await whyMissing()
        if (!over) setMissing(why)
      },
    )
    return () => {
      over = true
    }
  }, [from, tries])
  if (Part) return <Part {...props} />
  if (missing === null) return quiet ? null : <p className="hint">{t('loading')}</p>
  const again = (): void => {
    setMissing(null)
    setTries(tries + 1)
  }
  return <Missing why={missing} again={again} />
}

/** Shown in place of a part that did not load: why, and what to do about it. */
export function Missing({ why, again }: { readonly why: 'gone' | 'offline'; readonly again: () => void }) {
  const host = useHost()
  const { t } = useWords()
  return (
    <div className="missing" role="alert">
      <p>{t(why === 'gone' ? 'part.gone' : 'part.offline')}</p>
      {why === 'gone' ? (
        <button type="button" onClick={() => host.reload()}>
          {t('part.reload')}
        </button>
      ) : (
        <button type="button" onClick={again}>
          {t('again')}
        </button>
      )}
    </div>
  )
}
