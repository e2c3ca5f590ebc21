/** The way on where nobody on the page takes a request: the dock as a file, the request as text, an email begun. */
import { useState } from 'react'
import { listOf } from '../../rules/words/language.ts'
import { usePrice } from '../panel/use-price.ts'
import { useHost } from '../state/host.ts'
import type { Contact } from '../state/request-body.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { REQUEST } from '../words/request.ts'

/** Mail programs cut longer addresses short; a link to a dock with many depths is longer. Characters. */
const LONGEST_MAIL = 1900

interface Props {
  readonly from: Contact
  /** Codes of services. */
  readonly wants: readonly string[]
  /** The request's. */
  readonly number: string
  readonly what: string
}

export function SendYourself({ from, wants, number, what }: Props) {
  const host = useHost()
  const dock = useDock()
  const name = useLeadline((s) => s.design.name)
  const offered = useLeadline((s) => s.catalog.services)
  const named = useNames()
  const services = (offered ?? []).filter(({ code }) => wants.includes(code)).map(named)
  const { t, language, priced } = useWords(REQUEST)
  const price = usePrice()
  const { t: screen } = useWords()
  const [copied, setCopied] = useState<'copied' | { readonly text: string } | null>(null)

  const subject = t('request.mail-subject', { name: text(name || screen('name.none')) })
  const textWith = (link: string | null): string =>
    [
      what,
      ...(priced
        ? [
            price.known
              ? t('request.mail-total', { price: text([price.line, price.plus].filter(Boolean).join(' ')) })
              : price.line,
          ]
        : []),
      t('request.mail-code', { code: text(dock.fingerprint.all.slice(0, 12)) }),
      t('request.mail-number', { number: text(number) }),
      ...(services.length > 0
        ? [t('request.mail-wants', { services: text(listOf(services, language)) })]
        : []),
      ...(from.place ? [t('request.mail-place', { place: text(from.place) })] : []),
      ...(from.note === '' ? [] : ['', from.note]),
      '',
      link === null ? t('request.mail-file') : t('request.mail-link', { link: text(link) }),
      '',
      t('request.mail-from', { name: text(from.name), contact: text(from.contact) }),
    ].join('\n')
  const copy = async (): Promise<void> => {
    const whole = `${subject}\n\n${textWith(await host.linkTo())}\n`
    try {
      await navigator.clipboard.writeText(whole)
      setCopied('copied')
    } catch {
      setCopied({ text: whole })
    }
  }
  const mail = async (): Promise<void> => {
    const addressOf = (link: string | null): string =>
      `mailto:?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(textWith(link))}`
    const link = await host.linkTo()
    const whole = addressOf(link)
    const short = whole.length > LONGEST_MAIL && link !== null
    // The file stands for the link that the address has no room for.
    if (short || link === null) host.saveFile()
    const anchor = document.createElement('a')
    anchor.href = short ? addressOf(null) : whole
    anchor.click()
  }
  return (
    <>
      <div className="actions">
        <button type="button" onClick={() => host.saveFile()}>
          {t('request.save')}
        </button>
        <button type="button" onClick={copy}>
          {t('request.copy')}
        </button>
        <button type="button" onClick={mail}>
          {t('request.mail')}
        </button>
      </div>
      {copied === 'copied' && <p role="status">{t('request.copied')}</p>}
      {typeof copied === 'object' && copied && (
        <label className="field">
          {t('request.copy-here')}
          <textarea readOnly rows={6} value={copied.text} onFocus={(event) => event.currentTarget.select()} />
        </label>
      )}
    </>
  )
}
