/** All that a request carries, to be read before it is sent: the very data, but for the picture, which is in view. */
import { useState } from 'react'
import { useHost } from '../state/host.ts'
import { useLeadlineStore } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { useWords } from '../ui/use-words.ts'
import { REQUEST } from '../words/request.ts'
import type { Typed } from './contact-fields.tsx'
import { contentOf } from './content.ts'

export function WhatIsSent({ typed }: { readonly typed: Typed }) {
  const { t } = useWords(REQUEST)
  const host = useHost()
  const store = useLeadlineStore()
  const { picture } = useHandles()
  const [link, setLink] = useState<string | null>(null)
  const [open, setOpen] = useState(false)
  const toggled = async (now: boolean): Promise<void> => {
    setOpen(now)
    if (now) setLink(await host.linkTo())
  }
  return (
    <details onToggle={(event) => void toggled(event.currentTarget.open)}>
      <summary>{t('request.what-exactly')}</summary>
      {open && (
        <pre className="exactly" dir="ltr">
          {JSON.stringify(contentOf(store.getState(), typed, { link, picture: null }), null, 2)}
        </pre>
      )}
      {open && typed.picture && picture.current && <p className="hint">{t('request.what-picture')}</p>}
    </details>
  )
}
