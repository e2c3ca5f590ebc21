/** What nobody has said of the shore yet, one thing a line: what was taken in its place, to be confirmed by a tap or changed where it is asked. */
import type { Design } from '../../rules/index.ts'
import { setBottom, setLevel } from '../parameters/design-edits.ts'
import { type AskedAt, useLeadline } from '../state/store.ts'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { meters, text } from '../words/index.ts'
import { START } from '../words/start.ts'
import { missingIn } from './missing.ts'
import { answer, answerOf } from './shore.ts'
import css from './unsaid.css?inline'
import { useAnswer } from './use-answer.ts'

export function Told() {
  const design = useLeadline((s) => s.design)
  const set = useLeadline((s) => s.set)
  const { t } = useWords(START)
  const box = useSheet<HTMLDivElement>(css)
  const missing = missingIn(design)
  return (
    <div className="control care" ref={box} hidden={missing.length === 0}>
      <p>{t('unsaid.told')}</p>
      <ul className="unsaid">
        {missing.map((at) => (
          <One key={at} at={at} design={design} />
        ))}
      </ul>
      {missing.length > 1 && (
        <div className="actions">
          <button type="button" onClick={() => set({ starting: missing[0]! })}>
            {t('unsaid.ask')}
          </button>
        </div>
      )}
    </div>
  )
}

function One({ at, design }: { readonly at: AskedAt; readonly design: Design }) {
  const set = useLeadline((s) => s.set)
  const give = useAnswer()
  const { t, length } = useWords(START)
  const { t: screen } = useWords()
  const { bottom, levels } = design.site
  const told = (): readonly [what: string, taken: string, confirm: ((d: Design) => Design) | null] => {
    switch (at) {
      case 'bottom':
        return [t('unsaid.bottom'), screen(`bottom.${bottom}`), (d) => setBottom(d, bottom)]
      case 'levels.high':
        return [t('unsaid.rises'), length(levels.high), (d) => setLevel(d, 'high', levels.high)]
      case 'levels.low':
        return [t('unsaid.drops'), length(0 - levels.low), (d) => setLevel(d, 'low', levels.low)]
      case 'wind':
        // No wind is nobody's answer.
        return [t('unsaid.wind'), t('unsaid.no-waves'), null]
      default: {
        const { distance, depth } = answerOf(design, at)
        const what = t(distance < 0 ? 'unsaid.bank' : 'unsaid.depth', {
          distance: meters(Math.abs(distance)),
        })
        return [what, length(Math.abs(depth)), (d) => answer(d, at, { depth: Math.abs(depth) })]
      }
    }
  }
  const [what, taken, confirm] = told()
  const named = (word: 'unsaid.right' | 'unsaid.change') => ({
    'aria-label': t(`${word}-of`, { what: text(what) }),
    children: t(word),
  })
  return (
    <li>
      <span>
        {what}: <strong>{taken}</strong>
      </span>
      {confirm && <button type="button" onClick={() => give(confirm)} {...named('unsaid.right')} />}
      <button
        type="button"
        className="quiet"
        onClick={() => set({ starting: at })}
        {...named('unsaid.change')}
      />
    </li>
  )
}
