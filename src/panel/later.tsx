/** Parts of the screen that nobody needs at first sight come in chunks of their own, asked for when they are first shown. */
import { type ComponentType, useEffect, useState } from 'react'
import { useWords } from '../words/use-words.ts'

export interface Chunk<P> {
  readonly load: () => Promise<ComponentType<P>>
  got: ComponentType<P> | null
}

export const chunk = <P extends object>(load: () => Promise<ComponentType<P>>): Chunk<P> => ({
  load,
  got: null,
})

export function Later<P extends object>({
  chunk: from,
  props,
}: {
  readonly chunk: Chunk<P>
  readonly props: P
}) {
  const [Part, setPart] = useState<ComponentType<P> | null>(() => from.got)
  const [failed, setFailed] = useState(false)
  const { t } = useWords()
  useEffect(() => {
    if (from.got) return
    let gone = false
    from.load().then(
      (part) => {
        from.got = part
        if (!gone) setPart(() => part)
      },
      () => gone || setFailed(true),
    )
    return () => {
      gone = true
    }
  }, [from])
  return Part ? <Part {...props} /> : <p className="hint">{t(failed ? 'loading.failed' : 'loading')}</p>
}
