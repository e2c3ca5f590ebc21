/** What customers add, on the plan: a letter at each, its name in the caption. */
import { extrasPlaced } from '../../rules/papers/extras-placed.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import type { Drawn } from '../drawn.ts'
import { wrapText } from '../paper/text.ts'
import type { Shown } from './outlines.ts'
import { boundsOf, SMALLEST, type ViewNote } from './view.ts'

/** Of more than these those are lettered that there is room for; the manual's table has them all. */
const LETTERED = 24
/** Lines of the caption, mm. */
const WIDTH = 120

/** `A` to `Z`, then `AA`. */
const letterOf = (n: number): string =>
  `${n < 26 ? '' : letterOf(Math.floor(n / 26) - 1)}${String.fromCharCode(65 + (n % 26))}`

/** Each kind once, as its first one comes. */
const namesOf = (drawn: Drawn): readonly string[] => [...new Set(extrasPlaced(drawn).map(({ name }) => name))]

/** Which letter is what; nothing where nothing was added. */
export function extrasCaption(drawn: Drawn): readonly string[] {
  const t = wordsOf(DRAWING, drawn)
  const all = namesOf(drawn).map((name, i) => t('extra-letter', { letter: letterOf(i), name }))
  return all.length === 0 ? [] : wrapText(all.join('   '), WIDTH, SMALLEST)
}

export function extraNotes(drawn: Drawn, shown: readonly Shown[]): ViewNote[] {
  const all = extrasPlaced(drawn)
  const names = namesOf(drawn)
  const sections = new Map(drawn.dock.sections.map((section) => [section.id, section]))
  return all.flatMap(({ id, name, section: on, edge }): ViewNote[] => {
    const seen = shown.filter(({ of }) => of === id).flatMap(({ path }) => path.points)
    const section = sections.get(on)
    if (seen.length === 0 || !section) return []
    const { x0, x1, y0, y1 } = boundsOf(seen)
    const turn = (section.heading * Math.PI) / 180
    // Outward from the edge that it is on.
    const out = turn + { start: Math.PI, end: 0, left: Math.PI / 2, right: -Math.PI / 2 }[edge]
    const [dx, dy] = [Math.cos(out), Math.sin(out)]
    const beside = Math.abs(dx) > Math.abs(dy)
    return [
      {
        at: [(x0 + x1) / 2, (y0 + y1) / 2],
        text: letterOf(names.indexOf(name)),
        size: SMALLEST,
        bold: true,
        prefer: beside ? (dx > 0 ? 'right' : 'left') : dy > 0 ? 'above' : 'below',
        reach: (beside ? x1 - x0 : y1 - y0) / 2,
        optional: all.length > LETTERED,
      },
    ]
  })
}
