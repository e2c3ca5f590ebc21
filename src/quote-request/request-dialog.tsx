/** Ask for a quote: a name, a way to answer, and what goes with it told beforehand. The cautions stand beside it. */

import { useEffect, useId, useRef, useState } from 'react'
import { cautionsIn, type Say } from '../../rules/index.ts'
import { useVerdict } from '../panel/findings.tsx'
import { useSummary } from '../panel/summary.tsx'
import { usePrice } from '../panel/use-price.ts'
import { useHost } from '../state/host.ts'
import type { RequestBody } from '../state/request-body.ts'
import { useDock, useLeadline, useLeadlineStore } from '../state/store.ts'
import { useHandles } from '../ui/handles.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { count, text } from '../words/index.ts'
import { REQUEST, type RequestWord } from '../words/request.ts'
import { useConsent } from './consent.tsx'
import { faultsOf, NOTHING_TYPED, type Typed } from './contact-fields.tsx'
import { contactOf, contentOf } from './content.ts'
import { Fields } from './fields.tsx'
import { numbered } from './numbered.ts'
import { ownForm, typedIn } from './own-form.ts'
import { smallPicture } from './picture.ts'
import css from './request-dialog.css?inline'
import { type Failed, type Outcome, sendRequest } from './send-request.ts'
import { SendYourself } from './send-yourself.tsx'
import { useBoats } from './use-boats.ts'
import { CHANGED, type Told, tellWaiting, waitingFor } from './waiting/queue.ts'

type State =
  | 'asked'
  | 'sending'
  | 'taken-back'
  | Exclude<Outcome, Failed>
  /** `unkept`: it does not wait for a connection either. */
  | (Failed & { readonly unkept?: boolean })
  | { readonly kind: 'waiting'; readonly id: string }

const zoneField = chunk(() => import('./zone-field.tsx').then((m) => m.ZoneField))

export function Request({ close }: { readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const styled = useSheet<HTMLFormElement>(css)
  const dock = useDock()
  const { t } = useWords(REQUEST)
  const { line: verdict } = useVerdict()
  const what = useSummary()
  const zoned = useLeadline((s) => s.catalog.quote?.zones !== undefined)
  const boats = useBoats()
  const id = useId()
  const [typed, setTyped] = useState(NOTHING_TYPED)
  const [checked, setChecked] = useState(false)
  /** What the page has put in the place of the fields. */
  const own = useRef<HTMLSlotElement>(null)
  const { state, number, send, takeBack } = useSending()
  const mustAgree = useConsent()?.tick === true
  useEffect(() => {
    const element = dialog.current
    element?.showModal()
    // What keeps on trying is here before the connection is gone.
    import('./waiting/waiting-list.tsx').catch(() => {})
    return () => element?.close()
  }, [])

  const submit = (): void => {
    setChecked(true)
    const form = ownForm(own.current)
    if (form && !form.reportValidity()) return
    const told = form ? typedIn(form, typed.agreed) : typed
    if (form) setTyped(told)
    const [fault] = Object.keys(faultsOf(told, mustAgree))
    if (fault === undefined) void send(told)
    else if (!form || fault === 'agreed')
      dialog.current?.querySelector<HTMLInputElement>(`[name="${fault}"]`)?.focus()
  }
  const outcome = typeof state === 'object' ? state : null
  const over = outcome?.kind === 'sent' || outcome?.kind === 'handed'
  return (
    <dialog ref={dialog} className="request" aria-labelledby={`${id}-title`} onClose={close}>
      <form ref={styled} noValidate onSubmit={(event) => event.preventDefault()}>
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
        {zoned && !over && <Lazy chunk={zoneField} props={{}} quiet />}
        {over && (
          <p role="status" className="done">
            {doneText(outcome, { code: dock.fingerprint.all, number }, t)}
          </p>
        )}
        {!over && outcome?.kind !== 'waiting' && (
          <Fields own={own} submit={submit} typed={typed} checked={checked} set={setTyped} />
        )}
        {state === 'taken-back' && <p role="status">{t('request.taken-back')}</p>}
        {outcome && !over && (
          <NotSent
            outcome={outcome}
            typed={typed}
            number={number}
            what={[what, ...boats].join('\n')}
            takeBack={takeBack}
          />
        )}
        <Actions state={state} submit={submit} close={close} />
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

interface NotSentProps {
  readonly outcome: Extract<State, object>
  readonly typed: Typed
  /** The request's. */
  readonly number: string
  readonly what: string
  readonly takeBack: (id: string) => void
}

/** Why, and the ways on from there. */
function NotSent({ outcome, typed, number, what, takeBack }: NotSentProps) {
  const { t } = useWords(REQUEST)
  return (
    <div className="not-sent" role="alert">
      <p className="fault">{faultText(outcome, number, t)}</p>
      {outcome.kind === 'failed' && <p>{t('request.failed-then')}</p>}
      {outcome.kind === 'waiting' && (
        <>
          <div className="actions">
            <button type="button" onClick={() => takeBack(outcome.id)}>
              {t('request.take-back')}
            </button>
          </div>
          <p>{t('request.waiting-then')}</p>
        </>
      )}
      <SendYourself from={contactOf(typed)} wants={typed.wants} number={number} what={what} />
    </div>
  )
}

/** Sends the design in hand, and tells what came of it and under which number. What was sent without a connection waits for one. */
function useSending() {
  const host = useHost()
  const store = useLeadlineStore()
  const { picture: scene } = useHandles()
  const [state, setState] = useState<State>('asked')
  const [number, setNumber] = useState('')
  const waiting = typeof state === 'object' && state.kind === 'waiting' ? state.id : null
  useEffect(() => {
    if (waiting === null) return
    // Sent meanwhile, by what stands on the page for it.
    const hear = (event: Event): void => {
      const told = (event as CustomEvent<Told | null>).detail
      if (told?.id === waiting) setState({ kind: 'sent', reference: told.reference })
    }
    addEventListener(CHANGED, hear)
    return () => removeEventListener(CHANGED, hear)
  }, [waiting])
  const send = async (typed: Typed): Promise<void> => {
    setState('sending')
    const now = store.getState()
    const [link, picture] = await Promise.all([
      host.linkTo(),
      typed.picture ? smallPicture(scene.current) : null,
    ])
    const body = numbered(host, contentOf(now, typed, { link, picture }))
    const outcome = await sendRequest(host, body)
    setNumber(body.reference ?? '')
    setState(kept(outcome, host.requestUrl, body))
  }
  const takeBack = (id: string): void => {
    if (host.requestUrl !== null) waitingFor(host.requestUrl).drop(id)
    tellWaiting(null)
    setState('taken-back')
  }
  return { state, number, send, takeBack }
}

/** What could not be reached is kept, where the device keeps anything. */
function kept(outcome: Outcome, address: string | null, body: RequestBody): State {
  if (address === null || outcome.kind !== 'failed' || outcome.why !== 'unreachable') return outcome
  if (!waitingFor(address).keep({ body })) return { ...outcome, unkept: true }
  tellWaiting(null)
  return { kind: 'waiting', id: body.id }
}

interface ActionsProps {
  readonly state: State
  readonly submit: () => void
  readonly close: () => void
}

function Actions({ state, submit, close }: ActionsProps) {
  const { t } = useWords(REQUEST)
  const outcome = typeof state === 'object' ? state : null
  if (outcome?.kind === 'sent' || outcome?.kind === 'handed' || outcome?.kind === 'waiting')
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
        <button
          type="submit"
          className="main"
          disabled={state === 'sending'}
          // By Enter in a field too. A frame that may not submit forms gives no event of the form's.
          onClick={(event) => {
            event.preventDefault()
            submit()
          }}
        >
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
  const shop = useLeadline((s) => s.catalog.shop)
  return (
    <aside className="cautions">
      <h3>{words.t('cautions.title')}</h3>
      <ul>
        {cautionsIn(words, shop).map((caution) => (
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

function faultText(outcome: Extract<State, object>, number: string, t: Say<RequestWord>): string {
  if (outcome.kind === 'waiting') return t('request.waiting', { number: text(number) })
  if (outcome.kind !== 'failed') return t('request.nobody')
  const { why, status, unkept } = outcome
  if (unkept) return `${t(`request.failed-${why}`)} ${t('request.failed-unkept')}`
  return why === 'refused' && status !== undefined
    ? t('request.failed-refused-with', { status: count(status) })
    : t(`request.failed-${why}`)
}
