/** An earlier quote to compare with, and what is another since then: read back to the customer, and printed on the quote. */
import { useEffect, useState } from 'react'
import type { QuoteAsked } from '../../rules/papers/quote.ts'
import type { QuoteFile } from '../../rules/papers/quote-file.ts'
import type { Since } from '../../rules/papers/quote-since.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { DOCUMENTS } from '../words/documents.ts'
import { text } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'

/** Faults of a file that are told; the rest would say the same. */
const TOLD = 3

interface Props {
  readonly since: QuoteFile | null
  /** What this quote is asked for with. */
  readonly asked: QuoteAsked
  /** It is the shop's quote that is compared, no estimate. */
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
    // What was chosen before stays where the new one cannot be read.
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

function Changes({
  since,
  asked,
  quoted,
}: {
  readonly since: QuoteFile
  readonly asked: QuoteAsked
  readonly quoted: boolean
}) {
  const { t, reader } = useWords(DOCUMENTS)
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
  if (!said) return null
  const { total } = said
  const [line, ...figures] = said.columns
  return (
    <section aria-label={said.title}>
      <h3>{said.title}</h3>
      {said.shops && <p className="care">{t('since-shops')}</p>}
      {said.note !== null && <p className="hint">{said.note}</p>}
      {total && (
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
            {said.rows.map(([name, ...cells], i) => (
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
      )}
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
