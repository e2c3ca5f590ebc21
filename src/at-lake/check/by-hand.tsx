/** Of a dock without a plan nothing is known of its frames: what is measured is compared, and the highest and lowest leg are told. */
import { useState } from 'react'
import { count, text } from '../../words/index.ts'
import { Measure, NOTHING, type Typed } from '../fields.tsx'
import { fine } from '../fine.ts'
import { Head } from '../frame.tsx'
import { useBegun, useSay } from '../lake.ts'
import { draftFrom, withReading } from './draft.ts'

/** Level is what is within this, m: what a crew can set. */
const TOLERANCE = 0.003

export function ByHand({ done }: { readonly done: () => void }) {
  const { record, add, state, keeper } = useBegun()
  const { t, reader } = useSay()
  // Kept like those of a dock with a plan: a phone goes out in the middle of eight legs.
  const [draft, setDraft] = useState(() => draftFrom(keeper.draft('check')))
  const read = new Map(draft.readings.map(({ leg, high }) => [leg, high]))
  const put = (leg: string, high: Typed): void => {
    const to = { ...draft, readings: withReading(draft, { leg, high, low: NOTHING }) }
    keeper.keepDraft('check', to)
    setDraft(to)
  }
  const known = record.legs.flatMap((leg) => {
    const down = read.get(leg.id)?.value
    return down == null ? [] : [{ leg, down }]
  })
  const sorted = known.map(({ down }) => down).sort((a, b) => a - b)
  const middle = sorted[sorted.length >> 1] ?? 0
  const off = known.filter(({ down }) => Math.abs(down - middle) > TOLERANCE)
  return (
    <>
      <Head of={t('check.hand')} />
      <p>{t('check.hand-how')}</p>
      {record.legs.map((leg) => (
        <Measure
          key={leg.id}
          label={t('leg.number', { n: count(leg.number) })}
          kind="over"
          typed={read.get(leg.id) ?? NOTHING}
          set={(typed) => put(leg.id, typed)}
        />
      ))}
      {known.length > 1 &&
        (off.length === 0 ? (
          <p className="good">{t('check.is-level')}</p>
        ) : (
          <div className="care">
            {off.map(({ leg, down }) => (
              <p key={leg.id}>
                {t(down > middle ? 'check.too-high' : 'check.too-low', {
                  by: text(fine(Math.abs(down - middle), reader)),
                  n: count(leg.number),
                })}
              </p>
            ))}
          </div>
        ))}
      <div className="ways">
        <button
          type="button"
          className="main"
          disabled={known.length < 2}
          onClick={() => {
            add({
              kind: 'check',
              readings: known.map(({ leg, down }) => ({ leg: leg.id, down })),
              verdict: off.length === 0 ? 'level' : 'moves',
              ...(state.level ? { level: state.level.level } : {}),
            })
            done()
          }}
        >
          {t('check.done')}
        </button>
      </div>
    </>
  )
}
