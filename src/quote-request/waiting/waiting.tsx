/** Stands on the page while a request waits for a connection; what shows and sends them comes only then. */
import { useEffect, useMemo, useState } from 'react'
import { chunk, Lazy } from '../../ui/lazy.tsx'
import { CHANGED, waitingFor } from './queue.ts'

const list = chunk(() => import('./waiting-list.tsx').then((m) => m.WaitingList))

export function Waits({ address }: { readonly address: string }) {
  const queue = useMemo(() => waitingFor(address), [address])
  // On an earlier visit, or a moment ago: that was tried just now.
  const [before] = useState(() => queue.list().length > 0)
  const [any, setAny] = useState(before)
  useEffect(() => {
    // Once there it stays, to tell what became of them.
    const look = (): void => setAny((was) => was || queue.list().length > 0)
    const stop = new AbortController()
    for (const type of [CHANGED, 'storage']) addEventListener(type, look, { signal: stop.signal })
    return () => stop.abort()
  }, [queue])
  return any ? <Lazy chunk={list} quiet props={{ address, queue, atOnce: before }} /> : null
}
