/** What was found about a dock, worst first, each with what would mend it. */
import { remedyText, type Severity, severityWord } from '../../rules/index.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { findingText } from '../../rules/words/structure-words.ts'
import { list, note, noteWidth, paragraph, subheading } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import type { Ink } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { ALERT, GRAY, INK, SIZE } from '../paper/style.ts'

const BARS: Readonly<Record<Exclude<Severity, 'note'>, Ink>> = { stop: ALERT, warn: INK }

/** Those that ask for something; nothing where none does. `width` in mm. */
export function foundBlocks({ dock, options }: PaperOf, width: number): Block[] {
  const t = wordsOf(PAPERS, options)
  const aside = noteWidth(width)
  const blocks = (['stop', 'warn'] as const).flatMap((severity) =>
    dock.findings
      .filter((finding) => finding.severity === severity)
      .map((finding) =>
        note(
          [
            ...paragraph(
              t('named-so', {
                what: severityWord(severity, options),
                said: findingText(finding, 'plain', options),
              }),
              aside,
              {
                size: SIZE.small,
                weight: severity === 'stop' ? 'bold' : 'regular',
                before: 0,
              },
            ),
            ...(finding.remedy
              ? paragraph(t('found-remedy', { remedy: remedyText(finding.remedy, options) }), aside, {
                  size: SIZE.small,
                  ink: GRAY,
                  before: 0.4,
                })
              : []),
          ],
          BARS[severity],
        ),
      ),
  )
  return blocks.length === 0
    ? []
    : [
        { ...subheading(t('found'), width), name: t('found') },
        ...blocks.map((one) => ({ ...one, before: 1.6 })),
      ]
}

/** What asks for nothing, and is good to know where it is set up. */
export function notesFound({ dock, options }: PaperOf, width: number): Block[] {
  const notes = dock.findings.filter(({ severity }) => severity === 'note')
  if (notes.length === 0) return []
  return [
    subheading(wordsOf(PAPERS, options)('found-more'), width),
    ...list(
      notes.map((finding) => findingText(finding, 'plain', options)),
      width,
      'dot',
      { size: SIZE.small },
    ),
  ]
}
