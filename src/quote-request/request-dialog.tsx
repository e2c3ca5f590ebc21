/** Ask for a quote: a name, a way to answer, and what goes with it told beforehand. The cautions stand beside it. */

import { type RefObject, useEffect, useId, useRef, useState } from 'react'
import { cautionsIn, type Say } from '../../rules/index.ts'
import { useVerdict } from '../panel/findings.tsx'
import { useSummary } from '../panel/summary.tsx'
import { usePrice } from '../panel/use-price.ts'
import { type RequestContent, useHost } from '../state/host.ts'
import type { Contact } from '../state/request-body.ts'
import { placedNow, useDock, useLeadlineStore } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { count, text } from '../words/index.ts'
import { REQUEST, type RequestWord } from '../words/request.ts'
import { ContactFields, faultsOf, NOTHING_TYPED, type Typed } from './contact-fields.tsx'
import { ownForm, typedIn } from './own-form.ts'
import { smallPicture } from './picture.ts'
import css from './request-dialog.css?inline'
import { type Outcome, sendRequest } from './send-request.ts'
import { SendYourself } from './send-yourself.tsx'
import { useBoats } from './use-boats.ts'

type State = 'asked' | 'sending' | Outcome

export function Request({ close }: { readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const styled = useSheet<HTMLFormElement>(css)
  const dock = useDock()
  const { t } = useWords(REQUEST)
  const { line: verdict } = useVerdict()
  const what = useSummary()
  const boats = useBoats()
  const id = useId()
  const [typed, setTyped] = useState(NOTHING_TYPED)
  const [checked, setChecked] = useState(false)
  /** What the page has put in the place of the fields. */
  const own = useRef<HTMLSlotElement>(null)
  const { state, number, send } = useSending()
  useEffect(() => {
    const element = dialog.current
    element?.showModal()
    return () => element?.close()
  }, [])

  const submit = (): void => {
    setChecked(true)
    const form = ownForm(own.current)
    if (form) {
      if (!form.reportValidity()) return
      const told = typedIn(form)
      setTyped(told)
      if (Object.keys(faultsOf(told)).length === 0) void send(told)
      return
    }
    const [fault] = Object.keys(faultsOf(typed))
    if (fault) dialog.current?.querySelector<HTMLInputElement>(`[name="${fault}"]`)?.focus()
    else void send(typed)
  }
  useOwnSubmit(own, submit)
  const outcome = typeof state === 'object' ? state : null
  const over = outcome?.kind === 'sent' || outcome?.kind === 'handed'
  return (
    <dialog ref={dialog} className="request" aria-labelledby={`${id}-title`} onClose={close}>
      <form
        ref={styled}
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
        {boats.map((boat, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two alike are told twice.
          <p className="line" key={i}>
            {boat}
          </p>
        ))}
        <Cost />
        {over ? (
          <p role="status" className="done">
            {doneText(outcome, { code: dock.fingerprint.all, number }, t)}
          </p>
        ) : (
          <slot name="request" ref={own}>
            <ContactFields typed={typed} checked={checked} set={setTyped} />
          </slot>
        )}
        {checked && !over && <OwnFaults slot={own.current} typed={typed} />}
        {outcome && !over && (
          <div className="not-sent" role="alert">
            <p className="fault">{faultText(outcome, t)}</p>
            {outcome.kind === 'failed' && <p>{t('request.failed-then')}</p>}
            <SendYourself
              from={contactOf(typed)}
              wants={typed.wants}
              number={number}
              what={[what, ...boats].join('\n')}
            />
          </div>
        )}
        <Actions state={state} close={close} />
        <Cautions />
      </form>
    </dialog>
  )
}

function Cost() {
  const { priced } = useWords()
  const price = usePrice()
  if (!priced) return null
  return (
    <p className="figures">
      <strong>{price.line}</strong> {price.plus && <span className="hint">{price.plus}</span>}
    </p>
  )
}

/** A button or a key of the page's own form is as good as ours, and leads nowhere else. */
function useOwnSubmit(own: RefObject<HTMLSlotElement | null>, submit: () => void): void {
  useEffect(() => {
    const form = ownForm(own.current)
    const sent = (event: Event): void => {
      event.preventDefault()
      submit()
    }
    form?.addEventListener('submit', sent)
    return () => form?.removeEventListener('submit', sent)
  })
}

/** What a form of the page's own has let through and no answer can do without; the fields of ours say it themselves. */
function OwnFaults({ slot, typed }: { readonly slot: HTMLSlotElement | null; readonly typed: Typed }) {
  const { t } = useWords(REQUEST)
  if (!ownForm(slot)) return null
  return Object.values(faultsOf(typed)).map((fault) => (
    <p className="fault" role="alert" key={fault}>
      {t(`request.${fault}`)}
    </p>
  ))
}

/** `contact` is both in one line: whoever reads only that can still answer. */
const contactOf = ({ name, email, phone, place, note }: Typed): Contact => {
  const [mail, call, where] = [email.trim(), phone.trim(), place.trim()]
  return {
    name: name.trim(),
    contact: [mail, call].filter(Boolean).join(', '),
    note: note.trim(),
    ...(mail && { email: mail }),
    ...(call && { phone: call }),
    ...(where && { place: where }),
  }
}

/** Sends the design in hand, and tells what came of it and under which number. */
function useSending() {
  const host = useHost()
  const store = useLeadlineStore()
  const { picture: scene } = useHandles()
  const [state, setState] = useState<State>('asked')
  const [number, setNumber] = useState('')
  const send = async (typed: Typed): Promise<void> => {
    setState('sending')
    const now = store.getState()
    const { fingerprint, totals } = placedNow(now)
    const [link, picture] = await Promise.all([
      host.linkTo(),
      typed.picture ? smallPicture(scene.current) : null,
    ])
    const content: RequestContent = {
      design: now.design,
      catalog: { id: now.catalog.id, version: now.catalog.edition },
      fingerprint,
      totals,
      contact: contactOf(typed),
      ...(typed.wants.length > 0 && { wants: typed.wants }),
      ...(link !== null && { link }),
      ...(picture !== null && { picture }),
    }
    const outcome = await sendRequest(host, content)
    setNumber(host.numbered(content).reference ?? '')
    setState(outcome)
  }
  return { state, number, send }
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
  { code, number }: { readonly code: string; readonly number: string },
  t: Say<RequestWord>,
): string {
  const values = { code: text(code.slice(0, 12)), number: text(number) }
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
