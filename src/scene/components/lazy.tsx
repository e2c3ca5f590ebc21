/** Parts of the scene that are seldom used, loaded as chunks of their own on first use. */
import { type ComponentType, useEffect, useState } from 'react'

interface Props<P> {
  readonly on: boolean
  readonly load: () => Promise<ComponentType<P>>
  readonly props: P
}

/** If loading fails nothing is shown; switching it off and on tries again. */
export function Lazy<P extends object>({ on, load, props }: Props<P>) {
  const [Part, setPart] = useState<ComponentType<P> | null>(null)
  const wanted = on && Part === null
  useEffect(() => {
    if (!wanted) return
    let gone = false
    load().then(
      (part) => gone || setPart(() => part),
      () => {},
    )
    return () => {
      gone = true
    }
  }, [wanted, load])
  return on && Part ? <Part {...props} /> : null
}
