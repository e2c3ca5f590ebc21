/** Ask for a quote: a name, a way to answer, and what goes with it told beforehand. The cautions stand beside it. */
import { useEffect, useId, useRef, useState } from 'react'
import { wordsIn } from '../../rules/index.ts'
import { useHost } from '../state/host.ts'
import { useDock } from '../state/store.ts'
import { text } from '../words/index.ts'
import { useMoreWords } from '../words/use-more-words.ts'
import { useWhat } from './what.tsx'

type State = 'asked' | 'sending' | 'sent' | 'handed' | { readonly failed: string }

export function Request({ close }: { readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const host = useHost()
  const dock = useDock()
  const { more, lang, t, money } = useMoreWords()
  const what = useWhat()
  const id = useId()
  const [name, setName] = useState('')
  const [contact, setContact] = useState('')
  const [note, setNote] = useState('')
  const [checked, setChecked] = useState(false)
  const [state, setState] = useState<State>('asked')
  useEffect(() => {
    const element = dialog.current
    element?.showModal()
    return () => element?.close()
  }, [])

  const missing = { name: name.trim() === '', contact: contact.trim() === '' }
  const send = async (): Promise<void> => {
    setChecked(true)
    if (missing.name || missing.contact) {
      dialog.current
        ?.querySelector<HTMLInputElement>(missing.name ? `[name="name"]` : `[name="contact"]`)
        ?.focus()
      return
    }
    setState('sending')
    try {
      setState(await host.request({ name: name.trim(), contact: contact.trim(), note: note.trim() }))
    } catch (error) {
      setState({ failed: error instanceof Error ? error.message : String(error) })
    }
  }
  const field = (key: 'name' | 'contact', value: string, set: (to: string) => void, complete: string) => {
    const wrong = checked && missing[key]
    return (
      <div className="field">
        <label htmlFor={`${id}-${key}`}>{more(`request.${key}`)}</label>
        <input
          id={`${id}-${key}`}
          name={key}
          type="text"
          autoComplete={complete}
          required
          maxLength={200}
          value={value}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-${key}-fault` : undefined}
          onChange={(event) => set(event.currentTarget.value)}
        />
        {wrong && (
          <p className="fault" id={`${id}-${key}-fault`}>
            {more(`request.${key}-missing`)}
          </p>
        )}
      </div>
    )
  }
  const over = state === 'sent' || state === 'handed'
  const code = text(dock.fingerprint.all.slice(0, 12))
  return (
    <dialog ref={dialog} className="request" aria-labelledby={`${id}-title`} onClose={close}>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          send()
        }}
      >
        <h2 id={`${id}-title`}>{more('request.title')}</h2>
        <p className="line">{what}</p>
        <p className="figures">
          <strong>{money(dock.totals.price)}</strong>
        </p>
        {over ? (
          <p role="status" className="done">
            {more(`request.${state}`, { code })}
          </p>
        ) : (
          <>
            {dock.findings.some(({ severity }) => severity === 'stop') && (
              <p className="care">{more('request.stop')}</p>
            )}
            {field('name', name, setName, 'name')}
            {field('contact', contact, setContact, 'email')}
            <div className="field">
              <label htmlFor={`${id}-note`}>{more('request.note')}</label>
              <textarea
                id={`${id}-note`}
                rows={2}
                maxLength={4000}
                value={note}
                onChange={(event) => setNote(event.currentTarget.value)}
              />
            </div>
            <p className="hint">{more('request.what')}</p>
          </>
        )}
        {typeof state === 'object' && (
          <p className="fault" role="alert">
            {more('request.failed', { why: text(state.failed) })}
          </p>
        )}
        <div className="actions">
          {over ? (
            <button type="button" className="main" onClick={close}>
              {more('request.done')}
            </button>
          ) : (
            <>
              <button type="submit" className="main" disabled={state === 'sending'}>
                {more(state === 'sending' ? 'request.sending' : 'request.send')}
              </button>
              <button type="button" onClick={close}>
                {more('request.cancel')}
              </button>
            </>
          )}
        </div>
        <aside className="cautions">
          <h3>{t('cautions.title')}</h3>
          <ul>
            {wordsIn(lang).cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </aside>
      </form>
    </dialog>
  )
}
