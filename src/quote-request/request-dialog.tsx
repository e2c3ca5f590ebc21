/** Ask for a quote: a name, a way to answer, and what goes with it told beforehand. The cautions stand beside it. */
import { useEffect, useId, useRef, useState } from 'react'
import { wordsIn } from '../../rules/index.ts'
import { useSummary } from '../panel/summary.tsx'
import { useHost } from '../state/host.ts'
import { placedNow, useDock, useLeadlineStore } from '../state/store.ts'
import { count, text } from '../words/index.ts'
import { type MoreWords, useMoreWords } from '../words/use-more-words.ts'
import { type Contact, type Outcome, sendRequest } from './send-request.ts'
import { SendYourself } from './send-yourself.tsx'

type State = 'asked' | 'sending' | Outcome

export function Request({ close }: { readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const host = useHost()
  const store = useLeadlineStore()
  const dock = useDock()
  const words = useMoreWords()
  const { more, lang, t, money } = words
  const what = useSummary()
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

  const from: Contact = { name: name.trim(), contact: contact.trim(), note: note.trim() }
  const missing = { name: from.name === '', contact: from.contact === '' }
  const send = async (): Promise<void> => {
    setChecked(true)
    if (missing.name || missing.contact) {
      dialog.current
        ?.querySelector<HTMLInputElement>(missing.name ? `[name="name"]` : `[name="contact"]`)
        ?.focus()
      return
    }
    setState('sending')
    const now = store.getState()
    const { fingerprint, totals } = placedNow(now)
    setState(
      await sendRequest(host, {
        design: now.design,
        catalog: { id: now.catalog.id, version: now.catalog.edition },
        fingerprint,
        totals,
        contact: from,
      }),
    )
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
  const outcome = typeof state === 'object' ? state : null
  const over = outcome?.kind === 'sent' || outcome?.kind === 'handed'
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
            {doneText(outcome, dock.fingerprint.all, more)}
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
        {outcome && !over && (
          <div className="not-sent" role="alert">
            <p className="fault">{faultText(outcome, more)}</p>
            {outcome.kind === 'failed' && <p>{more('request.failed-then')}</p>}
            <SendYourself from={from} what={what} />
          </div>
        )}
        <div className="actions">
          {over ? (
            <button type="button" className="main" onClick={close}>
              {more('request.done')}
            </button>
          ) : (
            <>
              {outcome?.kind !== 'nobody' && (
                <button type="submit" className="main" disabled={state === 'sending'}>
                  {more(state === 'sending' ? 'request.sending' : outcome ? 'request.again' : 'request.send')}
                </button>
              )}
              <button type="button" onClick={close}>
                {more(outcome ? 'request.done' : 'request.cancel')}
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

type More = MoreWords['more']

function doneText(
  { kind, reference }: Extract<Outcome, { reference: unknown }>,
  code: string,
  more: More,
): string {
  const values = { code: text(code.slice(0, 12)) }
  return reference === null
    ? more(`request.${kind}`, values)
    : more(`request.${kind}-as`, { ...values, reference: text(reference) })
}

function faultText(outcome: Outcome, more: More): string {
  if (outcome.kind !== 'failed') return more('request.nobody')
  const { why, status } = outcome
  return why === 'refused' && status !== undefined
    ? more('request.failed-refused-with', { status: count(status) })
    : more(`request.failed-${why}`)
}
