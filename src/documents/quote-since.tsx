/** An earlier quote to compare with, and what changed since: shown on the screen and printed on the quote. */
import { useEffect, useState } from 'react'
import type { QuoteAsked } from '../../rules/papers/quote.ts'
import type { QuoteFile } from '../../rules/papers/quote-file.ts'
import type { Since } from '../../rules/papers/quote-since.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { DOCUMENTS } from '../words/documents.ts'
import { text } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'

/** How many faults of a file are shown. */
const TOLD = 3

interface Props {
  readonly since: QuoteFile | null
  /** What this quote is asked for with. */
  readonly asked: QuoteAsked
  /** True to compare a quote of the shop, false to compare an estimate. */
  readonly quoted: boolean
  readonly choose: (since: QuoteFile | null) => void
}

export function QuoteSince({ since, asked, quoted, choose }: Props) {
  const { t } = useWords(DOCUMENTS)
  const [fault, setFault] = useState<string | null>(null)
  const open = async (file: File): Promise<void> => {
    const { parseQuoteText } = await import('./files/since.ts')
    const parsed = parseQuoteText(await file.text())
    setFault(
      parsed.ok
        ? null
        : t('since-bad', {
            file: text(file.name),
            why: text(
              parsed.issues
                .slice(0, TOLD)
                .map(({ path, message }) => (path ? `${path}: ${message}` : message))
                .join('; '),
            ),
          }),
    )
    // If the new file cannot be read, the one chosen before stays.
    if (parsed.ok) choose(parsed.value)
  }
  return (
    <div className="since">
      <p className="hint">{t(quoted ? 'since-what' : 'since-estimate')}</p>
      <div className="actions">
        <FilePick label={t(quoted ? 'since-pick' : 'since-pick-shop')} take={open} />
        {since && (
          <button type="button" onClick={() => choose(null)}>
            {t('since-none')}
          </button>
        )}
      </div>
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      {since && <Changes since={since} asked={asked} quoted={quoted} />}
    </div>
  )
}

type Compared = Pick<Props, 'asked' | 'quoted'> & { readonly since: QuoteFile }

function Changes(props: Compared) {
  const { t } = useWords(DOCUMENTS)
  const said = useChanges(props)
  if (!said) return null
  return (
    <section aria-label={said.title}>
      <h3>{said.title}</h3>
      {said.shops && <p className="care">{t('since-shops')}</p>}
      {said.note !== null && <p className="hint">{said.note}</p>}
      {said.total && <ChangesTable columns={said.columns} rows={said.rows} total={said.total} />}
      {said.legs.length > 0 && (
        <>
          <h3>{t('since-legs')}</h3>
          <ul className="hint">
            {said.legs.map((leg) => (
              <li key={leg}>{leg}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

/** Computed when all findings are there, and again whenever the dock or the choices change. */
function useChanges({ since, asked, quoted }: Compared): (Since & { readonly shops: boolean }) | null {
  const { reader } = useWords(DOCUMENTS)
  const dock = useDock()
  const judged = useLeadline(isJudged)
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const [said, setSaid] = useState<(Since & { readonly shops: boolean }) | null>(null)
  const key = JSON.stringify(asked)
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is asked for is another object each time, told apart by its text.
  useEffect(() => {
    if (!judged) return
    let over = false
    import('./files/since.ts').then(({ changesSince }) => {
      if (!over) setSaid(changesSince(since, { dock, design, catalog }, asked, quoted, reader))
    })
    return () => {
      over = true
    }
  }, [since, dock, design, catalog, judged, key, quoted, reader])
  return said
}

function ChangesTable({
  columns: [line, ...figures],
  rows,
  total,
}: Pick<Since, 'columns' | 'rows'> & { readonly total: NonNullable<Since['total']> }) {
  return (
    <table className="changes">
      <thead>
        <tr>
          <th scope="col">{line}</th>
          {figures.map((title) => (
            <th key={title} scope="col">
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, ...cells], i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines may have the same name.
          <tr key={i}>
            <th scope="row">{name}</th>
            {cells.map((cell, k) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns keep their places.
              <td key={k}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{total[0]}</th>
          <td colSpan={3}>
            {total[1]} → {total[2]}
            <br />
            {total[3]}
          </td>
        </tr>
      </tfoot>
    </table>
  )
}
