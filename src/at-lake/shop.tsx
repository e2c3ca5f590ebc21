/** What is to be ordered again, as one message to the shop: mailed, shared, or as a file. */
import { type ReorderRow, reorder } from '../../rules/record/index.ts'
import { download } from '../platform/download.ts'
import { plainName } from '../platform/file-name.ts'
import { useLeadline } from '../state/store.ts'
import { count, text } from '../words/index.ts'
import { ShopNumber } from './call.tsx'
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { legNumberOf } from './names.ts'
import { partWord } from './wear.tsx'

export function Shop() {
  const { go, record, season } = useBegun()
  const { t } = useSay()
  const catalog = useLeadline((s) => s.catalog)
  const { rows } = reorder(record, catalog, season)
  const lines = useLines(rows, false)
  const coded = useLines(rows, true)
  const message = [
    t('shop.greeting', { name: text(record.name || t('home.unnamed')) }),
    '',
    ...coded,
    '',
    code(),
  ].join('\n')
  function code(): string {
    return record.dock ? t('call.code', { code: text(record.dock.slice(0, 8)) }) : ''
  }
  const mail = catalog.shop?.mail ?? ''
  const subject = t('shop.subject', { name: text(record.name || t('home.unnamed')) })
  const canShare = typeof navigator.share === 'function'
  return (
    <Frame title={t('shop.title')} home={() => go({ at: 'home' })}>
      <Head of={t('shop.title')} />
      {rows.length === 0 ? (
        <p>{t('shop.nothing')}</p>
      ) : (
        <ul>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <div className="ways">
        {rows.length > 0 && (
          <>
            <a
              className="button main"
              href={`mailto:${encodeURIComponent(mail).replace('%40', '@')}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(message)}`}
            >
              {t('shop.mail')}
            </a>
            {canShare && (
              <button
                type="button"
                onClick={() => void navigator.share({ title: subject, text: message }).catch(() => {})}
              >
                {t('shop.share')}
              </button>
            )}
            <button
              type="button"
              onClick={() => download(`${message}\n`, 'text/plain', `${plainName(record.name)}-order.txt`)}
            >
              {t('shop.file')}
            </button>
          </>
        )}
        <button type="button" onClick={() => go({ at: 'wear' })}>
          {t('home.wear')}
        </button>
      </div>
      <ShopNumber />
    </Frame>
  )
}

/** @param coded with the shop's codes, for the shop */
function useLines(rows: readonly ReorderRow[], coded: boolean): readonly string[] {
  const { record } = useBegun()
  const { t } = useSay()
  return rows.map(({ count: many, name, kind, wear, code }) => {
    const why = wear
      .map(({ what, leg, note }) =>
        [
          t(`wear.${what}`),
          leg === undefined ? '' : t('wear.at', { n: count(legNumberOf(leg, record)) }),
          note ?? '',
        ]
          .filter(Boolean)
          .join(' '),
      )
      .join('; ')
    return t(code === null || !coded ? 'shop.line' : 'shop.line-code', {
      count: count(many),
      name: text(name ?? partWord(kind, t)),
      code: text(code ?? ''),
      why: text(why),
    })
  })
}
