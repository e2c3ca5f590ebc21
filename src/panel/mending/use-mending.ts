/** What the remedies of the dock in hand do; asked when all is found, and dropped with the next change. */
import { useEffect, useState } from 'react'
import type { Dock, Finding } from '../../../rules/index.ts'
import { useDock, useLeadline } from '../../state/store.ts'
import type { Mending } from './mending.ts'

export function useMending() {
  const dock = useDock()
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const whole = useLeadline((s) => s.status === 'deep' && !s.stale)
  const [found, setFound] = useState<(Mending & { readonly of: Dock }) | null>(null)
  useEffect(() => {
    const { findings } = dock
    if (!whole || !findings.some(({ remedy }) => remedy)) return
    let over = false
    let end: (() => void) | undefined
    // A chunk that does not come takes nothing away but the prices on the buttons.
    import('./ask.ts').then(
      ({ askMending }) => {
        if (!over) end = askMending({ design, catalog, findings }, (told) => setFound({ ...told, of: dock }))
      },
      () => {},
    )
    return () => {
      over = true
      end?.()
    }
  }, [dock, design, catalog, whole])
  const now = found?.of === dock ? found : null
  return {
    all: now?.all ?? null,
    costOf: (finding: Finding): number | null => now?.costs[dock.findings.indexOf(finding)] ?? null,
  }
}
