/** What to compare with (an earlier quote, a link, a dock), and what is other: shown on the screen; what changed since a quote is printed on the next. */
import { useEffect, useState } from 'react'
import type { Design, Issue } from '../../rules/index.ts'
import type { QuoteAsked } from '../../rules/papers/quote.ts'
import type { QuoteFile } from '../../rules/papers/quote-file.ts'
import type { Since } from '../../rules/papers/quote-since.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { FilePick } from '../ui/file-picker.tsx'
import { EarlierPick, LinkPick } from '../ui/pick-dock.tsx'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'
import { text } from '../words/index.ts'
import type { ComparedWith, Told } from './files/since.ts'

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
  // Another dock is compared on the screen alone: on the paper stands what changed since a quote.
  const [other, setOther] = useState<Design | null>(null)
  const set = (quoted: QuoteFile | null, design: Design | null): void => {
    setFault(null)
    setOther(design)
    choose(quoted)
  }
  const bad = (name: string, issues: readonly Issue[]): void =>
    setFault(
      t('since-bad', {
        file: text(name),
        why: text(
          issues
            .slice(0, TOLD)
            .map(({ path, message }) => (path ? `${path}: ${message}` : message))
            .join('; '),
        ),
      }),
    )
  const open = async (file: File): Promise<void> => {
    const { parseCompared } = await import('./files/since.ts')
    const parsed = parseCompared(await file.text())
    // If the new file cannot be read, what was chosen before stays.
    if (!parsed.ok) bad(file.name, parsed.issues)
    else if ('quoted' in parsed.value) set(parsed.value.quoted, null)
    else set(null, parsed.value.design)
  }
  return (
    <div className="since">
      <p className="hint">{t(quoted ? 'since-what' : 'since-estimate')}</p>
      <div className="actions">
        <FilePick label={t(quoted ? 'since-pick' : 'since-pick-shop')} take={open} />
        <EarlierPick label={t('since-earlier')} take={(design) => set(null, design)} />
        {(since || other) && (
          <button type="button" onClick={() => set(null, null)}>
            {t('since-none')}
          </button>
        )}
      </div>
      <LinkPick
        label={t('since-link')}
        take={(design) => set(null, design)}
        bad={(issues) => bad(t('since-link-name'), issues)}
      />
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      {other ? (
        <Changes with={{ design: other }} asked={asked} quoted={quoted} />
      ) : (
        since && <Changes with={{ quoted: since }} asked={asked} quoted={quoted} />
      )}
    </div>
  )
}

type Compared = Pick<Props, 'asked' | 'quoted'> & { readonly with: ComparedWith }

function Changes(props: Compared) {
  const { t } = useWords(DOCUMENTS)
  const said = useChanges(props)
  if (!said) return null
  return (
    <section aria-label={said.title}>
      <p className="headline">
        <strong>{said.headline}</strong>
      </p>
      {'quoted' in props.with && <h3>{said.title}</h3>}
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
function useChanges({ with: before, asked, quoted }: Compared): Told | null {
  const { reader } = useWords(DOCUMENTS)
  const dock = useDock()
  const judged = useLeadline(isJudged)
  const design = useLeadline((s) => s.design)
  const catalog = useLeadline((s) => s.catalog)
  const [said, setSaid] = useState<Told | null>(null)
  const key = JSON.stringify(asked)
  const compared = 'quoted' in before ? before.quoted : before.design
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is asked for and what is compared are other objects each time, told apart by what is in them.
  useEffect(() => {
    if (!judged) return
    let over = false
    import('./files/since.ts').then(({ changesSince }) => {
      if (!over) setSaid(changesSince(before, { dock, design, catalog }, asked, quoted, reader))
    })
    return () => {
      over = true
    }
  }, [compared, dock, design, catalog, judged, key, quoted, reader])
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
