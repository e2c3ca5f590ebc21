/** Can it be built? The verdict in one line; under it what is found. */
import { isJudged, useDock, useLeadline } from '../state/store.ts'
import { Fold } from '../ui/fold.tsx'
import { useHandles } from '../ui/handles.ts'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { count } from '../words/index.ts'
import { StableHeight } from './stable-height.tsx'
import { type Standing, standingOf } from './verdict.ts'

const list = chunk(() => import('./findings-list.tsx').then((m) => m.FindingsList))
const loads = chunk(() => import('./structure-loads.tsx').then((m) => m.Loads))

export function FindingsPanel() {
  const handles = useHandles()
  const { t } = useWords()
  const whole = useLeadline(isJudged)
  const stale = useLeadline((s) => s.stale)
  const status = useLeadline((s) => s.status)
  const tryAgain = useLeadline((s) => s.tryAgain)
  return (
    <section className="answer stands">
      <h2 ref={handles.findings}>{t('stands.title')}</h2>
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
        <Lazy chunk={list} props={{}} quiet />
      </StableHeight>
      <Fold className="notes" summary={t('stands.loads')}>
        <Lazy chunk={loads} props={{}} />
      </Fold>
    </section>
  )
}

const MARKS: Readonly<Record<Standing, MarkName>> = {
  placing: 'checking',
  checking: 'checking',
  unknown: 'note',
  cannot: 'stop',
  fix: 'warn',
  can: 'good',
}

/** The verdict in a sentence and in a word or two, for every place that tells it. */
export function useVerdict() {
  const dock = useDock()
  const status = useLeadline((s) => s.status)
  const stale = useLeadline((s) => s.stale)
  const { t } = useWords()
  const { standing, toFix, toMeasure } = standingOf({ dock, status, stale })
  const values = { fix: count(toFix.length), measure: count(toMeasure.length) }
  return {
    standing,
    mark: MARKS[standing],
    line: t(standing === 'can' && toMeasure.length > 0 ? 'stands.measure' : `stands.${standing}`, values),
    short: t(`sum.${standing}`, values),
  }
}

function VerdictLine() {
  const whole = useLeadline(isJudged)
  const stale = useLeadline((s) => s.stale)
  const { standing, mark, line } = useVerdict()
  return (
    <>
      <p className={`verdict ${standing}`}>
        <Mark state={mark} />
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
