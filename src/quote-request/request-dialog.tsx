/** Ask for a quote: a name, a way to answer, and what goes with it told beforehand. The cautions stand beside it. */

import { useEffect, useId, useRef, useState } from 'react'
import { cautionsIn, type Say } from '../../rules/index.ts'
import { useVerdict } from '../panel/findings.tsx'
import { useSummary } from '../panel/summary.tsx'
import { usePrice } from '../panel/use-price.ts'
import { hasPrice } from '../panel/verdict.ts'
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
  const dock = useDock()
  const { t } = useWords(REQUEST)
  const price = usePrice()
  const { line: verdict } = useVerdict()
  const what = useSummary()
  const id = useId()
  const [contact, setContact] = useState<Contact>({ name: '', contact: '', note: '' })
  const [checked, setChecked] = useState(false)
  const { state, send } = useSending()
  useEffect(() => {
    const element = dialog.current
    element?.showModal()
    return () => element?.close()
  }, [])

  const from = trimmed(contact)
  const submit = (): void => {
    setChecked(true)
    const missing = NEEDED.find((key) => from[key] === '')
    if (missing) dialog.current?.querySelector<HTMLInputElement>(`[name="${missing}"]`)?.focus()
    else send(from)
  }
  const outcome = typeof state === 'object' ? state : null
  const over = outcome?.kind === 'sent' || outcome?.kind === 'handed'
  return (
    <dialog ref={dialog} className="request" aria-labelledby={`${id}-title`} onClose={close}>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          submit()
        }}
      >
        <h2 id={`${id}-title`}>{t('request.title')}</h2>
        <p className="line">
          {what} {verdict}
        </p>
        <p className="figures">
          <strong>{price.line}</strong> {price.plus && <span className="hint">{price.plus}</span>}
        </p>
        {over ? (
          <p role="status" className="done">
            {doneText(outcome, dock.fingerprint.all, t)}
          </p>
        ) : (
          <ContactFields contact={contact} checked={checked} set={setContact} />
        )}
        {outcome && !over && (
          <div className="not-sent" role="alert">
            <p className="fault">{faultText(outcome, t)}</p>
            {outcome.kind === 'failed' && <p>{t('request.failed-then')}</p>}
            <SendYourself from={from} what={what} />
          </div>
        )}
        <Actions state={state} close={close} />
        <Cautions />
      </form>
    </dialog>
  )
}

/** What an answer cannot do without. */
const NEEDED = ['name', 'contact'] as const

const trimmed = ({ name, contact, note }: Contact): Contact => ({
  name: name.trim(),
  contact: contact.trim(),
  note: note.trim(),
})

/** Sends the design in hand, and tells what came of it. */
function useSending(): { readonly state: State; readonly send: (from: Contact) => Promise<void> } {
  const host = useHost()
  const store = useLeadlineStore()
  const [state, setState] = useState<State>('asked')
  const send = async (contact: Contact): Promise<void> => {
    setState('sending')
    const now = store.getState()
    const { fingerprint, totals } = placedNow(now)
    setState(
      await sendRequest(host, {
        design: now.design,
        catalog: { id: now.catalog.id, version: now.catalog.edition },
        fingerprint,
        totals,
        contact,
      }),
    )
  }
  return { state, send }
}

interface ContactProps {
  readonly contact: Contact
  /** What is missing is told. */
  readonly checked: boolean
  readonly set: (contact: Contact) => void
}

function ContactFields({ contact, checked, set }: ContactProps) {
  const { t } = useWords(REQUEST)
  const dock = useDock()
  const id = useId()
  const field = (key: (typeof NEEDED)[number], complete: string) => {
    const wrong = checked && contact[key].trim() === ''
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
          value={contact[key]}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-${key}-fault` : undefined}
          onChange={(event) => set({ ...contact, [key]: event.currentTarget.value })}
        />
        {wrong && (
          <p className="fault" id={`${id}-${key}-fault`}>
            {t(`request.${key}-missing`)}
          </p>
        )}
      </div>
    )
  }
  return (
    <>
      {!hasPrice(dock) && <p className="care">{t('request.stop')}</p>}
      {field('name', 'name')}
      {field('contact', 'email')}
      <div className="field">
        <label htmlFor={`${id}-note`}>{t('request.note')}</label>
        <textarea
          id={`${id}-note`}
          rows={2}
          maxLength={4000}
          value={contact.note}
          onChange={(event) => set({ ...contact, note: event.currentTarget.value })}
        />
      </div>
      <p className="hint">{t('request.what')}</p>
    </>
  )
}

function Actions({ state, close }: { readonly state: State; readonly close: () => void }) {
  const { t } = useWords(REQUEST)
  const outcome = typeof state === 'object' ? state : null
  if (outcome?.kind === 'sent' || outcome?.kind === 'handed')
    return (
      <div className="actions">
        <button type="button" className="main" onClick={close}>
          {t('request.done')}
        </button>
      </div>
    )
  return (
    <div className="actions">
      {outcome?.kind !== 'nobody' && (
        <button type="submit" className="main" disabled={state === 'sending'}>
          {t(state === 'sending' ? 'request.sending' : outcome ? 'request.again' : 'request.send')}
        </button>
      )}
      <button type="button" onClick={close}>
        {t(outcome ? 'request.done' : 'request.cancel')}
      </button>
    </div>
  )
}

function Cautions() {
  const words = useWords()
  return (
    <aside className="cautions">
      <h3>{words.t('cautions.title')}</h3>
      <ul>
        {cautionsIn(words).map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </aside>
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
