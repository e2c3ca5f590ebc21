/** What is to be ordered again, as one message to the shop: mailed, shared, or as a file. */
import { useState } from 'react'
import { orderedKey, type ReorderRow, reorder } from '../../rules/record/index.ts'
import { kindWord } from '../../rules/words/dock-words.ts'
import { download } from '../platform/download.ts'
import { plainName } from '../platform/file-name.ts'
import { useLeadline } from '../state/store.ts'
import { count, text } from '../words/index.ts'
import { ShopNumber } from './call.tsx'
import { LineField } from './fields.tsx'
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { legNumberOf } from './names.ts'

export function Shop() {
  const { go, record, season, keeper, add } = useBegun()
  const { t, money, priced, lined } = useSay()
  const catalog = useLeadline((s) => s.catalog)
  const { rows, price } = reorder(record, catalog, season)
  const lines = useLines(rows, false)
  const [who, setWho] = useState(() => whoFrom(keeper.draft('who')))
  const put = (part: Partial<Who>): void => {
    keeper.keepDraft('who', { ...who, ...part })
    setWho({ ...who, ...part })
  }
  return (
    <Frame title={t('shop.title')} home={() => go({ at: 'home' })}>
      <Head of={t('shop.title')} />
      {rows.length === 0 ? (
        <p>{t('shop.nothing')}</p>
      ) : (
        <ul>
          {lines.map((line, i) => (
            <li key={line}>
              {line}
              {lined && rows[i]?.price != null && ` ${money(rows[i].price)}`}
            </li>
          ))}
        </ul>
      )}
      {priced && price > 0 && <p>{t('shop.sum', { price: text(money(price)) })}</p>}
      {rows.length > 0 && (
        <>
          <LineField label={t('shop.who')} value={who.name} set={(name) => put({ name })} />
          <LineField label={t('shop.phone')} value={who.phone} set={(phone) => put({ phone })} />
        </>
      )}
      <div className="ways">
        {rows.length > 0 && <Send rows={rows} who={who} />}
        {rows.length > 0 && (
          <button
            type="button"
            onClick={() => {
              for (const { wear } of rows)
                for (const { id } of wear) add({ kind: 'step', key: orderedKey(id), done: true })
            }}
          >
            {t('shop.ordered')}
          </button>
        )}
        <button type="button" onClick={() => go({ at: 'wear' })}>
          {t('home.wear')}
        </button>
      </div>
      <ShopNumber />
    </Frame>
  )
}

/** As one message: mailed, sent, or a file. */
function Send({ rows, who }: { readonly rows: readonly ReorderRow[]; readonly who: Who }) {
  const { record } = useBegun()
  const { t } = useSay()
  const mail = useLeadline((s) => s.catalog.shop?.mail) ?? ''
  const name = text(record.name || t('home.unnamed'))
  const message = [
    t('shop.greeting', { name }),
    '',
    ...useLines(rows, true),
    '',
    record.dock ? t('call.code', { code: text(record.dock.slice(0, 8)) }) : '',
    [who.name.trim(), who.phone.trim()].filter(Boolean).join(', '),
  ]
    .join('\n')
    .trim()
  const subject = t('shop.subject', { name })
  return (
    <>
      <a
        className="button main"
        href={`mailto:${encodeURIComponent(mail).replace('%40', '@')}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(message)}`}
      >
        {t('shop.mail')}
      </a>
      {typeof navigator.share === 'function' && (
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
  )
}

/** Who orders; kept for the next time on this phone alone. */
interface Who {
  readonly name: string
  readonly phone: string
}

function whoFrom(kept: unknown): Who {
  const { name, phone } = (kept ?? {}) as { readonly [K in keyof Who]?: unknown }
  return { name: typeof name === 'string' ? name : '', phone: typeof phone === 'string' ? phone : '' }
}

const sameWord = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase()

/** @param coded with the shop's codes, for the shop */
function useLines(rows: readonly ReorderRow[], coded: boolean): readonly string[] {
  const { record } = useBegun()
  const { t, reader } = useSay()
  return rows.map(({ count: many, name, kind, wear, code }) => {
    const why = wear
      .map(({ what, leg, note = '' }) => {
        const word = t(`wear.${what}`)
        const at = leg === undefined ? '' : t('wear.at', { n: count(legNumberOf(leg, record)) })
        // What was chosen from the list and typed again is said once.
        return [word, at, sameWord(word, note) ? '' : note].filter(Boolean).join(' ')
      })
      .join('; ')
    return t(code === null || !coded ? 'shop.line' : 'shop.line-code', {
      count: count(many),
      name: text(name ?? kindWord(kind, reader)),
      code: text(code ?? ''),
      why: text(why),
    })
  })
}
