/** What is it? One line of plain words. */

import type { Figure } from '../../rules/index.ts'
import { dockFacts } from '../state/dock-facts.ts'
import { useLeadline, usePlaced } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { count, meters, text } from '../words/index.ts'

/** The line itself, for wherever the dock is to be told in words. */
export function useSummary(): string {
  const dock = usePlaced()
  const design = useLeadline((s) => s.design)
  const { t } = useWords()
  const { shape, sections, length, reach, depth } = dockFacts(dock, design)
  const deck = design.dock.deckHeight
  // Inches of the gaps between sections say nothing here.
  const rough = (value: number): Figure => ({ value, unit: 'm-rough' })
  const many = t('what.sections', { sections: count(sections) })
  return t(shape, {
    sections: text(dock.ramp ? t('what.with-ramp', { sections: text(many) }) : many),
    size: text(
      t('what.size', {
        length: rough(length),
        reach: rough(reach),
        stands: text(t(deck < 0 ? 'what.under' : 'what.over', { height: meters(Math.abs(deck)) })),
        depth: meters(depth),
      }),
    ),
  })
}

export function Summary() {
  const { t } = useWords()
  const what = useSummary()
  const code = usePlaced().fingerprint.all
  return (
    <section className="answer what">
      <h2>{t('what.title')}</h2>
      <p className="line">{what}</p>
      <p className="hint">
        {t('code.label')} <code title={t('code.hint')}>{codeOf(code)}</code>
      </p>
    </section>
  )
}

/** The first twelve digits of the check code in threes and fours, to be read out. */
const codeOf = (hash: string): string => hash.slice(0, 12).replace(/(....)(?=.)/g, '$1 ')
