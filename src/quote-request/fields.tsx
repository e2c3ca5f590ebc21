/** Who asks: our fields, or the page's own form in their place. What is sent and what the shop does with it is told under either. */
import { type RefObject, useEffect } from 'react'
import { useWords } from '../ui/use-words.ts'
import { REQUEST } from '../words/request.ts'
import { Consent, useConsent } from './consent.tsx'
import { ContactFields, type FieldsProps, faultsOf, type Typed } from './contact-fields.tsx'
import { ownForm, typedIn } from './own-form.ts'
import { WhatIsSent } from './what-is-sent.tsx'

interface Props extends FieldsProps {
  readonly own: RefObject<HTMLSlotElement | null>
  readonly submit: () => void
}

export function Fields({ own, submit, typed, checked, set }: Props) {
  const { t } = useWords(REQUEST)
  const consent = useConsent()
  useOwnForm(own, submit, typed, set)
  const fault = checked ? faultsOf(typed, consent?.tick === true).agreed : undefined
  return (
    <>
      <slot name="request" ref={own}>
        <ContactFields typed={typed} checked={checked} set={set} />
      </slot>
      {checked && <OwnFaults slot={own.current} typed={typed} />}
      <p className="hint">{t('request.what')}</p>
      <WhatIsSent typed={typed} />
      {consent && (
        <Consent
          of={consent}
          on={typed.agreed}
          set={(agreed) => set({ ...typed, agreed })}
          fault={fault && t(`request.${fault}`)}
        />
      )}
    </>
  )
}

/** What is typed there is known as it is typed. A button or a key of it is as good as ours, and leads nowhere else. */
function useOwnForm(own: Props['own'], submit: () => void, typed: Typed, set: Props['set']): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what stands in it when it is first seen.
  useEffect(() => {
    const form = ownForm(own.current)
    if (form) set(typedIn(form, typed.agreed))
  }, [])
  useEffect(() => {
    const form = ownForm(own.current)
    const stop = new AbortController()
    const { signal } = stop
    form?.addEventListener('input', () => set(typedIn(form, typed.agreed)), { signal })
    form?.addEventListener(
      'submit',
      (event) => {
        event.preventDefault()
        submit()
      },
      { signal },
    )
    return () => stop.abort()
  })
}

/** What a form of the page's own has let through and no answer can do without; the fields of ours say it themselves. */
function OwnFaults({ slot, typed }: { readonly slot: HTMLSlotElement | null; readonly typed: Typed }) {
  const { t } = useWords(REQUEST)
  if (!ownForm(slot)) return null
  return Object.values(faultsOf(typed, false)).map((fault) => (
    <p className="fault" role="alert" key={fault}>
      {t(`request.${fault}`)}
    </p>
  ))
}
