/** Ask for a quote: a name, a way to answer, and what goes with it told beforehand. The cautions stand beside it. */
import { useEffect, useId, useRef, useState } from 'react'
import { cautionsIn, type Say } from '../../rules/index.ts'
import { useSummary } from '../panel/summary.tsx'
import { useHost } from '../state/host.ts'
import { placedNow, useDock, useLeadlineStore } from '../state/store.ts'
import { count, text } from '../words/index.ts'
import { REQUEST, type RequestWord } from '../words/request.ts'
import { useWords } from '../words/use-words.ts'
import { type Contact, type Outcome, sendRequest } from './send-request.ts'
import { SendYourself } from './send-yourself.tsx'

type State = 'asked' | 'sending' | Outcome

export function Request({ close }: { readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const host = useHost()
  const store = useLeadlineStore()
  const dock = useDock()
  const words = useWords(REQUEST)
  const { t, money } = words
  const { t: screen } = useWords()
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
        <label htmlFor={`${id}-${key}`}>{t(`request.${key}`)}</label>
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
            {t(`request.${key}-missing`)}
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
        <h2 id={`${id}-title`}>{t('request.title')}</h2>
        <p className="line">{what}</p>
        <p className="figures">
          <strong>{money(dock.totals.price)}</strong>
        </p>
        {over ? (
          <p role="status" className="done">
            {doneText(outcome, dock.fingerprint.all, t)}
          </p>
        ) : (
          <>
            {dock.findings.some(({ severity }) => severity === 'stop') && (
              <p className="care">{t('request.stop')}</p>
            )}
            {field('name', name, setName, 'name')}
            {field('contact', contact, setContact, 'email')}
            <div className="field">
              <label htmlFor={`${id}-note`}>{t('request.note')}</label>
              <textarea
                id={`${id}-note`}
                rows={2}
                maxLength={4000}
                value={note}
                onChange={(event) => setNote(event.currentTarget.value)}
              />
            </div>
            <p className="hint">{t('request.what')}</p>
          </>
        )}
        {outcome && !over && (
          <div className="not-sent" role="alert">
            <p className="fault">{faultText(outcome, t)}</p>
            {outcome.kind === 'failed' && <p>{t('request.failed-then')}</p>}
            <SendYourself from={from} what={what} />
          </div>
        )}
        <div className="actions">
          {over ? (
            <button type="button" className="main" onClick={close}>
              {t('request.done')}
            </button>
          ) : (
            <>
              {outcome?.kind !== 'nobody' && (
                <button type="submit" className="main" disabled={state === 'sending'}>
                  {t(state === 'sending' ? 'request.sending' : outcome ? 'request.again' : 'request.send')}
                </button>
              )}
              <button type="button" onClick={close}>
                {t(outcome ? 'request.done' : 'request.cancel')}
              </button>
            </>
          )}
        </div>
        <aside className="cautions">
          <h3>{screen('cautions.title')}</h3>
          <ul>
            {cautionsIn(words).map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </aside>
      </form>
    </dialog>
  )
}

function doneText(
  { kind, reference }: Extract<Outcome, { reference: unknown }>,
  code: string,
  t: Say<RequestWord>,
): string {
  const values = { code: text(code.slice(0, 12)) }
  return reference === null
    ? t(`request.${kind}`, values)
    : t(`request.${kind}-as`, { ...values, reference: text(reference) })
}

function faultText(outcome: Outcome, t: Say<RequestWord>): string {
  if (outcome.kind !== 'failed') return t('request.nobody')
  const { why, status } = outcome
  return why === 'refused' && status !== undefined
    ? t('request.failed-refused-with', { status: count(status) })
    : t(`request.failed-${why}`)
}
