/** What comes of the readings: level, or which leg goes up or down by how much; what cannot be told from them is said. */
import type { LevelCheck, LevelMove } from '../../../rules/at-lake/index.ts'
import { saidOf } from '../../../rules/record/index.ts'
import { count, meters, text } from '../../words/index.ts'
import { fine, fineUp } from '../fine.ts'
import { Figure, Head } from '../frame.tsx'
import { useBegun, useSay } from '../lake.ts'
import { legNumberOf, legsNamed } from '../names.ts'
import { type Draft, readingsOf } from './draft.ts'

interface ResultProps {
  readonly found: LevelCheck
  readonly draft: Draft
  readonly again: () => void
  /** They were moved: all is read anew. */
  readonly moved: () => void
  readonly done: () => void
}

export function Result({ found, draft, again, moved, done }: ResultProps) {
  const begun = useBegun()
  const { t, reader } = useSay()
  const { record } = begun
  const { verdict, moves, off, hanging, doubted, unsure } = found
  const write = useWrite(found, draft)
  const sure = verdict === 'level' || verdict === 'moves'
  const legs = legsNamed(verdict === 'measure-again' ? doubted : unsure, record)
  return (
    <>
      <Head of={t(`check.is-${verdict}`)} />
      {verdict === 'level' && <p className="good">{t('check.within', { off: text(fineUp(off, reader)) })}</p>}
      {(verdict === 'measure-again' || verdict === 'more-readings') && (
        <p className="care">{t(`check.why-${verdict}`, { legs: text(legs) })}</p>
      )}
      {hanging.length > 0 && (
        <p className="care">{t('check.hangs', { legs: text(legsNamed(hanging, record)) })}</p>
      )}
      {moves.map((move) => (
        <Move key={move.leg} move={move} />
      ))}
      {moves.length > 0 && (
        <>
          <p className="hint">{t('check.after', { off: text(fineUp(found.after, reader)) })}</p>
          <p className="care">{t('check.how')}</p>
        </>
      )}
      <div className="ways">
        {sure && (
          <button
            type="button"
            className="main"
            onClick={() => {
              write()
              if (verdict === 'moves') moved()
              else done()
            }}
          >
            {t(verdict === 'moves' ? 'check.moved' : 'check.done')}
          </button>
        )}
        <button type="button" onClick={again}>
          {t('measure.again')}
        </button>
      </div>
    </>
  )
}

function Move({ move }: { readonly move: LevelMove }) {
  const { record, state } = useBegun()
  const { t, reader } = useSay()
  const n = count(legNumberOf(move.leg, record))
  const set = state.legs.find(({ leg }) => leg.id === move.leg)?.set
  if (move.by === null) return <p className="care">{t('check.let-down', { n })}</p>
  const by = fine(Math.abs(move.by), reader)
  return (
    <>
      <Figure less value={by} of={t(move.by > 0 ? 'check.up' : 'check.down-by', { n })} />
      {move.turns !== null && (
        <p className="hint">
          {t('check.turns', { turns: { value: Math.abs(move.turns), unit: 'factor-rough' } })}
        </p>
      )}
      {set && record.rise !== null && (
        <p>
          <b>
            {t('check.then', {
              n,
              frame: meters(set.height + move.by - record.rise),
              deck: meters(set.height + move.by),
            })}
          </b>
        </p>
      )}
    </>
  )
}

/** The check, and how the legs stand that were moved after it. */
function useWrite(found: LevelCheck, draft: Draft): () => void {
  const begun = useBegun()
  const { add, state } = begun
  return () => {
    const { readings, bubbles = [] } = readingsOf(draft, begun)
    const level = state.level?.level
    const sections = new Set(bubbles.map(({ section }) => section))
    const slope = (section: string, along: 'length' | 'width'): number | undefined => {
      const one = bubbles.find((bubble) => bubble.section === section && bubble.along === along)
      return one && one.fall / one.over
    }
    add({
      kind: 'check',
      readings: readings.map(({ leg, down }) => ({
        leg,
        down: typeof down === 'number' ? down : (down.high + down.low) / 2,
      })),
      bubble: [...sections].map((section) => {
        const [along, across] = [slope(section, 'length'), slope(section, 'width')]
        return {
          section,
          ...(along === undefined ? {} : { along }),
          ...(across === undefined ? {} : { across }),
        }
      }),
      moves: found.moves.flatMap(({ leg, by, turns }) =>
        by === null ? [] : [{ leg, by, ...(turns === null ? {} : { turns }) }],
      ),
      hangs: [...found.hanging],
      verdict: found.verdict === 'level' ? 'level' : found.verdict === 'moves' ? 'moves' : 'unsure',
      ...(level === undefined ? {} : { level }),
    })
    for (const { leg, by } of found.moves) {
      const set = state.legs.find((one) => one.leg.id === leg)?.set
      if (!set || by === null) continue
      const { by: _by, ...said } = saidOf(set)
      add({
        ...said,
        height: set.height + by,
        ...(set.frame === undefined ? {} : { frame: set.frame + by }),
        how: 'by-check',
      })
    }
  }
}
