/** What the code on a label asks for (`leadline-at` of the page's address): a part is picked; of a package it is told what is in it. */
import { useEffect, useRef, useState } from 'react'
import { packageLabels, packageNumber } from '../../rules/papers/labels.ts'
import { useHost } from '../state/host.ts'
import { useDock, useLeadline, usePlaced } from '../state/store.ts'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { count, text } from '../words/index.ts'

export function Scanned({ at }: { readonly at: string }) {
  const host = useHost()
  const dock = usePlaced()
  const set = useLeadline((s) => s.set)
  const { t } = useWords(DOCUMENTS)
  const [closed, setClosed] = useState(false)
  const n = packageNumber(at)
  const part = [...dock.sections, ...dock.legs].some(({ id }) => id === at)
  // What was scanned is shown once: whatever is picked after that stays.
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above.
  useEffect(() => {
    if (host.links && part) set({ selection: at })
  }, [])
  const box = useRef<HTMLElement>(null)
  // It is what the page was opened for.
  useEffect(() => box.current?.scrollIntoView({ block: 'center' }), [])
  if (closed || !host.links || part) return null
  return (
    <section className="scanned" ref={box}>
      {n === null ? <p className="hint">{t('scanned-none', { id: text(at) })}</p> : <Package n={n} at={at} />}
      <button type="button" onClick={() => setClosed(true)}>
        {t('scanned-close')}
      </button>
    </section>
  )
}

function Package({ n, at }: { readonly n: number; readonly at: string }) {
  const dock = useDock()
  const catalog = useLeadline((s) => s.catalog)
  const { t, mass } = useWords(DOCUMENTS)
  const named = useNames()
  const labels = packageLabels({ dock, catalog })
  const one = labels[n - 1]
  if (!one) return <p className="hint">{t('scanned-none', { id: text(at) })}</p>
  const items = [...one.bags.flatMap((bag) => bag.items), ...one.items]
  return (
    <>
      <h3>
        {t('scanned-package', { n: count(n), of: count(one.of) })} · {mass(one.mass)}
      </h3>
      <ul>
        {items.map(({ kind, code, name, quantity, spares }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same part may be in two bags, and nothing moves.
          <li key={`${kind} ${code} ${i}`}>
            {quantity}
            {spares > 0 && ` + ${spares}`} × {named({ code, name })}
          </li>
        ))}
      </ul>
    </>
  )
}
