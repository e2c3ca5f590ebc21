/** What is found, each in plain words, its remedy one tap away, its figures a tap deeper. Comes with what finds it, after the first picture. */

import { useState } from 'react'
import { applyPatch, type Finding, severityWord, tellFinding, tellRemedy } from '../../rules/index.ts'
import { remedyNamed } from '../../rules/words/part-names.ts'
import { Unsaid } from '../parameters/lake-unsaid.tsx'
import { findingId } from '../state/highlight.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { count } from '../words/index.ts'
import { STANDS } from '../words/stands.ts'
import { Mark } from './findings.tsx'
import { useMending } from './mending/use-mending.ts'
import { verdictOf } from './verdict.ts'

const fit = chunk(() => import('./leg-fit.tsx').then((m) => m.LegFit))
const scanned = chunk(() => import('./scanned.tsx').then((m) => m.Scanned))
const figures = chunk(() => import('./finding-figures.tsx').then((m) => m.Figures))

export function FindingsList() {
  const dock = useDock()
  const { t } = useWords(STANDS)
  const edit = useLeadline((s) => s.edit)
  const { all, costOf } = useMending()
  const { toFix, toMeasure } = verdictOf(dock)
  const notes = dock.findings.filter(({ severity }) => severity === 'note')
  const at = new URLSearchParams(location.search).get('leadline-at')
  return (
    <>
      {at !== null && <Lazy chunk={scanned} props={{ at }} quiet />}
      {all && (
        <button type="button" className="main fix-all" onClick={() => edit(() => all.design)}>
          {t('remedy.all')} <Cost of={all.cost} />
        </button>
      )}
      <Items of={toFix} costOf={costOf} />
      {toFix.length > 0 && toMeasure.length > 0 && <h3>{t('stands.shore')}</h3>}
      <Items of={toMeasure} costOf={costOf} />
      {notes.length > 0 && (
        <Fold className="notes" summary={t('stands.notes', { notes: count(notes.length) })} print>
          <Items of={notes} costOf={costOf} />
        </Fold>
      )}
      {dock.fit && <Lazy chunk={fit} props={{ dock, of: dock.fit }} />}
    </>
  )
}

/** What a step does to the price; nothing while that is not known, or prices are not for this reader. */
function Cost({ of }: { readonly of: number | null }) {
  const { t, money, lined } = useWords(STANDS)
  if (of === null || !lined) return null
  return (
    <small className="cost">{of === 0 ? t('remedy.no-change') : `${of > 0 ? '+' : ''}${money(of)}`}</small>
  )
}

function Items({
  of,
  costOf,
}: {
  readonly of: readonly Finding[]
  readonly costOf: (finding: Finding) => number | null
}) {
  if (of.length === 0) return null
  return (
    <ul className="findings">
      {of.map((finding) => (
        <Item key={findingId(finding)} finding={finding} cost={costOf(finding)} />
      ))}
    </ul>
  )
}

function Item({ finding, cost }: { readonly finding: Finding; readonly cost: number | null }) {
  const { reader, t } = useWords(STANDS)
  const edit = useLeadline((s) => s.edit)
  const set = useLeadline((s) => s.set)
  const more = useLeadline((s) => s.foundLater)
  const catalog = useLeadline((s) => s.catalog)
  const id = findingId(finding)
  const chosen = useLeadline((s) => s.selection === id)
  const [failed, setFailed] = useState<string | null>(null)
  const { remedy, severity } = finding
  const mend = (): void => {
    try {
      const issues = edit((design) => applyPatch(design, remedy!.patch))
      setFailed(issues[0] ? issues[0].message : null)
    } catch {
      setFailed(t('remedy.failed'))
    }
  }
  return (
    <li
      className={`finding ${severity}${chosen ? ' lit' : ''}`}
      onPointerEnter={() => set({ hover: id })}
      onPointerLeave={() => set({ hover: null })}
    >
      <Mark state={severity} />
      <div>
        <p>
          <span className="unseen">{`${severityWord(severity, reader)}: `}</span>
          {tellFinding(finding, 'plain', reader, more)}
        </p>
        <div className="actions">
          {remedy && (
            <button type="button" className="remedy" onClick={mend}>
              {tellRemedy(remedyNamed(remedy, catalog, reader.language), reader, more)} <Cost of={cost} />
            </button>
          )}
          {finding.parts.length > 0 && (
            <button
              type="button"
              className="quiet"
              aria-pressed={chosen}
              onClick={() => set({ selection: chosen ? null : id })}
            >
              {t('stands.show')}
            </button>
          )}
        </div>
        {finding.code === 'site-assumed' && <Unsaid />}
        {failed !== null && (
          <p className="fault" role="alert">
            {failed}
          </p>
        )}
        <Fold summary={t('stands.figures')}>
          <Lazy chunk={figures} props={{ finding }} />
        </Fold>
      </div>
    </li>
  )
}
