/** Two more ways to say what to compare with: a link that is pasted, and a dock put aside on this device. */
import { useId, useState } from 'react'
import type { Design, Issue } from '../../rules/index.ts'
import { readLink } from '../autosave/link.ts'
import type { Earlier } from '../state/host.ts'
import { useHost } from '../state/host.ts'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { text } from '../words/index.ts'

interface LinkProps {
  readonly take: (design: Design) => void
  readonly bad: (issues: readonly Issue[]) => void
}

export function LinkPick({ take, bad }: LinkProps) {
  const { t } = useWords(DOCUMENTS)
  const id = useId()
  const read = (typed: string): void => {
    if (typed.trim() === '') return
    const parsed = readLink(typed.slice(Math.max(0, typed.indexOf('#'))).trim())
    if (parsed.ok) take(parsed.value)
    else bad(parsed.issues)
  }
  return (
    <div className="paper-options">
      <label htmlFor={id}>{t('since-link')}</label>
      <input id={id} type="text" inputMode="url" onChange={(event) => read(event.currentTarget.value)} />
    </div>
  )
}

export function EarlierPick({ take }: Pick<LinkProps, 'take'>) {
  const host = useHost()
  const { t, language } = useWords(DOCUMENTS)
  const { t: screen } = useWords()
  const [kept, setKept] = useState<readonly Earlier[] | null>(null)
  if (!host.keeps) return null
  const when = (at: Earlier['at']): string =>
    new Date(at).toLocaleString(language.tag, { dateStyle: 'medium', timeStyle: 'short' })
  return (
    <>
      <button
        type="button"
        aria-expanded={kept !== null}
        onClick={() => (kept ? setKept(null) : host.earlier().then(setKept))}
      >
        {t('since-earlier')}
      </button>
      {kept?.length === 0 && <p className="hint">{screen('file.none-earlier')}</p>}
      {kept?.map(({ design, at }) => (
        <button
          key={at + design.name}
          type="button"
          className="sub"
          onClick={() => {
            setKept(null)
            take(design)
          }}
        >
          {screen('file.earlier-at', {
            name: text(design.name || screen('name.none')),
            when: text(when(at)),
          })}
        </button>
      ))}
    </>
  )
}
