/** A link to the dock, and the QR code that opens it on a phone. */
import { MOST_BYTES } from '../../geometry/paper/qr.ts'
import type { Design } from '../../rules/index.ts'
import { linkOf } from '../autosave/link.ts'
import { useHost } from '../state/host.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { Qr } from './qr.tsx'

/** A link to the dock; null if the page has no links, or if the link is too long for a QR code. */
export function addressOf(links: boolean, design: Design): string | null {
  const fragment = links ? linkOf(design) : null
  if (fragment === null) return null
  const address = `${location.origin}${location.pathname}${location.search}${fragment}`
  return new TextEncoder().encode(address).length <= MOST_BYTES ? address : null
}

/** A QR code that opens the dock on a phone. */
export function Phone() {
  const { t } = useWords(DOCUMENTS)
  const host = useHost()
  const design = useLeadline((s) => s.design)
  const address = addressOf(host.links, design)
  return (
    <>
      <h3>{t('phone')}</h3>
      {address !== null ? (
        <>
          <p className="hint">{t('phone-what')}</p>
          <Qr text={address} label={t('code')} />
        </>
      ) : (
        <>
          <p className="hint">{t(host.links ? 'phone-too-large' : 'phone-no-link')}</p>
          <div className="actions">
            <button type="button" onClick={() => host.saveFile()}>
              {t('phone-file')}
            </button>
          </div>
        </>
      )}
    </>
  )
}
