/** What a request says of the dock in hand and of who asks: this and nothing else is sent. */
import { spokenIn } from '../../rules/index.ts'
import type { Contact, RequestContent } from '../state/request-body.ts'
import { type LeadlineState, placedNow } from '../state/store.ts'
import { consentIn } from './consent-text.ts'
import type { Typed } from './contact-fields.tsx'

/** `contact` is both in one line: whoever reads only that can still answer. */
export const contactOf = ({ name, email, phone, place, note }: Typed): Contact => {
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

export function contentOf(
  now: LeadlineState,
  typed: Typed,
  { link, picture }: { readonly link: string | null; readonly picture: string | null },
): RequestContent {
  const { design, catalog, language } = now
  const { fingerprint, totals } = placedNow(now)
  const consent = consentIn(catalog, spokenIn(language))
  return {
    design,
    catalog: { id: catalog.id, version: catalog.edition },
    fingerprint,
    totals,
    contact: contactOf(typed),
    ...(consent && { consent: { text: consent.text, ticked: typed.agreed } }),
    ...(typed.wants.length > 0 && { wants: typed.wants }),
    ...(link !== null && { link }),
    ...(picture !== null && { picture }),
  }
}
