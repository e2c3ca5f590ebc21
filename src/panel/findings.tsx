/** Does it stand? Each finding in plain words, its remedy one tap away, its figures a tap deeper. */
import { useState } from 'react'
import { applyPatch, type Finding, findingIn, remedyIn, severityWord } from '../../rules/index.ts'
import { findingId } from '../state/highlight.ts'
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useHandles } from '../ui/handles.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { count, type Word } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'
import { type Standing, verdictOf } from './dock-facts.ts'
import { StableHeight } from './stable-height.tsx'

const figures = chunk(() => import('./finding-figures.tsx').then((m) => m.Figures))
const loads = chunk(() => import('./structure-loads.tsx').then((m) => m.Loads))

export function FindingsPanel() {
  const handles = useHandles()
  const dock = useDock()
  const { t } = useWords()
  const whole = useLeadline(isJudged)
  const stale = useLeadline((s) => s.stale)
  const status = useLeadline((s) => s.status)
  const tryAgain = useLeadline((s) => s.tryAgain)
  const first = dock.findings.filter(({ severity }) => severity !== 'note')
  const notes = dock.findings.filter(({ severity }) => severity === 'note')
  return (
    <section className="answer stands" ref={handles.findings}>
      <h2>{t('stands.title')}</h2>
      <VerdictLine />
      {/* Its place is kept while there is nothing to say: what is below it does not jump. */}
      <p className="hint checking">
        {whole || stale ? (status === 'unavailable' ? t('stands.not-here') : '') : t('stands.still-checking')}
        {status === 'unavailable' && (
          <button type="button" className="quiet" onClick={tryAgain}>
            {t('again')}
          </button>
        )}
      </p>
      {/* Findings of an earlier dock stay in sight; their remedies are not for this one. */}
      <StableHeight whole={whole} inert={stale}>
        {first.length > 0 && (
          <ul className="findings">
            {first.map((finding) => (
              <Item key={findingId(finding)} finding={finding} />
            ))}
          </ul>
        )}
        {notes.length > 0 && (
          <Fold className="notes" summary={t('stands.notes', { notes: count(notes.length) })} print>
            <ul className="findings">
              {notes.map((finding) => (
                <Item key={findingId(finding)} finding={finding} />
              ))}
            </ul>
          </Fold>
        )}
      </StableHeight>
      <Fold className="notes" summary={t('stands.loads')}>
        <Lazy chunk={loads} props={{}} />
      </Fold>
    </section>
  )
}

export const MARKS: Readonly<Record<Standing, MarkName>> = {
  placing: 'checking',
  stop: 'stop',
  checking: 'checking',
  'so-far': 'checking',
  unknown: 'note',
  warn: 'warn',
  good: 'good',
}

function VerdictLine() {
  const dock = useDock()
  const whole = useLeadline(isJudged)
  const status = useLeadline((s) => s.status)
  const stale = useLeadline((s) => s.stale)
  const { t } = useWords()
  const { standing, stops, warnings } = verdictOf({ dock, status, stale })
  const line = t(`stands.${standing}` as Word, { stops: count(stops), warnings: count(warnings) })
  return (
    <>
      <p className={`verdict ${standing}`}>
        <Mark state={MARKS[standing]} />
        <strong>{line}</strong>
      </p>
      {/* Read aloud when it is settled, not at each move of a drag. */}
      <p className="unseen" role="status">
        {whole || stale ? line : ''}
      </p>
    </>
  )
}

type MarkName = 'stop' | 'warn' | 'note' | 'good' | 'checking'

/** A shape of its own for each severity: color alone says nothing. */
export function Mark({ state }: { readonly state: MarkName }) {
  const shapes = {
    stop: 'M6 1.5h8L18.5 6v8L14 18.5H6L1.5 14V6zM6.8 6.8l6.4 6.4M13.2 6.8l-6.4 6.4',
    warn: 'M10 2.2 18.6 17.5H1.4zM10 8v4.4M10 14.6v.6',
    note: 'M10 1.5a8.5 8.5 0 1 1 0 17a8.5 8.5 0 1 1 0-17zM10 9v5M10 6v.6',
    checking: 'M10 1.5a8.5 8.5 0 1 1 0 17a8.5 8.5 0 1 1 0-17zM6.2 10h.1M10 10h.1M13.8 10h.1',
    good: 'M10 1.5a8.5 8.5 0 1 1 0 17a8.5 8.5 0 1 1 0-17zM6 10.4l2.8 2.8 5.3-6',
  }
  return (
    <svg className={`mark ${state}`} viewBox="0 0 20 20" aria-hidden="true">
      <path d={shapes[state]} />
    </svg>
  )
}

function Item({ finding }: { readonly finding: Finding }) {
  const { reader, t } = useWords()
  const edit = useLeadline((s) => s.edit)
  const set = useLeadline((s) => s.set)
  const more = useLeadline((s) => s.foundLater)
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
          {findingIn(finding, 'plain', reader, more)}
        </p>
        <div className="actions">
          {remedy && (
            <button type="button" className="remedy" onClick={mend}>
              {remedyIn(remedy, reader, more)}
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
