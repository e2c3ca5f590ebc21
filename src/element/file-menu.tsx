/** Open, save, link, earlier docks. A native disclosure that closes on Escape and when focus moves elsewhere. */
import { useRef, useState } from 'react'
import type { Design } from '../../rules/index.ts'
import type { Earlier } from '../state/host.ts'
import { useHost } from '../state/host.ts'
import { useLeadline } from '../state/store.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'

export function FileMenu() {
  const host = useHost()
  const kept = useLeadline((s) => s.kept)
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  const menu = useRef<HTMLDetailsElement>(null)
  const summary = useRef<HTMLElement>(null)
  const [earlier, setEarlier] = useState<readonly Earlier[] | null>(null)
  const close = (): void => {
    menu.current?.removeAttribute('open')
    setEarlier(null)
  }
  const done = (act: () => void) => () => {
    act()
    close()
    summary.current?.focus()
  }
  return (
    <details
      className="menu"
      ref={menu}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !menu.current?.open) return
        close()
        summary.current?.focus()
      }}
      onBlur={(event) => {
        if (event.relatedTarget && !event.currentTarget.contains(event.relatedTarget)) close()
      }}
    >
      <summary ref={summary}>{t('file.menu')}</summary>
      <div className="sheet">
        {host.keeps && kept !== 'no' && (
          <p className="hint" data-kept={kept}>
            {t(kept === 'saved' ? 'file.saved' : 'file.saving')}
          </p>
        )}
        <FilePick
          label={t('file.open')}
          take={(file) => {
            close()
            return host.openFile(file)
          }}
        />
        <button type="button" onClick={() => set({ atLake: true })}>
          {t('lake')}
        </button>
        <button type="button" onClick={done(() => host.saveFile())}>
          {t('file.save')}
        </button>
        {host.links && (
          <button type="button" onClick={done(() => host.copyLink())}>
            {t('file.link')}
          </button>
        )}
        {host.keeps && (
          <button
            type="button"
            aria-expanded={earlier !== null}
            onClick={() => (earlier ? setEarlier(null) : host.earlier().then(setEarlier))}
          >
            {t('file.earlier')}
          </button>
        )}
        {earlier && (
          <EarlierDesigns designs={earlier} bringBack={(design) => done(() => host.bringBack(design))()} />
        )}
        <button type="button" onClick={done(() => host.startOver())}>
          {t('file.new')}
        </button>
      </div>
    </details>
  )
}

function EarlierDesigns({
  designs,
  bringBack,
}: {
  readonly designs: readonly Earlier[]
  readonly bringBack: (design: Design) => void
}) {
  const { t, language } = useWords()
  if (designs.length === 0) return <p className="hint">{t('file.none-earlier')}</p>
  return designs.map(({ design, at }) => (
    <button key={at + design.name} type="button" className="sub" onClick={() => bringBack(design)}>
      {t('file.earlier-at', {
        name: text(design.name || t('name.none')),
        when: text(new Date(at).toLocaleString(language.tag, { dateStyle: 'medium', timeStyle: 'short' })),
      })}
    </button>
  ))
}
