/** Calling the shop: its number, and what to have at hand for it. */
import { useLeadline } from '../state/store.ts'
import { text } from '../words/index.ts'
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'

export function Call() {
  const { go, record } = useBegun()
  const { t } = useSay()
  const call = useCallWord()
  return (
    <Frame title={t(call)} home={() => go({ at: 'home' })}>
      <Head of={t(call)} />
      <p>{t('call.first')}</p>
      <ShopNumber />
      {record.dock && <p>{t('call.code', { code: text(record.dock.slice(0, 8)) })}</p>}
      <div className="ways">
        <button type="button" onClick={() => go({ at: 'heights' })}>
          {t('home.heights')}
        </button>
      </div>
    </Frame>
  )
}

/** A shop without a number cannot be called. */
export const useCallWord = (): 'call.title' | 'call.ask' =>
  useLeadline((s) => (s.catalog.shop?.phone ? 'call.title' : 'call.ask'))

/** A link that a phone dials; what to do where the catalog has no number. */
export function ShopNumber() {
  const shop = useLeadline((s) => s.catalog.shop)
  const name = useLeadline((s) => s.catalog.name)
  const { t } = useSay()
  const phone = shop?.phone
  const mail = shop?.mail
  return (
    <div className="care">
      <p>{t('call.shop', { shop: text(shop?.name ?? name) })}</p>
      {phone && <a href={`tel:${phone.replace(/[^\d+]/g, '')}`}>{phone}</a>}
      {mail && <a href={`mailto:${mail}`}>{mail}</a>}
      {!phone && !mail && <p>{t('call.no-number')}</p>}
    </div>
  )
}
