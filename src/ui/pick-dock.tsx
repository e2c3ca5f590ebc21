/** Two more ways to say which dock is meant, to compare with or as one that is there already: a link that is pasted, and a dock put aside on this device. */
import { useId, useState } from 'react'
import type { Design, Issue } from '../../rules/index.ts'
import { readLink } from '../autosave/link.ts'
import type { Earlier } from '../state/host.ts'
import { useHost } from '../state/host.ts'
import { text } from '../words/index.ts'
import { useWords } from './use-words.ts'

interface LinkProps {
  readonly label: string
  readonly take: (design: Design) => void
  readonly bad: (issues: readonly Issue[]) => void
}

export function LinkPick({ label, take, bad }: LinkProps) {
  const id = useId()
  const read = (typed: string): void => {
    if (typed.trim() === '') return
    const parsed = readLink(typed.slice(Math.max(0, typed.indexOf('#'))).trim())
    if (parsed.ok) take(parsed.value)
    else bad(parsed.issues)
  }
  return (
    <div className="paper-options">
      <label htmlFor={id}>{label}</label>
      <input id={id} type="text" inputMode="url" onChange={(event) => read(event.currentTarget.value)} />
    </div>
  )
}

export function EarlierPick({ label, take }: Pick<LinkProps, 'label' | 'take'>) {
  const host = useHost()
  const { t, language } = useWords()
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
        {label}
      </button>
      {kept?.length === 0 && <p className="hint">{t('file.none-earlier')}</p>}
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
          {t('file.earlier-at', {
            name: text(design.name || t('name.none')),
            when: text(when(at)),
          })}
        </button>
      ))}
    </>
  )
}
