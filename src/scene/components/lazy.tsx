/** Parts of the scene that few ask for come in chunks of their own, when they are first asked for. */
import { type ComponentType, useEffect, useState } from 'react'

interface Props<P> {
  readonly on: boolean
  readonly load: () => Promise<ComponentType<P>>
  readonly props: P
}

/** Where it does not come, nothing is shown; switched off and on again it is asked for once more. */
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
