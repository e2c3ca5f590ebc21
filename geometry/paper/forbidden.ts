/**
 * The mark of a dock that must not be built, on every sheet: words across it, under all that stands there, and a bar over its top that a
 * copier in black and white keeps too.
 */
import type { Dock, Reader } from '../../rules/index.ts'
import { stopsOf } from '../../rules/stops.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { baselineOf, label, lineHeight, rect } from './blocks.ts'
import type { Ink, Mark } from './marks.ts'
import { ALERT } from './style.ts'
import { fitText, textWidth } from './text.ts'

const PALE: Ink = '#f3d3cf'
const WHITE: Ink = '#ffffff'
/** Of the bar, mm: in what every paper leaves free above. */
const BAR = { side: 15, top: 8.2, height: 3.9, size: 2.75 } as const
/** Of the sheet's diagonal. */
const LONG = 0.72

export interface ForbiddenMarks {
  readonly under: readonly Mark[]
  readonly over: readonly Mark[]
}

/** Nothing where the dock may be built. `width` and `height` of the sheet, mm. */
export function forbiddenMarks(
  dock: Dock | null,
  width: number,
  height: number,
  reader: Reader,
): ForbiddenMarks {
  const stops = dock ? stopsOf(dock).length : 0
  if (stops === 0) return { under: [], over: [] }
  const t = wordsOf(PAPERS, reader)
  const words = t('forbidden-mark')
  const size = (LONG * Math.hypot(width, height)) / textWidth(words, 1, 'bold')
  const angle = (Math.atan2(height, width) * 180) / Math.PI
  const turn = (angle * Math.PI) / 180
  // The middle of the letters, not their baseline, lies on the diagonal.
  const down = size * 0.36
  const bar = t('forbidden-bar', { count: stops })
  const inner = width - 2 * BAR.side - 4
  return {
    under: [
      {
        ...label(
          [width / 2 + down * Math.sin(turn), height / 2 + down * Math.cos(turn)],
          words,
          { size, weight: 'bold', ink: PALE, anchor: 'middle' },
          angle,
        ),
        behind: true,
      },
    ],
    over: [
      rect([BAR.side, BAR.top], width - 2 * BAR.side, BAR.height, null, ALERT),
      label(
        [width / 2, BAR.top + (BAR.height - lineHeight(BAR.size)) / 2 + baselineOf(BAR.size)],
        fitText(bar, inner, BAR.size, 'bold'),
        { size: BAR.size, weight: 'bold', ink: WHITE, anchor: 'middle' },
      ),
    ],
  }
}
